import { describe, expect, it } from 'vitest';
import { priced } from '../helpers/priced-floor.ts';
import { shippedStack } from '../helpers/shipped-stacks.ts';

/*
 * Two parts by volume and by weight, through the base coat of the shipped full flake system. The figures are derived:
 * a parts A and b parts B by volume of densities dA and dB weigh 100 : 100 b dB / (a dA).
 */
const gramsPerPound = 453.59237;
const plain = { resin_waste: 0, held_up: 0 };

/** One batch of exactly 1.5 gal: 150 ft2 at 100 ft2/gal. */
function batch(products: Readonly<Record<string, number>>, set: Readonly<Record<string, number>> = {}) {
  const floor = priced('flake-full-broadcast', {
    set: { ...plain, 'areas.bay.length': 15, 'areas.bay.width': 10, 'coats.base.coverage_typed': 100, ...set },
    products: { 'base_slate.mix_a': 2, 'base_slate.mix_b': 1, ...products },
  });
  return (name: string): number => floor.number(`coats.base.${name}`);
}

const weighed = { 'base_slate.density_a': 9.6, 'base_slate.density_b': 8.1, 'base_slate.density_confirmed': 1 };

describe('1.5 gal mixed 2 to 1 by volume, of 9.6 and 8.1 lb/gal', () => {
  it('are 1 gal of A and 0.5 gal of B', () => {
    const base = batch(weighed);
    expect([base('batches'), base('batch_gallons')]).toEqual([1, 1.5]);
    expect([base('part_a'), base('part_b')]).toEqual([1, 0.5]);
    expect([base('batch_a'), base('batch_b')]).toEqual([1, 0.5]);
  });

  it('are 100 parts of A to 42.1875 of B by weight', () => {
    expect(batch(weighed)('weight_ratio') * 100).toBeCloseTo(42.1875, 10);
  });

  it('weigh 4354.487 g of A and 1837.049 g of B', () => {
    const base = batch(weighed);
    expect(base('weight_a') * gramsPerPound).toBeCloseTo(4354.487, 3);
    expect(base('weight_b') * gramsPerPound).toBeCloseTo(1837.049, 3);
  });

  it('weigh 9.1 lb a gallon together', () => {
    const base = batch(weighed);
    expect((base('weight_a') + base('weight_b')) / 1.5).toBeCloseTo(9.1, 12);
  });

  it('have no weights while nobody has confirmed the densities: volume marks stay', () => {
    const base = batch({ ...weighed, 'base_slate.density_confirmed': 0 });
    expect([base('weight_a'), base('weight_b'), base('weight_ratio')]).toEqual([0, 0, 0]);
    expect([base('batch_a'), base('batch_b')]).toEqual([1, 0.5]);
  });
});

describe('other mixes', () => {
  it.each([
    [1, 1, 0.75, 0.75],
    [4, 1, 1.2, 0.3],
    [1, 0, 1.5, 0],
  ])('of %d to %d split 1.5 gal into %f and %f gal', (a, b, partA, partB) => {
    const base = batch({ 'base_slate.mix_a': a, 'base_slate.mix_b': b });
    expect(base('part_a')).toBeCloseTo(partA, 12);
    expect(base('part_b')).toBeCloseTo(partB, 12);
  });

  it('of several batches hold together what the coat holds', () => {
    const base = batch(weighed, { 'areas.bay.length': 100 });
    expect(base('batches')).toBeGreaterThan(1);
    expect(base('batches') * base('batch_a')).toBeCloseTo(20 / 3, 12);
    expect(base('batches') * base('batch_b')).toBeCloseTo(10 / 3, 12);
  });
});

describe('the demonstration price list', () => {
  it('has densities confirmed for a few products only', () => {
    const resins = [...shippedStack('flake-full-broadcast').products.values()].filter(
      ({ fields }) => fields.density_confirmed !== undefined,
    );
    const confirmed = resins.filter(({ fields }) => fields.density_confirmed === 1);
    expect(resins.length).toBeGreaterThan(20);
    expect(confirmed.length).toBeGreaterThan(0);
    expect(confirmed.length).toBeLessThan(resins.length / 4);
  });

  it('keeps nothing of an opened isocyanate, and 50 to 80 % of an epoxy', () => {
    // Common practice, no source. Hardeners of all but the epoxies are isocyanates here.
    for (const { product, fields } of shippedStack('flake-full-broadcast').products.values()) {
      if (fields.chemistry === undefined) continue;
      const kept = Number(fields.kept_share);
      if (fields.chemistry !== 'epoxy') expect(kept, product).toBe(0);
      else expect(kept >= 0.5 && kept <= 0.8, product).toBe(true);
    }
  });
});
