import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PricedFloor, quicklyPriced } from '../helpers/priced-floor.ts';
import { printedSeed } from '../helpers/random-seed.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';
import { between, type Entered, someEntries } from './quote-generator.ts';

// Statements that hold for every quote, on random ones of every shipped system.
const seed = printedSeed('price.property');
/** Each rule is tried on every system, together 60 times. */
const numRuns = Math.ceil(60 / shippedSystems.length);

const price = (system: string, set: Entered): PricedFloor => quicklyPriced(system, { set });

/** The later is not less, but for the 15th digit. */
function expectNotLess(after: PricedFloor, before: PricedFloor, names: readonly string[]): void {
  for (const name of names) {
    const [now, then] = [after.number(name), before.number(name)];
    expect(now, name).toBeGreaterThanOrEqual(then - 1e-12 * Math.abs(then));
  }
}

describe.each(shippedSystems)('%s', (system) => {
  it('never costs less with more waste', () => {
    const waste = fc.constantFrom('resin_waste', 'held_up', 'crack_waste', 'patch_waste');
    fc.assert(
      fc.property(someEntries, waste, between(0, 0.5), between(0, 0.5), (set, name, one, other) => {
        const less = price(system, { ...set, [name]: Math.min(one, other) });
        const more = price(system, { ...set, [name]: Math.max(one, other) });
        expectNotLess(more, less, ['materials_bought', 'direct_cost', 'full_cost', 'list_price', 'price']);
      }),
      { seed, numRuns },
    );
  });

  it('never has a lower price at a higher target', () => {
    const target = between(0, 0.5);
    fc.assert(
      fc.property(someEntries, fc.constantFrom('gross', 'net'), target, target, (set, target_on, one, other) => {
        const lower = price(system, { ...set, target_on, target_margin: Math.min(one, other) });
        const higher = price(system, { ...set, target_on, target_margin: Math.max(one, other) });
        expectNotLess(higher, lower, ['list_price', 'minimum_charge', 'price']);
      }),
      { seed, numRuns },
    );
  });

  it('gives the target back at the price at target, to 1e-9', () => {
    fc.assert(
      fc.property(someEntries, fc.constantFrom('gross', 'net'), between(0, 0.55), (set, target_on, target) => {
        const job = price(system, { ...set, target_on, target_margin: target });
        const list = job.number('list_price');
        expect(job.number('margin_at_list')).toBeCloseTo(target, 9);
        expect(keptShare(job, list, target_on === 'net')).toBeCloseTo(target, 9);
      }),
      { seed, numRuns: 2 * numRuns },
    );
  });

  it('is never priced under the minimum, nor under the discounted price at target, and ends on the step', () => {
    fc.assert(
      fc.property(someEntries, (set) => {
        const job = price(system, set);
        const [asked, step] = [job.number('price'), job.number('round_to')];
        const least = Math.max(job.number('minimum_charge'), job.number('list_price') * (1 - job.number('discount')));
        expect(asked).toBeGreaterThanOrEqual(least - 1e-9);
        expect(asked).toBeLessThan(least + step + 1e-9);
        expect(Math.abs(asked / step - Math.round(asked / step))).toBeLessThan(1e-6);
      }),
      { seed, numRuns },
    );
  });

  it('never gets cheaper as the floor grows, the target, the grinder and the visits being fixed', () => {
    fc.assert(
      fc.property(someEntries, between(8, 100), between(8, 100), (set, one, other) => {
        const fixed = { grinder: 'walk_behind', ...set };
        const small = price(system, { ...fixed, 'areas.bay.length': Math.min(one, other) });
        const large = price(system, { ...fixed, 'areas.bay.length': Math.max(one, other) });
        expectNotLess(large, small, ['materials_bought']);
        // A floor that tips over from waiting on site to coming again pays the wait no more: its own test bounds that.
        if (large.number('visits') === small.number('visits'))
          expectNotLess(large, small, ['paid_hours', 'crew_days', 'direct_cost', 'list_price', 'price']);
      }),
      { seed, numRuns },
    );
  });

  it('adds up: costs to the whole, price and tax to the total, what is left to the price', () => {
    fc.assert(
      fc.property(someEntries, (set) => {
        const job = price(system, set);
        const sum = (...names: string[]): number => names.reduce((total, name) => total + job.number(name), 0);
        const costs = ['materials_cost', 'consumables_cost', 'labour_cost', 'equipment_cost', 'travel_cost'];
        expect(job.number('direct_cost')).toBeCloseTo(sum(...costs), 8);
        expect(job.number('full_cost')).toBeCloseTo(
          sum('direct_cost', 'overhead_cost', 'contingency_cost', 'reserve_cost'),
          8,
        );
        expect(job.number('total')).toBeCloseTo(sum('price', 'tax'), 8);
        expect(sum('full_cost', 'commission', 'fees', 'profit')).toBeCloseTo(job.number('price'), 8);
        expect(sum('direct_cost', 'commission', 'fees', 'contribution')).toBeCloseTo(job.number('price'), 8);
      }),
      { seed, numRuns },
    );
  });
});

/** What is left of a price, written from the rules and not from the sheet: everything unrounded. */
function keptShare(job: PricedFloor, list: number, net: boolean): number {
  const of = (name: string): number => job.number(name);
  if (!net) return (list - of('direct_cost')) / list;
  const bought = of('materials_bought');
  const mode = job.value('tax_mode');
  const charged =
    mode === 'on_price'
      ? of('sales_tax_rate') * of('taxable_share') * list
      : mode === 'on_materials'
        ? of('sales_tax_rate') * bought
        : 0;
  const shares = of('card_fee') * of('card_share') + of('finance_fee') * of('finance_share');
  const fees = shares * (list + charged) + of('card_fixed_fee') + of('receipts_tax_rate') * list;
  return (list - of('full_cost') - of('commission_rate') * list - fees) / list;
}
