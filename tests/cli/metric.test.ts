import { describe, expect, it } from 'vitest';
import { readArguments } from '../../src/cli/arguments.ts';
import { explainOutput } from '../../src/cli/explain-output.ts';
import { jsonOutput } from '../../src/cli/json-output.ts';
import { tableOutput } from '../../src/cli/table-output.ts';
import { usUnitsIn } from '../helpers/us-units.ts';
import { priced } from './priced.ts';

const flake = 'flake-full-broadcast';

/** Names of products may hold a length. */
function withoutProducts(text: string): string {
  return text
    .split('\n')
    .filter((line) => !/flake|strip/i.test(line))
    .join('\n');
}

describe('--metric', () => {
  it('is read beside the other options', () => {
    const { arguments: wanted, faults } = readArguments(['--system', flake, '--metric', '--explain', 'price']);
    expect(faults).toEqual([]);
    expect(wanted.measures).toBe('metric');
    expect(readArguments(['--system', flake]).arguments.measures).toBe('us');
  });

  it('prints the tables without a US unit, at the same price', () => {
    const systems = priced([flake]);
    const [us, metric] = [tableOutput(systems), tableOutput(systems, 'metric')];
    expect(usUnitsIn(withoutProducts(us)).length).toBeGreaterThan(3);
    expect(usUnitsIn(withoutProducts(metric))).toEqual([]);
    const priceIn = (text: string): string | undefined => /Price {2,}(\$[\d,.]+)/.exec(text)?.[1];
    expect(priceIn(metric)).toBe(priceIn(us));
    expect(priceIn(us)).toMatch(/^\$\d/);
  });

  it('explains the base coat’s need in m², µm and L, the formula in the same names', () => {
    const systems = priced([flake]);
    const told = explainOutput(systems, 'coats.base.gallons', 'metric');
    if (told.kind === 'faults') throw new Error(told.faults.join('\n'));
    expect(told.text).toContain('1,000 m²·µm/L');
    expect(told.text).toContain('wet_mils / film_constant');
    expect(usUnitsIn(withoutProducts(told.text))).toEqual([]);
  });

  it('leaves JSON in the units stored: 3.048 m of cracks, said so, are 10 ft', () => {
    const systems = priced([flake], { set: { crack_length: '3.048 m' } });
    const { floor } = JSON.parse(jsonOutput(systems));
    expect(floor.lines.crack_length.unit).toBe('ft');
    expect(floor.lines.crack_length.value).toBeCloseTo(10, 12);
  });
});
