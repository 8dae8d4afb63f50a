import { describe, expect, it } from 'vitest';
import { priceCommand } from '../../src/cli/price-command.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';
import { keptMeans } from './kept-means.ts';

/** What the command prints for every system, from the smallest floor to a warehouse. */
const known = (area: number, edge: number): string[] => [
  '--rows',
  `areas=[{"place":"bay","shape":"known","known_area":${area},"known_edge":${edge}}]`,
];
const sized = (length: number, width: number): string[] => [
  '--rows',
  `areas=[{"place":"bay","length":${length},"width":${width}}]`,
];
const set = (...entries: readonly string[]): string[] => entries.flatMap((entry) => ['--set', entry]);
const stair = 'steps=[{"risers":13,"riser_height":7.5,"treads":12,"tread_depth":10.5,"width":3.5}]';
const floors: Readonly<Record<string, readonly string[]>> = {
  'a square foot': known(1, 4),
  'a one-car garage of 240 ft2': sized(20, 12),
  'a two-car garage of 528 ft2 with stem walls and 46 ft of joints': [
    ...sized(24, 22),
    ...set('stem_wall_length=76', 'joint_length=46', 'joint_treatment=fill_flush'),
  ],
  'a basement of 1,150 ft2 with 13 steps, a drain and wet signs': [
    ...sized(46, 25),
    ...['--rows', stair, '--rows', 'obstacles=[{"what":"drain","around":3,"footprint":0.5}]'],
    ...set('grade=below_grade', 'moisture_signs=wet', 'cars_park=0'),
  ],
  'a shop of 2,400 ft2 with peeling paint': [...sized(60, 40), ...set('old_surface=peeling_coating')],
  'a warehouse of 12,000 ft2': sized(120, 100),
};

/** What is left of a price and a temperature may be less than nothing, and fewer people than usual may come. */
const signed = /^(above_walk_away|gross_|contribution|profit|net_margin|air_celsius|dew_)|^(crew_extra|people_more)$/;

interface Printed {
  readonly failures: string[];
  readonly below: string[];
  numbers: number;
}

/** Every number printed, at any depth. */
function collect(value: unknown, name: string, found: Printed): Printed {
  if (typeof value === 'number') {
    found.numbers += 1;
    if (value < -1e-9 && !signed.test(name)) found.below.push(`${name}: ${value}`);
  } else if (Array.isArray(value)) for (const each of value) collect(each, name, found);
  else if (typeof value === 'object' && value !== null)
    for (const [key, each] of Object.entries(value)) {
      if (key === 'failure') found.failures.push(`${name}: ${each}`);
      else collect(each, key === 'value' ? name : key, found);
    }
  return found;
}

describe.each(Object.entries(floors))('on %s', (_, words) => {
  it.each(shippedSystems)('%s is priced, every number finite and none below nothing', (system) => {
    const result = priceCommand(['--system', system, '--json', ...words], '2026-03-09', keptMeans);
    if (result.kind === 'faults') throw new Error(result.faults.join('\n'));
    const printed = JSON.parse(result.text);
    expect(printed[system].lines.price.value).toBeGreaterThan(0);
    const { failures, below, numbers } = collect(printed, '', { failures: [], below: [], numbers: 0 });
    expect({ failures, below }).toEqual({ failures: [], below: [] });
    expect(numbers).toBeGreaterThan(300);
  });
});
