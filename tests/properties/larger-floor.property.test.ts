import { describe, expect, it } from 'vitest';
import { type PricedFloor, quicklyPriced } from '../helpers/priced-floor.ts';

// The grinder is fixed: on larger floors another comes, which takes less than half the hours.
const floor = (system: string, area: number, set: Readonly<Record<string, number>> = {}): PricedFloor =>
  quicklyPriced(system, {
    set: { ...set, grinder: 'walk_behind', 'areas.bay.length': area / 20, 'areas.bay.width': 20 },
  });
const areasFrom = (from: number, to: number, step: number): number[] =>
  Array.from({ length: (to - from) / step + 1 }, (_, at) => from + at * step);

/** The largest fall of a line from one floor to the next larger one; 0 where it never falls. */
function largestFall(floors: readonly PricedFloor[], name: string): number {
  const values = floors.map((each) => each.number(name));
  return Math.max(0, ...values.slice(1).map((value, at) => (values[at] ?? 0) - value));
}

describe('a larger floor of the fast system', () => {
  // The wait of three people for the base is paid while a day holds it. Where it no longer does, the crew comes again, and
  // the price keeps what the full day was.
  it.each([
    ['as it is', {}],
    ['on a slab at 65 °F', { slab_temperature: 65 }],
    ['that loads nothing while the base cures', { early_load_out: 0 }],
  ])('%s never costs less than a smaller one, from 200 to 1,600 ft2, where one day no longer holds it', (_, set) => {
    const floors = areasFrom(200, 1600, 20).map((area) => floor('flake-fast-one-day', area, set));
    expect(floors[0]?.number('trips_planned')).toBe(1);
    expect(floors.at(-1)?.number('trips_planned')).toBeGreaterThan(1);
    expect(largestFall(floors, 'list_price')).toBe(0);
    expect(largestFall(floors, 'paid_hours')).toBe(0);
    expect(largestFall(floors, 'crew_days')).toBe(0);
  });

  it('that is waited for on site is laid, washed up and loaded out on the day: no coat is left for the next', () => {
    for (const area of areasFrom(560, 700, 10)) {
      const each = floor('flake-fast-one-day', area);
      expect(each.number('trips.row_1.days'), `${area} ft2`).toBe(1);
      expect(each.number('tasks.lay_clear.day_no'), `${area} ft2`).toBe(each.number('tasks.scrape.day_no'));
    }
  });
});

describe('a fast floor of 1,200 to 1,300 ft2', () => {
  it('takes two trips, never a third for loading out on the day on which the next visit begins', () => {
    for (const area of areasFrom(1200, 1300, 10))
      expect(floor('flake-fast-one-day', area).number('trips_planned'), `${area} ft2`).toBe(2);
  });
});
