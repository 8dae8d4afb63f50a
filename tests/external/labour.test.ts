import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RowFile } from '../../src/template/line-schema.ts';
import { priced, quicklyPriced } from '../helpers/priced-floor.ts';
import { printedSeed } from '../helpers/random-seed.ts';

const seed = printedSeed('labour');
const system = 'flake-full-broadcast';

describe('a task’s hours', () => {
  it('are those of the Navy’s formula: quantity / unit x hours a unit / 8 x delay factor, in days of 8 h', () => {
    // NAVFAC P-405, as a construction man-hours manual quotes it; formula as reported there.
    const quantity = fc.integer({ min: 1, max: 20_000 });
    const unit = fc.constantFrom(1, 10, 100, 1000);
    const hoursAUnit = fc.double({ min: 0.01, max: 80, noNaN: true });
    const delay = fc.double({ min: 0.5, max: 3, noNaN: true });
    fc.assert(
      fc.property(quantity, unit, hoursAUnit, delay, (count, of, hours, factor) => {
        const row = { task: 'grind', quantity: count, rate: of / hours, factor };
        const found = quicklyPriced(system, { rows: { tasks: [row, { task: 'edge_grind' }] } });
        const manDays = ((count / of) * hours * factor) / 8;
        expect(found.number('tasks.1.task_hours') / (8 * manDays)).toBeCloseTo(1, 12);
      }),
      { seed, numRuns: 100 },
    );
  });
});

describe('24 x 22 ft with 4 in of stem wall, every task by two people', () => {
  // Derived from common practice, no source: hours a person, quantity over rate.
  const tasks: readonly (readonly [string, string, number, number, number])[] = [
    ['grind', 'area', 528, 175, 3.0171],
    ['edge_grind', 'length', 92, 35, 2.6286],
    ['stem_wall', 'area', (92 * 4) / 12, 40, 0.7667],
    ['fill_cracks', 'length', 60, 30, 2],
    ['vacuum', 'area', 528, 900, 0.5867],
    ['lay_base', 'area', 528, 450, 1.1733],
    ['broadcast_flake', 'area', 528, 900, 0.5867],
    ['scrape', 'area', 528, 350, 1.5086],
    ['lay_clear', 'area', 528, 450, 1.1733],
  ];
  const rows = tasks.map(([task, measure, quantity, rate]): RowFile => ({ task, measure, quantity, rate, people: 2 }));
  const job = () => priced(system, { set: { set_up_first: 1.5, load_out: 1 }, rows: { tasks: rows } });

  it.each(tasks.map((task, at) => [at + 1, ...task] as const))(
    'has task %d, %s',
    (at, _task, _measure, _q, _rate, hours) => {
      expect(job().number(`tasks.${at}.task_hours`)).toBeCloseTo(hours, 4);
    },
  );

  it('takes 13.44095 person-hours, 18.44095 with 2.5 h fixed for both, 9.220476 h of a crew of two', () => {
    const found = job();
    const sum = rows.reduce((total, _, at) => total + found.number(`tasks.${at + 1}.task_hours`), 0);
    expect(sum).toBeCloseTo(13.44095, 5);
    expect(found.number('person_hours')).toBeCloseTo(18.44095, 5);
    expect(found.number('trips.row_1.site_hours')).toBeCloseTo(9.220476, 6);
    expect(found.number('visits')).toBe(1);
  });
});

describe('fixed time', () => {
  it('makes small floors dear: finished jobs have more hours a square foot than the area alone explains', () => {
    // Derived from invented job records: hours = 0.887805 + 0.00483580 x area, so the marginal rate is 206.791 ft2/h.
    // One task at that rate and the rest as fixed time gives the line back.
    const hours = (area: number): number => {
      const row = { task: 'grind', quantity: area, rate: 206.791 };
      const set = { set_up_first: 0.887805, load_out: 0, crew_extra: -1 };
      return priced(system, { set, rows: { tasks: [row, { task: 'edge_grind' }] } }).number('person_hours');
    };
    for (const area of [420, 900, 2400]) expect(hours(area)).toBeCloseTo(0.887805 + 0.0048358 * area, 4);
    expect(hours(420) / 420).toBeGreaterThan(hours(2400) / 2400);
  });
});
