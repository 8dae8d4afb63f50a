import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quicklyPriced } from '../../helpers/priced-floor.ts';
import { printedSeed } from '../../helpers/random-seed.ts';
import { cheapestPacks, type Pack } from './pack-solver.ts';

const seed = printedSeed('pack-solver.property');
const dollars = fc.integer({ min: 1, max: 900 });
const quarters = fc.integer({ min: 1, max: 40 }).map((count) => count / 4);
const needs = fc.integer({ min: 0, max: 400 }).map((count) => count / 4);

function leastCost(need: number, small: Pack, large: Pack): number {
  const result = cheapestPacks(need, small, large);
  if (result.kind === 'refused') throw new Error(result.reason);
  return result.cost;
}

describe('the cheapest packs of two sizes', () => {
  it('hold 9 gal in one of 4 gal at $10 and one of 6 gal at $14, which no one size does for $24', () => {
    const result = cheapestPacks(9, { holds: 4, price: 10 }, { holds: 6, price: 14 });
    expect(result).toEqual({ kind: 'packs', small: 1, large: 1, cost: 24 });
  });

  it('of 283.8 gal in packs of 3.3 gal are 86, not 87', () => {
    const result = cheapestPacks(86 * 3.3, { holds: 3.3, price: 10 }, { holds: 33, price: 900 });
    expect(result).toMatchObject({ small: 86, large: 0 });
  });

  it('are none for no need', () => {
    const result = cheapestPacks(0, { holds: 3, price: 135 }, { holds: 15, price: 640 });
    expect(result).toEqual({ kind: 'packs', small: 0, large: 0, cost: 0 });
  });

  it.each([
    [-1, 3, 15],
    [Number.NaN, 3, 15],
    [5, 0, 15],
    [5, 3, 0],
    [5, 1e-7, 15],
  ])('are refused for a need of %d in packs of %d and %d', (need, small, large) => {
    const result = cheapestPacks(need, { holds: small, price: 10 }, { holds: large, price: 20 });
    expect(result.kind).toBe('refused');
  });

  it('hold the need and cost what a table of every amount by the quarter gives', () => {
    fc.assert(
      fc.property(needs, quarters, quarters, dollars, dollars, (need, small, large, price, largePrice) => {
        const packs: [Pack, Pack] = [
          { holds: small, price },
          { holds: large, price: largePrice },
        ];
        const result = cheapestPacks(need, ...packs);
        if (result.kind === 'refused') throw new Error(result.reason);
        expect(result.small * small + result.large * large).toBeGreaterThanOrEqual(need);
        expect(result.cost).toBe(costByAmount(need, ...packs));
      }),
      { seed, numRuns: 500 },
    );
  });
});

/** Dynamic programming: the least cost of each amount, a quarter at a time. */
function costByAmount(need: number, small: Pack, large: Pack): number {
  const costs = [0];
  for (let amount = 1; amount <= need * 4; amount += 1) {
    const after = (pack: Pack): number => (costs[Math.max(0, amount - pack.holds * 4)] ?? 0) + pack.price;
    costs.push(Math.min(after(small), after(large)));
  }
  return costs[need * 4] ?? Number.NaN;
}

describe('the four ways of the sheet', () => {
  const base = 'buy_volume.base_slate';
  const cases = { need: needs, small: quarters, price: dollars, largePrice: dollars };

  interface Bought {
    readonly ways: number;
    readonly least: number;
  }

  function bought(need: number, small: Pack, large: Pack): Bought {
    const job = quicklyPriced('flake-full-broadcast', {
      instead: { [`${base}.need`]: need },
      products: {
        'base_slate.pack_gallons': small.holds,
        'base_slate.pack_price': small.price,
        'base_slate.large_gallons': large.holds,
        'base_slate.large_price': large.price,
      },
    });
    const [packs, largePacks] = [job.number(`${base}.packs`), job.number(`${base}.large_packs`)];
    const ways = job.number(`${base}.cost`);
    expect(packs * small.price + largePacks * large.price).toBe(ways);
    expect(packs * small.holds + largePacks * large.holds).toBeGreaterThanOrEqual(need);
    return { ways, least: leastCost(need, small, large) };
  }

  it('cost the least there is when the large pack is a whole number of packs, whatever the prices', () => {
    fc.assert(
      fc.property(fc.record({ ...cases, times: fc.integer({ min: 1, max: 8 }) }), (one) => {
        const { ways, least } = bought(
          one.need,
          { holds: one.small, price: one.price },
          { holds: one.small * one.times, price: one.largePrice },
        );
        expect(ways).toBe(least);
      }),
      { seed, numRuns: 120 },
    );
  });

  it('cost the least there is when the large pack is a half number of packs and costs no more a gallon', () => {
    fc.assert(
      fc.property(fc.record({ ...cases, halves: fc.integer({ min: 3, max: 15 }) }), (one) => {
        const large = (one.small * one.halves) / 2;
        const dearest = Math.floor((one.price / one.small) * large);
        const { ways, least } = bought(
          one.need,
          { holds: one.small, price: one.price },
          { holds: large, price: Math.min(one.largePrice, dearest) },
        );
        expect(ways).toBe(least);
      }),
      { seed, numRuns: 120 },
    );
  });

  it('never cost less than the least there is, for any sizes', () => {
    fc.assert(
      fc.property(fc.record({ ...cases, large: quarters }), (one) => {
        const { ways, least } = bought(
          one.need,
          { holds: one.small, price: one.price },
          { holds: one.large, price: one.largePrice },
        );
        expect(ways).toBeGreaterThanOrEqual(least);
      }),
      { seed, numRuns: 120 },
    );
  });

  it('miss the $42 of three small and one large for 13 gal in packs of 3 gal at $10 and of 4 gal at $12: they find $44', () => {
    expect(bought(13, { holds: 3, price: 10 }, { holds: 4, price: 12 })).toEqual({ ways: 44, least: 42 });
  });

  it('find the $32 of one large and three small for 11 gal in packs of 2 gal at $6 and of 5 gal at $14', () => {
    // Two large and one small are $34, three large $42, six small $36: only one large fewer finds it.
    expect(bought(11, { holds: 2, price: 6 }, { holds: 5, price: 14 })).toEqual({ ways: 32, least: 32 });
  });
});
