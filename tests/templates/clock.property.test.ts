import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PricedFloor, quicklyPriced } from '../helpers/priced-floor.ts';
import { printedSeed } from '../helpers/random-seed.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';

// Statements about the clock that hold for every floor, on random ones of every shipped system.
const seed = printedSeed('clock.property');
const numRuns = 8;
const enough = 1e-9;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const floors = fc.record(
  {
    'areas.bay.length': between(8, 120),
    'areas.bay.width': between(8, 100),
    crack_length: between(0, 200),
    stem_wall_length: fc.constantFrom(0, 70),
    slab_temperature: between(45, 100),
    humidity: between(0.2, 0.9),
    day_begins: between(6, 8),
    latest_coat_start: between(14, 17),
    drive_time: between(0, 1.25),
    usual_crew: fc.constantFrom(2, 3),
    joint_treatment: fc.constantFrom('leave_open', 'fill_after'),
  },
  { requiredKeys: [] },
);
type Floor = Readonly<Record<string, number | string>>;
const given = (floor: object): Floor =>
  Object.fromEntries(Object.entries(floor).filter(([, value]) => value !== undefined));

interface Row {
  readonly id: string;
  readonly visit: number;
  readonly joined: boolean;
  readonly lays: boolean;
  readonly ready: number;
  readonly start: number;
  readonly finish: number;
}

/** The tasks that are done, in sheet order. */
function rowsOf(floor: PricedFloor): Row[] {
  const ids = (floor.option.rows.get('tasks') ?? []).map(({ id }) => id);
  return ids.flatMap((id) => {
    const at = (column: string): number => floor.number(`tasks.${id}.${column}`);
    if (at('include') === 0) return [];
    const lays = floor.value(`tasks.${id}.lays`) !== 'none';
    const [ready, start, finish] = [at('ready'), at('start'), at('finish')];
    return [{ id, visit: at('visit_used'), joined: at('joined') === 1, lays, ready, start, finish }];
  });
}

describe.each(shippedSystems)('the clock of %s', (system) => {
  it('begins nothing before it is ready, keeps the order of rows, and does each thing after it begins', () => {
    fc.assert(
      fc.property(floors, (set) => {
        const rows = rowsOf(quicklyPriced(system, { set: given(set) }));
        let free = 0;
        for (const [at, { id, ready, start, finish, joined, visit }] of rows.entries()) {
          expect(start, id).toBeGreaterThanOrEqual(ready - enough);
          expect(finish, id).toBeGreaterThanOrEqual(start);
          if (!joined) expect(start, id).toBeGreaterThanOrEqual(free - enough);
          expect([0, 1], id).toContain(visit - (rows[at - 1]?.visit ?? 1));
          free = Math.max(free, finish);
        }
      }),
      { seed, numRuns },
    );
  });

  it('has visits on days of their own, and pays for no fewer hours than are worked', () => {
    fc.assert(
      fc.property(floors, (set) => {
        const floor = quicklyPriced(system, { set: given(set) });
        const trip = (row: number, column: string): number => floor.number(`trips.row_${row}.${column}`);
        for (let row = 1; row <= 8; row += 1) {
          expect(trip(row, 'paid')).toBeGreaterThanOrEqual(trip(row, 'worked') - enough);
          if (row > 1 && trip(row, 'used') === 1)
            expect(Math.floor(trip(row, 'arrives') / 24)).toBeGreaterThan(
              Math.floor(trip(row - 1, 'last_task_done') / 24),
            );
        }
        expect(floor.number('idle_hours')).toBeGreaterThanOrEqual(-enough);
      }),
      { seed, numRuns },
    );
  });

  it('lays no coat after the latest start of a day', () => {
    fc.assert(
      fc.property(floors, (set) => {
        const floor = quicklyPriced(system, { set: given(set) });
        const rows = rowsOf(floor);
        for (const { id, lays, start } of rows) {
          if (!lays) continue;
          expect(start % 24, id).toBeLessThanOrEqual(floor.number('coat_start_until') + enough);
        }
      }),
      { seed, numRuns },
    );
  });

  it('is done no sooner when the day begins later', () => {
    fc.assert(
      fc.property(floors, between(6, 8), between(6, 8), (set, one, other) => {
        const done = (day_begins: number): number =>
          quicklyPriced(system, { set: { ...given(set), day_begins } }).number('work_done');
        expect(done(Math.max(one, other))).toBeGreaterThanOrEqual(done(Math.min(one, other)) - enough);
      }),
      { seed, numRuns },
    );
  });
});

describe('full flake on an epoxy base', () => {
  it('is done no sooner on a cooler slab', () => {
    fc.assert(
      fc.property(floors, between(45, 100), between(45, 100), (set, one, other) => {
        const done = (slab_temperature: number): number =>
          quicklyPriced('flake-full-broadcast', { set: { ...given(set), slab_temperature } }).number('work_done');
        expect(done(Math.min(one, other))).toBeGreaterThanOrEqual(done(Math.max(one, other)) - enough);
      }),
      { seed, numRuns: 100 },
    );
  });
});
