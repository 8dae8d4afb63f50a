import { describe, expect, it } from 'vitest';
import type { Given } from '../helpers/given-floor.ts';
import { type PricedFloor, priced, quicklyPriced } from '../helpers/priced-floor.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';

/*
 * Batches against the working time, through the base coat of the shipped full flake system. Rates of placing and
 * throwing and the 0.75 are common practice, no source; what follows from them is derived.
 */
const flake = 'flake-full-broadcast';
const atReference = { slab_temperature: 75, air_temperature: 75 };
const plain = { resin_waste: 0, held_up: 0, ...atReference };
const sized = (length: number, width: number) => ({ 'areas.bay.length': length, 'areas.bay.width': width });

function base(set: Given['set'], products: Given['products'] = {}) {
  const floor = priced(flake, { set: { ...plain, ...set }, products });
  return {
    column: (name: string): number => floor.number(`coats.base.${name}`),
    check: (name: string) => floor.check(`coats.base.${name}`),
  };
}

describe('the largest batch', () => {
  it('is 3.000 gal: 25 ft2/min at 100 ft2/gal in 60 % of a pot life of 20 min', () => {
    // Derived: batch = share x pot life x rate / spread; the 60 % is common practice, no source.
    const { column } = base(
      {
        placing_rate: 25,
        batch_share: 0.6,
        mix_time: 0,
        pour_time: 0,
        'coats.base.thrown_into': 0,
        'coats.base.coverage_typed': 100,
      },
      { 'base_slate.working_minutes': 20 },
    );
    expect(column('batch_area') / column('coverage')).toBeCloseTo(3, 12);
  });

  it('takes 0.75 of the working time to the minute when it is thrown into', () => {
    // 10 ft2/min placed, 20 ft2/min thrown, 5 min of it beside: 400 min = 3 + 1 + A/10 + A/20 - 5, A = 401 / 0.15.
    const { column } = base(
      { placing_rate: 10, throwing_rate: 20, throwing_overlap: 5, batch_share: 1, batch_most: 200 },
      { 'base_slate.working_minutes': 400 },
    );
    expect(column('batch_area')).toBeCloseTo(401 / 0.15, 9);
  });

  it('is no more than the bucket holds: 5 gal at 134 ft2/gal', () => {
    const { column } = base({ batch_most: 5 }, { 'base_slate.working_minutes': 600 });
    expect(column('batch_area')).toBeCloseTo(670, 9);
  });

  it('is smaller where flake is thrown than where it is not', () => {
    const thrown = base({ batch_most: 200 }).column('batch_area');
    const bare = base({ batch_most: 200, 'coats.base.thrown_into': 0 }).column('batch_area');
    expect(bare).toBeGreaterThan(thrown);
  });
});

describe('528 ft2 of base in one batch', () => {
  it('takes 3 min mixing, 1 pouring, 528/28 placing and 528/40 - 5 throwing: 31.06 min', () => {
    const { column } = base(sized(24, 22));
    expect(column('batches')).toBe(1);
    expect(column('batch_minutes')).toBeCloseTo(3 + 1 + 18.857142857 + 8.2, 8);
  });

  it('reaches the whole 24 ft of a 22 ft bay', () => {
    expect(base(sized(24, 22)).column('reach')).toBe(24);
  });
});

describe('one kit of 3 gal at 12 mils wet', () => {
  it('covers 401.0417 ft2, 16.71007 ft of a 24 ft bay', () => {
    // Derived: 1604.1667 x 3 / 12.
    const { column } = base({
      ...sized(16.7100694444444, 24),
      'coats.base.film_by': 'wet',
      'coats.base.wet_typed': 12,
      'coats.base.drink': 0,
      bay_width: 24,
    });
    expect([column('batches'), column('batch_spread')]).toEqual([1, expect.closeTo(401.0417, 4)]);
    expect(column('batch_gallons')).toBeCloseTo(3, 9);
    expect(column('reach')).toBeCloseTo(16.71007, 5);
  });

  it('reaches 7 in less for each of two batches, which overlap', () => {
    const { column } = base({
      ...sized(2 * 16.7100694444444, 24),
      'coats.base.film_by': 'wet',
      'coats.base.wet_typed': 12,
      'coats.base.drink': 0,
      bay_width: 24,
      batch_most: 3.01,
    });
    expect(column('batches')).toBe(2);
    expect(column('reach')).toBeCloseTo(16.71007 - 7 / 12, 5);
  });
});

describe('ordinary floors', () => {
  const floors = [sized(20, 12), sized(24, 22), sized(32, 22), sized(46, 25)];

  it.each(shippedSystems)('of %s from 240 to 1,150 ft2 can be placed in batches, each in its time', (system) => {
    for (const set of floors) {
      const floor = quicklyPriced(system, { set });
      for (const { label } of floor.option.rows.get('coats') ?? []) expectPlaced(floor, label);
    }
  });

  function expectPlaced(floor: PricedFloor, coat: string): void {
    const column = (name: string): number => floor.number(`coats.${coat}.${name}`);
    for (const name of ['batch_starts', 'batch_fits'])
      expect(floor.check(`coats.${rowOf(floor, coat)}.${name}`).verdict).toBe('holds');
    if (column('include') === 0) {
      expect(column('batches')).toBe(0);
      return;
    }
    expect(column('batches')).toBeGreaterThanOrEqual(1);
    expect(column('batch_minutes')).toBeLessThanOrEqual(0.75 * column('working_here') + 1e-9);
    expect(column('batch_gallons')).toBeLessThan(6);
  }

  const rowOf = (floor: PricedFloor, coat: string): string =>
    (floor.option.rows.get('coats') ?? []).find(({ label }) => label === coat)?.id ?? '';
});

describe('a base that closes too soon', () => {
  it('is a stop that names a working time, a slab and a rate which would do', () => {
    // 40 ft2: 3 + 1 + 40/28 + 0 min (all of it is thrown within the 5 min beside placing) = 5.4286 / 0.75 = 7.2381 min.
    const { check, column } = base({}, { 'base_slate.working_minutes': 7 });
    expect(column('batch_area')).toBeLessThan(40);
    const told = check('batch_fits');
    expect(told).toMatchObject({ verdict: 'fails', severity: 'stop', absolute: false });
    expect(told.says).toContain('It wants 7.2 min of working time');
    // 75 - 18 x log2(7.2381 / 7) = 74.13.
    expect(told.says).toContain('a slab of about 74.1 °F');
    // 40 ft2 in 0.75 x 7 - 4 = 1.25 min.
    expect(told.says).toContain('place 32 ft²/min');
  });

  it('is a stop that more hands do not lift when mixing alone takes the time', () => {
    const { check, column } = base({}, { 'base_slate.working_minutes': 5 });
    expect([column('batch_area'), column('batches')]).toEqual([0, 0]);
    expect(check('batch_starts')).toMatchObject({ verdict: 'fails', severity: 'stop' });
    expect(check('batch_starts').says).toContain('More hands do not help.');
    expect(check('batch_fits').verdict).toBe('holds');
  });

  it('is none for a coat left out, nor for spots smaller than any batch', () => {
    const left = base({ 'coats.base.include': 0 }, { 'base_slate.working_minutes': 5 });
    expect(left.check('batch_starts').verdict).toBe('holds');
    const spot = base(sized(5, 4), { 'base_slate.working_minutes': 6.5 });
    expect(spot.column('batch_area')).toBeLessThan(40);
    expect(spot.check('batch_fits').verdict).toBe('holds');
  });
});
