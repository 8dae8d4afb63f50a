import { describe, expect, it } from 'vitest';
import * as factor from '../../src/units/conversion.ts';
import { toMetric } from '../../src/units/conversion.ts';
import { parseUnit, type Unit } from '../../src/units/unit.ts';

function unit(text: string): Unit {
  const read = parseUnit(text);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.unit;
}

/*
 * Sources, all from memory (the texts were not read for this test):
 * NIST Handbook 44, Appendix C: 1 US gallon = 231 cubic inches exactly = 3.785411784 L; 1 mile = 5280 ft.
 * NIST SP 811, Appendix B.8: 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 mil = 0.0254 mm, 1 lb = 0.45359237 kg, all exact.
 */
const filmConstant = (231 / 144) * 1000;

describe('conversion constants', () => {
  it('has the gallon at 231 cubic inches and 3.785411784 L, and the two agree through the inch of 25.4 mm', () => {
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
    expect(filmConstant).toBeCloseTo(1604.1667, 4);
    expect((filmConstant * 0.09290304 * 25.4) / 3.785411784).toBeCloseTo(1000, 9);
  });
});

/*
 * NIST SP 811, Appendix B.8, from memory, to the seven digits it prints, turned into the unit that is shown. Those of ft2,
 * in2, in3, lb and oz were compared with a public table of SI conversion factors (navalfacilities.tpub.com, Appendix B),
 * which gives them to six.
 */
describe('one of a US unit is in metric what NIST SP 811 says', () => {
  it.each([
    ['ft', 0.3048, 'm'],
    ['ft2', 0.09290304, 'm2'],
    ['in', 25.4, 'mm'],
    ['in2/ft2', 645.16 / 0.09290304, 'mm2/m2'],
    ['in3', 16.38706, 'mL'],
    ['mil', 25.4, 'um'],
    ['mi', 1.609344, 'km'],
    ['gal', 3.785412, 'L'],
    ['lb', 0.4535924, 'kg'],
    ['oz', 28.34952, 'g'],
    ['lb/ft2', 4.882428, 'kg/m2'],
    ['lb/gal', 0.1198264, 'kg/L'],
    ['oz/gal', 7.489152, 'g/L'],
    ['ddegF', 0.5555556, 'ddegC'],
  ])('%s is %d %s', (declared, wanted, shown) => {
    const metric = toMetric(1, unit(declared));
    expect(metric.unit.text).toBe(shown);
    expect(Math.abs(metric.value / wanted - 1)).toBeLessThan(5e-7);
  });

  it('a price of $1/ft2 is $10.7639 a square metre, $1/gal 26.4172 cents a litre', () => {
    expect(toMetric(1, unit('$/ft2')).value).toBeCloseTo(10.7639, 4);
    expect(toMetric(1, unit('$/gal')).value).toBeCloseTo(0.264172, 6);
  });

  it('the film law has 1000 m2*um/L for 1604.1667 ft2*mil/gal', () => {
    const metric = toMetric(filmConstant, unit('ft2*mil/gal'));
    expect(metric.unit.text).toBe('m2*um/L');
    expect(metric.value).toBeCloseTo(1000, 9);
  });

  it('a temperature of 50 °F is 10 °C, of 5 °F −15 °C, but a difference of 5 °F is 2.7778 °C', () => {
    // t/°C = (t/°F - 32)/1.8: NIST SP 811, Appendix B.9, from memory.
    expect(toMetric(50, unit('degF'))).toMatchObject({ value: 10 });
    expect(toMetric(5, unit('degF'))).toMatchObject({ value: -15 });
    expect(toMetric(5, unit('ddegF')).value).toBeCloseTo(2.7778, 4);
  });
});
