import { beforeAll, describe, expect, it } from 'vitest';
import { type SweptPrice, sweptPrices } from '../helpers/price-sweep.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';

/** A step of work by 1 % or a foot may raise a price by so much, but where a whole pack is added. */
const mostOfPrice = 0.03;
const mostDollars = 60;
/** List prices are known to fifteen digits; a fall under a hundredth of a cent is none. */
const noFall = 1e-4;

type Step = readonly [before: SweptPrice, now: SweptPrice];

function steps(prices: readonly SweptPrice[]): Step[] {
  return prices.slice(1).map((now, at): Step => [prices[at] ?? now, now]);
}

const words = ([before, now]: Step): string => `at ${now.at.toFixed(1)} from $${before.price} to $${now.price}`;

describe.each(shippedSystems)('the price of %s', (system) => {
  describe.each(['floor', 'cracks'] as const)('as the %s grow', (swept) => {
    let taken: readonly Step[] = [];
    beforeAll(() => {
      taken = steps(sweptPrices(system, swept));
    });

    it('never falls', () => {
      const falls = taken.filter(
        ([before, now]) => now.price < before.price || now.listPrice < before.listPrice - noFall,
      );
      expect(falls.map(words)).toEqual([]);
    });

    it('rises by at most 3 % or $60 a step, but by a whole pack', () => {
      const jumps = taken.filter(
        ([before, now]) =>
          now.packs === before.packs && now.price - before.price > Math.max(mostDollars, mostOfPrice * before.price),
      );
      expect(jumps.map(words)).toEqual([]);
    });

    it('says where it carries part of another trip, and only there', () => {
      const wrong = taken.filter(([, { trips, saysTrips }]) => Number.isInteger(trips) === saysTrips);
      expect(wrong.map(words)).toEqual([]);
    });
  });
});
