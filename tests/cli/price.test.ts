import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { type CommandEnd, commandEnd } from '../../src/cli/command-end.ts';
import { readText, repository } from '../helpers/repository-files.ts';
import { keptMeans } from './kept-means.ts';

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly errors: string;
}

const folder = mkdtempSync(join(tmpdir(), 'price-'));
afterAll(() => rmSync(folder, { recursive: true }));

function ended(program: string, words: readonly string[], cwd: string): Promise<Ended> {
  return new Promise((resolve) => {
    execFile(program, words, { cwd, maxBuffer: 10_000_000 }, (error, out, errors) => {
      resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, errors });
    });
  });
}

/** As the program ends, without starting one. */
function priced(...words: string[]): CommandEnd {
  return commandEnd(words, '2026-03-09', keptMeans);
}

/** The program itself, started in another folder than its own. */
function price(...words: string[]): Promise<Ended> {
  const loader = import.meta.resolve('tsx');
  return ended(process.execPath, ['--import', loader, join(repository, 'src/cli/price.ts'), ...words], folder);
}

describe('the command', () => {
  it('prices both systems on a floor of 24 by 22 ft as JSON, through npm', async () => {
    const rows = 'areas=[{"place":"Bay","shape":"rectangle","length":24,"width":22}]';
    const systems = ['--system', 'flake-full-broadcast', '--system', 'solid-colour'];
    const words = [
      'run',
      '--silent',
      'price',
      '--',
      ...systems,
      '--rows',
      rows,
      '--set',
      'target_margin=0.47',
      '--json',
    ];
    const { code, out, errors } = await ended('npm', words, repository);
    expect({ code, errors }).toEqual({ code: 0, errors: '' });
    const sheets = JSON.parse(out);
    expect(sheets.floor.lines.floor_area.value).toBe(528);
    expect(sheets['flake-full-broadcast'].lines.price.value).toBe(4250);
    expect(sheets['solid-colour'].lines.price.value).toBe(4200);
  });

  it('prices a template file that uses shipped parts, and products from a file', async () => {
    const system = readText('templates/systems/solid-colour/template.json') ?? '';
    writeFileSync(join(folder, 'mine.json'), system.replace('"id": "solid-colour"', '"id": "mine"'));
    const products = readText('templates/pricelist/demo/products.csv') ?? '';
    writeFileSync(
      join(folder, 'mine.csv'),
      products.replace('pebble grey",1,,,38,5,,,165', 'pebble grey",1,,,38,5,,,265'),
    );
    const { code, out, errors } = await price('--system', 'mine.json', '--pricelist', 'mine.csv');
    expect({ code, errors }).toEqual({ code: 0, errors: '' });
    expect(out).toMatch(/Fennelby colour, pebble grey +6\.267 gal +7 × 1 gal +\$266\.00/);
  });

  it('prices a template file that calls a line as it was called before, and says so beside the price', async () => {
    const system = JSON.parse(readText('templates/systems/solid-colour/template.json') ?? '');
    const lines = [
      { name: 'firm_grit', was: ['house_grit'], label: 'Grit', unit: 'lb', value: 2, source: 'made up for this test' },
      { name: 'grit_twice', label: 'Twice the grit', unit: 'lb', formula: 'house_grit * 2' },
    ];
    const sections = [...system.sections, { id: 'grit-of-ours', title: 'Grit', lines }];
    writeFileSync(join(folder, 'grit.json'), JSON.stringify({ ...system, id: 'grit', sections }));
    const { code, out, errors } = await price('--system', join(folder, 'grit.json'), '--json');
    expect(code).toBe(0);
    expect(errors).toBe(`${join(folder, 'grit.json')}: system grit: “house_grit” is called “firm_grit” now.\n`);
    expect(JSON.parse(out).grit.lines.grit_twice.value).toBe(4);
  });

  it('tells every fault of a template file at its place, ends with 2 and prints no price', async () => {
    writeFileSync(
      join(folder, 'broken.json'),
      JSON.stringify({
        format: 'spreadrate.sheet',
        version: 1,
        layer: 'system',
        id: 'broken',
        title: 'Broken',
        sections: [{ id: 'a', title: 'A', lines: [{ name: 'Bad', label: 'x', unit: '1', value: 1 }, { name: 'b' }] }],
      }),
    );
    const { code, out, errors } = await price('--system', 'broken.json', '--jsn', '--pricelist', 'none.csv');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    const lines = errors.trimEnd().split('\n');
    expect(lines).toContain('There is no option --jsn. Did you mean --json?');
    expect(lines).toContain('There is no file “none.csv”.');
    expect(lines.filter((line) => line.startsWith('broken.json: sections[0].lines[0]')).length).toBeGreaterThan(0);
    expect(lines.filter((line) => line.startsWith('broken.json: sections[0].lines[1]')).length).toBeGreaterThan(0);
    expect(errors).not.toContain('    at ');
  });

  it('ends with 3 where it prints a price that is not for sale, on a slab of 30 °F', () => {
    const { code, out, errors } = priced('--system', 'flake-full-broadcast', '--set', 'slab_temperature=30');
    expect({ code, errors }).toEqual({ code: 3, errors: '' });
    expect(out).toMatch(/Full flake · \$[\d,]+ · .* · not for sale: \d stops? above\n$/);
  });

  it('prints prices alone with the same exit codes: 0, 3 where one is not for sale, 2 for a mistake', () => {
    const words = ['--system', 'flake-full-broadcast', '--system', 'solid-colour', '--brief'];
    const fair = priced(...words);
    const cold = priced(...words, '--set', 'slab_temperature=30');
    const wrong = priced(...words, '--set', 'target_margin=2');
    expect([fair.code, cold.code, wrong.code]).toEqual([0, 3, 2]);
    expect(fair.out.trimEnd().split('\n')).toHaveLength(2);
    expect(cold.out.match(/not for sale/g)).toHaveLength(2);
    expect({ out: wrong.out, errors: wrong.errors }).toEqual({
      out: '',
      errors: '--set target_margin=2: “target_margin” must lie between 0 and 95 %; 200 % does not.\n',
    });
  });

  it('names the systems there are when none is given', () => {
    const { code, out, errors } = priced();
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(errors).toMatch(/^Name a system: .*--system flake-full-broadcast.* or --system solid-.*\.\n$/);
  });

  it('lists the systems, and helps', () => {
    const [list, help] = [priced('--list'), priced('--help')];
    expect(list.code + help.code).toBe(0);
    expect(list.out).toMatch(/flake-full-broadcast {2}Full flake\n/);
    for (const option of [
      '--system',
      '--set',
      '--rows',
      '--pricelist',
      '--brief',
      '--json',
      '--explain',
      '--list',
      '--help',
    ])
      expect(help.out).toContain(option);
  });
});
