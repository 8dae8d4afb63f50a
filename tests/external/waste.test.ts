import { describe, expect, it } from 'vitest';
import { priced } from '../helpers/priced-floor.ts';

/*
 * A container to 119 gallons counts as empty when poured out with at most 1 in of residue, or at most 3 % by weight:
 * 40 CFR 261.7 as a public copy of the code has it, not the primary text. Curing leftovers in thin layers: common practice,
 * no source.
 */
const system = 'flake-full-broadcast';

describe('what is left in kits', () => {
  it('is residue to 3 % of what is bought or 1 in in the pail', () => {
    const floor = priced(system);
    expect([floor.number('residue_share'), floor.number('residue_depth')]).toEqual([0.03, 1]);
  });

  it('of a two-car floor, 4.348 of 6 gal and 4.647 of 5 gal with a little patch, is more: mix it, cure it thin', () => {
    // 528 / 134 / 0.95 + 0.2 = 4.34768 gal of base and 528 / 125 / 0.95 + 0.2 = 4.64632 gal of clear, in kits of 3 and 5 gal.
    const floor = priced(system);
    const spare = (product: string) => floor.number(`buy_volume.${product}.spare`);
    expect(spare('base_slate')).toBeCloseTo(6 - 4.34768, 4);
    expect(spare('clear_aspartic')).toBeCloseTo(5 - 4.64632, 4);
    expect(floor.number('resin_left')).toBeCloseTo(1.65232 + 0.35368, 4);
    // Of 11 gal.
    expect(floor.number('resin_left_share')).toBeCloseTo(2.006 / 11, 4);
    const told = floor.check('kits_end_empty');
    expect(told).toMatchObject({ verdict: 'fails', severity: 'note' });
    expect(told.says).toContain('thin layers');
    expect(told.says).toContain('1 in or 3 %');
  });

  it.each([
    [0.02, 'holds'],
    [0.04, 'fails'],
  ])('is judged by its share: kits that leave %f of what is bought, %s', (share, verdict) => {
    // Kits cut to the need of each, so that one of them leaves just that share.
    const products = {
      'base_slate.pack_gallons': 4.34768 / (1 - share),
      'base_slate.large_gallons': 0,
      'clear_aspartic.pack_gallons': 4.64632 / (1 - share),
      'clear_aspartic.large_gallons': 0,
    };
    const floor = priced(system, { products });
    expect(floor.number('resin_left_share')).toBeCloseTo(share, 4);
    expect(floor.check('kits_end_empty').verdict).toBe(verdict);
  });

  it('is nothing where all is measured from stock', () => {
    const set = {
      'buy_volume.base_slate.charged_by': 'measured',
      'buy_volume.clear_aspartic.charged_by': 'measured',
    };
    const floor = priced(system, { set });
    expect(floor.number('resin_left')).toBeCloseTo(0, 12);
    expect(floor.check('kits_end_empty').verdict).toBe('holds');
  });
});
