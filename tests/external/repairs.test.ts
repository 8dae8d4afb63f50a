import { describe, expect, it } from 'vitest';
import { priced } from '../helpers/priced-floor.ts';

const system = 'flake-full-broadcast';
const cubicInchesPerGallon = 231;

describe('a crack of 60 ft, 1/4 in wide and 1/2 in deep', () => {
  // Derived: 12 in a foot, 231 in3 a gallon, a cartridge of 600 mL = 36.61425 in3.
  const crack = (shape: number, waste = 0) =>
    priced(system, {
      set: {
        crack_length: 60,
        crack_waste: waste,
        'crack_fills.cracks.fill_width': 0.25,
        'crack_fills.cracks.fill_depth': 0.5,
        'crack_fills.cracks.fill_shape': shape,
      },
      products: { 'crack_fast.cartridge_volume': 36.61425 },
    });

  it('takes 90.000 in3 = 0.3896104 gal square, 45.000 in3 as a V', () => {
    const square = crack(1).number('crack_fills.cracks.fill_volume');
    expect(square).toBeCloseTo(90, 12);
    expect(square / cubicInchesPerGallon).toBeCloseTo(0.3896104, 7);
    expect(crack(0.5).number('crack_fills.cracks.fill_volume')).toBeCloseTo(45, 12);
  });

  it('takes as a V with 20 % waste 1.474836 cartridges: 2', () => {
    const found = crack(0.5, 0.2);
    expect(found.number('crack_fills.cracks.pieces')).toBeCloseTo(1.474836, 6);
    expect(found.number('buy_count.crack_fast.packs')).toBe(2);
  });
});

describe('the shipped chase and joint', () => {
  // Common practice, no source: a chase of 3/8 x 3/8 in takes 0.84 in3 a foot as a V and 1.7 square, usually 1.3, with
  // waste 1.6; a joint of 1/4 x 1 in takes 3.0 in3 a foot.
  const perFoot = (shape: number): number => {
    const found = priced(system, { set: { crack_length: 100, 'crack_fills.cracks.fill_shape': shape } });
    return found.number('crack_fills.cracks.fill_volume') / 100;
  };

  it('takes 0.84 in3 a foot as a V, 1.7 square, and 1.3 as it is shipped, 1.6 with waste', () => {
    expect(perFoot(0.5)).toBeCloseTo(0.84, 2);
    expect(perFoot(1)).toBeCloseTo(1.7, 1);
    const shipped = priced(system, { set: { crack_length: 100 } });
    expect(shipped.number('crack_fills.cracks.fill_volume') / 100).toBeCloseTo(1.3, 2);
    const cartridges = shipped.number('crack_fills.cracks.pieces');
    expect((cartridges * 33.5) / 100).toBeCloseTo(1.6, 1);
  });

  it('takes 3.0 in3 a foot of joint', () => {
    const found = priced(system, { set: { joint_length: 46, joint_treatment: 'fill_flush' } });
    expect(found.number('crack_fills.joints.fill_volume') / 46).toBeCloseTo(3, 12);
  });
});

describe('a spall of 3 ft2, 3/8 in deep', () => {
  // Derived: 162.0 in3 = 0.7012987 gal.
  it('takes 162 in3, 0.7012987 gal of mixed patch', () => {
    const found = priced(system, { set: { spall_area: 3, spall_depth: 0.375, patch_waste: 0 } });
    const mixed = found.number('repairs.spalls.mixed_gallons');
    expect(mixed).toBeCloseTo(0.7012987, 7);
    expect(mixed * cubicInchesPerGallon).toBeCloseTo(162, 9);
  });
});

describe('kits', () => {
  it('of 3 gal for 5.87 gal are 1.956667 kits: 2', () => {
    // Derived.
    const found = priced(system, { instead: { 'buy_volume.base_slate.need': 5.87 } });
    expect(5.87 / found.number('buy_volume.base_slate.pack_gallons')).toBeCloseTo(1.956667, 6);
    expect(found.number('buy_volume.base_slate.packs')).toBe(2);
  });

  it('are rounded once for a product over the whole job, not coat by coat', () => {
    // 2 coats of one colour at 1.2 gal each in 1 gal packs: 3, not 2 + 2.
    const found = priced('solid-colour', {
      instead: { 'coats.first_colour.gallons': 1.2, 'coats.second_colour.gallons': 1.2 },
    });
    expect(found.number('buy_volume.colour_pebble.packs')).toBe(3);
  });
});
