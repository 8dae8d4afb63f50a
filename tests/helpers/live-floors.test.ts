import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlannedCell } from '../../src/formula/cells.ts';
import { closuresOf } from '../../src/formula/closures.ts';
import { planOption } from '../../src/template/plan.ts';
import { someEntries } from '../properties/quote-generator.ts';
import { entriesOf, type Given, withFields } from './given-floor.ts';
import { quicklyPriced } from './priced-floor.ts';
import { printedSeed } from './random-seed.ts';
import { shippedStack, shippedSystems } from './shipped-stacks.ts';

const seed = printedSeed('live-floors');
const numRuns = Math.ceil(24 / shippedSystems.length);

/** A floor laid out and compiled for itself alone. */
function laidOutAnew(system: string, given: Given) {
  const { stack, products } = shippedStack(system);
  const option = planOption(stack, entriesOf(given), withFields(products, given.products ?? {}));
  expect(option.faults).toEqual([]);
  return { option, values: closuresOf(option.plan, option.graph).values() };
}

function expectAsAnew(system: string, given: Given): void {
  const { option, values } = laidOutAnew(system, given);
  const floor = quicklyPriced(system, given);
  expect(floor.option.plan.cells.map(standing)).toEqual(option.plan.cells.map(standing));
  expect(floor.option.plan.cells.map((_, cell) => floor.read(cell))).toStrictEqual(values);
}

/** What stands in a cell: for a formula, that there is one. */
function standing({ place, content }: PlannedCell) {
  return [place, 'value' in content ? content.value : content.kind];
}

const feet = fc.integer({ min: 8, max: 60 });
const area = fc.record({ place: fc.constantFrom('bay', 'shed'), length: feet, width: feet });
const givens: fc.Arbitrary<Given> = fc.record(
  {
    set: someEntries,
    instead: fc.record({ materials_cost: fc.integer({ min: 100, max: 3000 }) }),
    rows: fc.record({
      areas: fc
        .array(area, { minLength: 1, maxLength: 2 })
        .map((all) => all.slice(0, all[0]?.place === all[1]?.place ? 1 : 2)),
    }),
    products: fc.record({ 'base_slate.pack_price': fc.integer({ min: 1, max: 900 }) }),
  },
  { requiredKeys: [] },
);

/** What is entered in the floor's own rows is not there when others are given. */
function withoutOwnAreas({ set = {}, ...given }: Given): Given {
  const kept = Object.entries(set).filter(([name]) => given.rows === undefined || !name.startsWith('areas.'));
  return { ...given, set: Object.fromEntries(kept) };
}

describe.each(shippedSystems)('a floor of %s that is set on one laid out before', (system) => {
  it('has the cells and reads in every one of them what it reads when it is laid out for itself', () => {
    fc.assert(
      fc.property(givens, (given) => expectAsAnew(system, withoutOwnAreas(given))),
      { seed, numRuns },
    );
  });
});

describe('a floor that is set on one laid out before', () => {
  const flake = 'flake-full-broadcast';

  it('takes a product, a unit and a number in place of a row’s own formula, for which it is laid out anew', () => {
    expectAsAnew(flake, { set: { 'coats.base.product': 'base_sand' } });
    expectAsAnew(flake, { set: { 'tasks.vacuum.measure': 'length', 'tasks.vacuum.quantity': 18.5 } });
    expectAsAnew(flake, { set: { 'tasks.vacuum.quantity': 400 } });
    expectAsAnew(flake, {});
  });

  it('fails where a pack holds nothing, and is mended for the next', () => {
    const empty = { products: { 'base_slate.pack_gallons': 0 } };
    expectAsAnew(flake, empty);
    expect(quicklyPriced(flake, empty).value('price')).toMatchObject({ kind: 'division' });
    expectAsAnew(flake, {});
  });

  it('refuses what its sheets refuse, and names that reach nothing', () => {
    expect(() => quicklyPriced(flake, { set: { resin_waste: 7 } })).toThrow('between');
    expect(() => quicklyPriced(flake, { set: { grinder: 'spoon' } })).toThrow('choices');
    expect(() => quicklyPriced(flake, { set: { price: 5 } })).toThrow('price');
    expect(() => quicklyPriced(flake, { set: { nothing: 5 } })).toThrow('nothing');
    expect(() => quicklyPriced(flake, { rows: { areas: [{ place: 'bay', length: -3 }] } })).toThrow('between');
    expect(() => quicklyPriced(flake, { products: { 'base_slate.nothing': 1 } })).toThrow('base_slate.nothing');
  });
});
