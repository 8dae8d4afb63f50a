import { describe, expect, it } from 'vitest';
import { type PricedFloor, quicklyPriced } from '../helpers/priced-floor.ts';

// The grinder is fixed: from 1,500 ft2 a larger one comes, which takes less than half the hours.
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
  it('costs at most $10 less where waiting tips over to coming again, at 650 ft2, and pays 1 h less', () => {
    const floors = areasFrom(600, 700, 5).map((area) => floor('flake-fast-one-day', area));
    expect(floors[0]?.number('visits')).toBe(1);
    expect(floors.at(-1)?.number('visits')).toBe(2);
    expect(largestFall(floors, 'list_price')).toBeLessThan(10);
    expect(largestFall(floors, 'paid_hours')).toBeLessThan(1);
    expect(largestFall(floors, 'crew_days')).toBe(0);
  });

  // The wait of three people for the base is paid, some $500; a second visit is loading, driving and half a day.
  it.each([
    ['as it is', {}, 10],
    ['on a slab at 65 °F', { slab_temperature: 65 }, 110],
    ['that loads nothing while the base cures', { early_load_out: 0 }, 110],
  ])('%s costs never more than that less, from 200 to 1,600 ft2', (_, set, most) => {
    const floors = areasFrom(200, 1600, 50).map((area) => floor('flake-fast-one-day', area, set));
    expect(largestFall(floors, 'list_price')).toBeLessThan(most);
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
      expect(floor('flake-fast-one-day', area).number('round_trips'), `${area} ft2`).toBe(2);
  });
});
