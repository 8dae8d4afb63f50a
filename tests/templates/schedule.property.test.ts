import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CellValue } from '../../src/formula/cells.ts';
import { nameOfCell } from '../../src/quote/named-cell.ts';
import { byColumnsOf } from '../helpers/clock-by-columns.ts';
import type { Given } from '../helpers/given-floor.ts';
import { type PricedFloor, quicklyPriced } from '../helpers/priced-floor.ts';
import { printedSeed } from '../helpers/random-seed.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';
import { between } from '../properties/quote-generator.ts';

// The crew's day by the operator and by columns of formulas (templates/parts/hours/clock-columns.json): two ways, one answer.
const seed = printedSeed('schedule.property');
/** Floors of each system: 480 of all twelve. */
const numRuns = 40;

const floors = fc.record(
  {
    'areas.bay.length': between(4, 120),
    'areas.bay.width': between(4, 100),
    crack_length: between(0, 300),
    joint_length: between(0, 200),
    spall_count: fc.integer({ min: 0, max: 20 }),
    stem_wall_length: fc.constantFrom(0, 70),
    joint_treatment: fc.constantFrom('leave_open', 'fill_flush', 'fill_after'),
    slab_temperature: between(45, 100),
    humidity: between(0.2, 0.9),
    hardness: fc.constantFrom('medium', 'soft', 'very_hard'),
    day_begins: between(5, 9),
    day_length: between(5, 12),
    latest_coat_start: between(12, 18),
    drive_time: between(0, 2),
    usual_crew: fc.constantFrom(1, 2, 3, 4),
    all_beside: fc.constantFrom(0, 1),
    grace_hours: fc.constantFrom(0, 0.25),
    'trips.row_2.people_more': fc.constantFrom(-1, 0, 1),
    'tasks.edge_grind.beside': fc.constantFrom('own', 'above'),
    'tasks.vacuum.wait': between(0, 3),
    // What fails: nobody at a task, no day, a rate of nothing.
    'tasks.edge_grind.rate': fc.constantFrom(35, 35, 35, 0),
    half_day: fc.constantFrom(0.5, 1),
  },
  { requiredKeys: [] },
);
const departures = fc.record(
  { on_site_day: fc.constantFrom(0, 4), crew: fc.constantFrom(0, 2), clock_day: fc.constantFrom(0, 24) },
  { requiredKeys: [] },
);

/** What two layouts of one floor say of it: every line, and every cell of every column that both have. */
function different(one: PricedFloor, other: PricedFloor): string[] {
  return one.option.plan.cells.flatMap(({ place, content }) => {
    if (content.kind === 'operator') return [];
    const name = nameOfCell(one.option, place);
    const [left, right] = [one.value(name), other.value(name)];
    return said(one, left) === said(other, right) ? [] : [`${name}: ${said(one, left)} and ${said(other, right)}`];
  });
}

/** A failure by its kind and where it began; of a task's by the task, as the columns have more cells for one than the operator. */
function said({ option }: PricedFloor, value: CellValue): string {
  if (typeof value !== 'object') return String(value);
  const place = option.plan.cells[value.origin]?.place;
  if (place === undefined) return `${value.kind} nowhere`;
  const task = place.kind === 'cell' && place.table === 'tasks' ? option.rows.get('tasks')?.[place.row]?.id : undefined;
  return `${value.kind} in ${task ?? nameOfCell(option, place)}`;
}

const present = <T extends object>(given: T): Readonly<Record<string, number | string>> =>
  Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));

describe.each(shippedSystems)('the crew’s day of %s', (system) => {
  it('is the same by the operator and by columns of formulas, in every cell of every floor, failures too', () => {
    fc.assert(
      fc.property(floors, fc.option(departures), (entered, departed) => {
        const { option } = quicklyPriced(system);
        const has = ([name]: [string, unknown]): boolean => {
          const [table = '', row] = name.split('.');
          return row === undefined || (option.rows.get(table) ?? []).some(({ id }) => id === row);
        };
        const set = Object.fromEntries(Object.entries(present(entered)).filter(has));
        const instead = departed === null ? {} : (present(departed) as Given['instead']);
        const given: Given = { set, ...(instead && { instead }) };
        expect(different(quicklyPriced(system, given), quicklyPriced(byColumnsOf(system), given))).toEqual([]);
      }),
      { numRuns, seed },
    );
  });
});
