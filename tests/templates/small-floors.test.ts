import { describe, expect, it } from 'vitest';
import { type PricedFloor, priced, quicklyPriced } from '../helpers/priced-floor.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';

const flake = 'flake-full-broadcast';
const floorOf = (length: number, width: number) => ({ 'areas.bay.length': length, 'areas.bay.width': width });

function unfit(floor: PricedFloor): string[] {
  return (floor.option.rows.get('tasks') ?? [])
    .map(({ id }) => id)
    .filter((id) => floor.value(`tasks.${id}.crew_fits`) !== true);
}

describe('a shop of one person', () => {
  // The repair sheet sends one fewer than usual, and says that a shop of one sets that to 0.
  it.each(shippedSystems.filter((system) => system !== 'repair-only'))('is stopped by no task of %s', (system) => {
    expect(unfit(priced(system, { set: { usual_crew: 1 } }))).toEqual([]);
  });

  it('does edges and cracks after the grinding, since nobody is beside it', () => {
    const alone = priced(flake, { set: { usual_crew: 1 } });
    // 528 / 175 + 92 / 35 + 20 / 25 + 20 / 60
    const preparation = ['grind', 'edge_grind', 'fill_cracks', 'shave_cracks'];
    const clock = preparation.reduce((sum, task) => sum + alone.number(`tasks.${task}.clock_added`), 0);
    expect(clock).toBeCloseTo(3.01714 + 2.62857 + 0.8 + 0.33333, 4);
  });
});

describe('spots instead of the whole floor', () => {
  it.each([flake, 'solid-colour'])('are all that %s lays its coats on', (system) => {
    const floor = priced(system, { set: { extent: 'spots', spot_area: 20, repair_only: 1 } });
    expect(floor.number('tasks.vacuum.quantity')).toBe(30);
  });
});

describe('the later visits of a floor under 300 ft2', () => {
  it.each([flake, 'flake-partial', 'solid-colour', 'grind-and-seal'])('are made by one person in %s', (system) => {
    const small = priced(system, { set: floorOf(20, 12) });
    const usual = priced(system, { set: floorOf(20, 20) });
    expect([1, 2].map((visit) => small.number(`trips.row_${visit}.crew_here`))).toEqual([2, 1]);
    expect([1, 2].map((visit) => usual.number(`trips.row_${visit}.crew_here`))).toEqual([2, 2]);
  });
});

describe('setting up, loading and loading out', () => {
  it.each([
    [10, 10, 0.67],
    [25, 10, 0.67],
    [25, 15, 0.835],
    [25, 20, 1],
    [60, 40, 1],
  ])('of %d by %d ft take %f of the usual', (length, width, share) => {
    expect(priced(flake, { set: floorOf(length, width) }).number('fixed_share')).toBeCloseTo(share, 12);
  });
});

describe('a quarter of an hour over', () => {
  const visit = (hours: number): [days: number, charged: number] => {
    // The longest day holds 9.25 h on site; setting up takes the rest of `hours`.
    const found = priced(flake);
    const setUp = found.number('set_up_first') + hours - found.number('trips.row_1.site_hours');
    const floor = priced(flake, { set: { set_up_first: setUp, latest_coat_start: 17.5 } });
    return [floor.number('trips.row_1.days'), floor.number('trips.row_1.days_charged')];
  };

  it('costs no second trip', () => {
    expect(visit(7.25)).toEqual([1, 1]);
    expect(visit(9.25)).toEqual([1, 1.5]);
    expect(visit(9.49)).toEqual([1, 1.5]);
  });

  it('is a quarter of an hour and not more', () => {
    expect(visit(9.52)[0]).toBe(2);
    expect(visit(9.52)[1]).toBeGreaterThan(1);
  });
});

describe('the usual band', () => {
  const checked = (length: number, width: number) => {
    const floor = priced(flake, { set: { ...floorOf(length, width), finance_share: 0 } });
    return { floor, told: floor.check('price_in_band') };
  };

  it.each([
    [20, 12, 6.875, 13.5],
    [24, 22, 5.5, 9],
    [40, 30, 4.4, 8.1],
    [120, 100, 4.4, 8.1],
  ])('of %d by %d ft is $%f to %f a square foot', (length, width, from, to) => {
    const { floor } = checked(length, width);
    expect(floor.number('band_from')).toBeCloseTo(from, 12);
    expect(floor.number('band_to')).toBeCloseTo(to, 12);
  });

  it('holds for a one-car, a two-car and a floor of 1,200 ft2', () => {
    for (const [length, width] of [
      [20, 12],
      [24, 22],
      [40, 30],
    ] as const)
      expect(checked(length, width).told.verdict, `${length} by ${width}`).toBe('holds');
  });

  it('when the price is outside it, says for which floor', () => {
    const { told } = checked(5, 5);
    expect(told.verdict).toBe('fails');
    expect(told.says).toContain('of a floor of 25 ft²');
  });
});

describe('a larger floor', () => {
  it.each([flake, 'flake-partial', 'solid-colour', 'grind-and-seal'])(
    'is never cheaper in %s, from 200 to 560 ft2',
    (system) => {
      const prices = Array.from({ length: 13 }, (_, step) =>
        quicklyPriced(system, { set: floorOf(20, 10 + step * 1.5) }).number('list_price'),
      );
      const falls = prices.filter((price, at) => at > 0 && price < (prices[at - 1] ?? 0) - 1e-9);
      expect(falls).toEqual([]);
    },
  );
});
