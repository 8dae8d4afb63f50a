import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromMetric, toMetric } from '../../src/units/conversion.ts';
import { parseUnit, type Unit, unitText } from '../../src/units/unit.ts';

function unit(text: string): Unit {
  const read = parseUnit(text);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.unit;
}

describe('metric display', () => {
  it.each([
    [528, 'ft2', 49.0528051, 'm2'],
    [1, 'gal', 3.785411784, 'L'],
    [8, 'mil', 203.2, 'um'],
    [10, 'lb', 4.5359237, 'kg'],
    [65, 'degF', 18.3333333, 'degC'],
    [-40, 'degF', -40, 'degC'],
    [9, 'ddegF', 5, 'ddegC'],
    [200, 'ft2/gal', 4.908477, 'm2/L'],
    [8.18, '$/ft2', 88.0487871, '$/m2'],
    [10, 'mi', 16.09344, 'km'],
    [250, 'lb/in2', 1.723689, 'MPa'],
    [3, 'oz/gal', 22.467455, 'g/L'],
    [40, 'lb/pack', 18.143695, 'kg/pack'],
    [38, '$/h', 38, '$/h'],
    [2, 'visit', 2, 'visit'],
    [0.08, '%', 0.08, '%'],
    [46090, 'date', 46090, 'date'],
  ])('turns %d %s into %d %s', (value, from, wanted, to) => {
    const shown = toMetric(value, unit(from));
    expect(shown.value).toBeCloseTo(wanted, 6);
    expect(shown.unit.text).toBe(to);
  });

  it('comes back to the US value', () => {
    const units = fc.constantFrom(
      'ft2',
      'gal',
      'mil',
      'lb/ft2',
      'degF',
      'ddegF',
      'ft2*mil/gal',
      '$/ft2',
      '$',
      'date',
      'oz/gal',
      'lb/in2',
    );
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), units, (value, text) => {
        expect(fromMetric(toMetric(value, unit(text)).value, unit(text))).toBeCloseTo(value, 8);
      }),
    );
  });

  it('keeps the dimension: ft2*mil/gal becomes m2*um/L', () => {
    expect(unitText(toMetric(1, unit('ft2*mil/gal')).unit)).toBe('m2*um/L');
  });
});
