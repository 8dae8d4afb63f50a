import { readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cellNamed } from '../../src/quote/named-cell.ts';
import { priced } from '../cli/priced.ts';
import { repository } from '../helpers/repository-files.ts';

/** A floor, and what must come out of it; worked out by hand. */
interface CaseFile {
  readonly title: string;
  readonly given: {
    readonly set: Readonly<Record<string, number | string>>;
    readonly rows: Readonly<Record<string, unknown>>;
  };
  /** By line, or TABLE.ROW.COLUMN: a number, a code, or the two numbers it lies between. */
  readonly expect: Readonly<Record<string, number | string | { readonly between: readonly [number, number] }>>;
}

const systems = join(repository, 'templates/systems');
const paths = readdirSync(systems, { recursive: true, encoding: 'utf8' })
  .filter((path) => basename(dirname(path)) === 'cases' && path.endsWith('.json'))
  .sort();

it('there is a case for every system', () => {
  const withCases = new Set(paths.map((path) => path.split(/[/\\]/)[0]));
  expect([...withCases]).toEqual(readdirSync(systems).sort());
});

describe.each(paths)('%s', (path) => {
  const file: CaseFile = JSON.parse(readFileSync(join(systems, path), 'utf8'));

  it(file.title, () => {
    const [system] = priced([path.split(/[/\\]/)[0] ?? ''], file.given);
    expect(Object.keys(file.expect).length).toBeGreaterThan(0);
    for (const [name, wanted] of Object.entries(file.expect)) {
      const cell = system && cellNamed(system.results.option, name);
      if (cell === undefined) throw new Error(`There is no ${name}`);
      expectValue(name, system?.results.read(cell), wanted);
    }
  });
});

function expectValue(name: string, value: unknown, wanted: CaseFile['expect'][string]): void {
  if (typeof wanted === 'string') expect(value, name).toBe(wanted);
  else if (typeof value !== 'number') throw new Error(`${name} is ${JSON.stringify(value)}, not a number`);
  else if (typeof wanted === 'number')
    expect(Math.abs(value - wanted), `${name} is ${value}`).toBeLessThanOrEqual(1e-9 * Math.abs(wanted));
  else {
    expect(value, name).toBeGreaterThanOrEqual(wanted.between[0]);
    expect(value, name).toBeLessThanOrEqual(wanted.between[1]);
  }
}
