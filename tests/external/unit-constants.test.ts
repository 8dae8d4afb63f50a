import { describe, expect, it } from 'vitest';
import * as factor from '../../src/units/conversion.ts';

/*
 * Sources, all from memory (the texts were not read for this test):
 * NIST Handbook 44, Appendix C: 1 US gallon = 231 cubic inches exactly = 3.785411784 L; 1 mile = 5280 ft.
 * NIST SP 811, Appendix B.8: 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 mil = 0.0254 mm, 1 lb = 0.45359237 kg, all exact.
 */
describe('conversion constants', () => {
  it('has the gallon at 231 cubic inches and 3.785411784 L, and the two agree through the inch of 25.4 mm', () => {
    expect(factor.cubicInchesPerGallon).toBe(231);
    expect(factor.litresPerGallon).toBe(3.785411784);
    expect((231 * 25.4 ** 3) / 1e6).toBeCloseTo(factor.litresPerGallon, 12);
  });

  it('has the foot at 0.3048 m, 12 in of 25.4 mm, and the mile at 5280 ft', () => {
    expect(factor.metresPerFoot).toBe(0.3048);
    expect((12 * factor.millimetresPerInch) / 1000).toBeCloseTo(factor.metresPerFoot, 15);
    expect((5280 * factor.metresPerFoot) / 1000).toBeCloseTo(factor.kilometresPerMile, 12);
  });

  it('has the mil at 0.0254 mm', () => {
    expect(factor.micrometresPerMil / 1000).toBeCloseTo(0.0254, 15);
  });

  it('has the pound at 0.45359237 kg, 16 oz', () => {
    expect(factor.kilogramsPerPound).toBe(0.45359237);
    expect((16 * factor.gramsPerOunce) / 1000).toBeCloseTo(factor.kilogramsPerPound, 15);
  });

  it('has the film constant 231/144*1000 = 1604.1667 ft2*mil/gal, which is 1000 m2*um/L', () => {
    expect(factor.filmConstant).toBeCloseTo(1604.1667, 4);
    expect((factor.filmConstant * 0.09290304 * 25.4) / 3.785411784).toBeCloseTo(1000, 9);
  });
});
