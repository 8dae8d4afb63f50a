import { describe, expect, it } from 'vitest';
import { formatForTyping, formatNumber, formatQuantity, unitSuffix } from '../../src/units/format.ts';
import { parseUnit, type Unit } from '../../src/units/unit.ts';

function unit(text: string): Unit {
  const read = parseUnit(text);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.unit;
}

describe('a value with its unit', () => {
  it.each([
    [4325, '$', '$4,325.00'],
    [-4325.005, '$', '−$4,325.01'],
    [0, '$', '$0.00'],
    [1.005, '$', '$1.01'],
    [0.0012, '$', '$0.0012'],
    [38, '$/h', '$38.00/h'],
    [8.18, '$/ft2', '$8.18/ft²'],
    [1800, '$/crew_day', '$1,800.00/crew day'],
    [0.08, '%', '8 %'],
    [0.07, '%', '7 %'],
    [0.0825, '%', '8.25 %'],
    [1, '%', '100 %'],
    [0.00001, '%', '0.001 %'],
    [528, 'ft2', '528 ft²'],
    [11.97, 'mil', '11.97 mil'],
    [12.5, 'ft', '12.5 ft'],
    [22.583333333333332, 'ft', '22.58 ft'],
    [1604.1666666666667, 'ft2*mil/gal', '1,604 ft²·mil/gal'],
    [1234567.8, 'ft2', '1,234,568 ft²'],
    [0.000123456, 'gal', '0.0001235 gal'],
    [2, 'visit', '2 visits'],
    [1, 'visit', '1 visit'],
    [-1, 'visit', '−1 visit'],
    [1.5, 'visit', '1.5 visits'],
    [0, 'coat', '0 coats'],
    [3, 'person', '3 people'],
    [2, 'crew_day', '2 crew days'],
    [12, 'each', '12 pieces'],
    [2, 'visit/yr', '2 visits/year'],
    [65, 'degF', '65 °F'],
    [-5, 'ddegF', '−5 °F'],
    [3, '1/h', '3/h'],
    [0.5, '1', '0.5'],
    [46090, 'date', '2026-03-09'],
    [-5, 'date', 'not a date'],
    [0, 'date', 'no date'],
    [1e20, 'ft', '1E20 ft'],
    [1e-20, 'ft', '1E-20 ft'],
    [0, 'ft2', '0 ft²'],
    [Number.NaN, '$', 'not a number'],
    [Number.POSITIVE_INFINITY, 'ft', 'not a number'],
  ])('shows %d of %s as %s', (value, text, shown) => {
    expect(formatQuantity(value, unit(text))).toBe(shown);
  });

  it('shows whole dollars with 0 digits, and does not hide 12 cents as $0', () => {
    expect(formatQuantity(4325.5, unit('$'), { digits: 0 })).toBe('$4,326');
    expect(formatQuantity(0.12, unit('$'), { digits: 0 })).toBe('$0.12');
  });

  it('shows at most the digits asked for in a measure: 22.5833 ft, and 22.625 ft without a trailing 0', () => {
    expect(formatQuantity(22.583333333333332, unit('ft'), { digits: 4 })).toBe('22.5833 ft');
    expect(formatQuantity(22.625, unit('ft'), { digits: 4 })).toBe('22.625 ft');
  });

  it('gives number and unit apart, so that a view can set the unit lighter', () => {
    expect([formatNumber(0.08, unit('%')), unitSuffix(unit('%'))]).toEqual(['8', '%']);
    expect([formatNumber(38, unit('$/h')), unitSuffix(unit('$/h'))]).toEqual(['$38.00', '/h']);
    expect([formatNumber(1234.5), unitSuffix(unit('1')), unitSuffix(unit('$')), unitSuffix(unit('date'))]).toEqual([
      '1,235',
      '',
      '',
      '',
    ]);
    expect([unitSuffix(unit('visit'), '1'), unitSuffix(unit('visit'), '2')]).toEqual(['visit', 'visits']);
  });
});

/** Values as sheets have them, with what is shown and what stands in a field. */
const converted: readonly (readonly [value: number, declared: string, shown: string, typed: string])[] = [
  [30, 'ft', '9.14 m', '9.14'],
  [24, 'ft', '7.32 m', '7.32'],
  [20, 'ft', '6.1 m', '6.1'],
  [137 / 12, 'ft', '3.48 m', '3.48'],
  [0.05, 'ft', '0.015 m', '0.015'],
  [5280, 'ft', '1,609.34 m', '1609.34'],
  [8, 'in', '203 mm', '203'],
  [0.0625, 'in', '1.6 mm', '1.6'],
  [4, 'ft2', '0.37 m²', '0.37'],
  [20 / 3, 'ft2', '0.62 m²', '0.62'],
  [12345, 'ft2', '1,146.89 m²', '1146.89'],
  [15, 'mi', '24.1 km', '24.1'],
  [250, 'lb/in2', '1.72 MPa', '1.72'],
  [100, 'ft2/h', '9.29 m²/h', '9.29'],
  [134, 'ft2/gal', '3.289 m²/L', '3.289'],
  [5, 'gal', '18.93 L', '18.93'],
  [8, 'mil', '203 µm', '203'],
  [65, 'degF', '18.3 °C', '18.3'],
  [12.5, '$/ft2', '$134.55/m²', '134.55'],
  [0.7, '$/mi', '$0.43/km', '0.43'],
  [0, 'ft', '0 m', '0'],
  [-30, 'ft', '−9.14 m', '-9.14'],
];

describe('a US value in metric is written as people write metric', () => {
  it.each(converted)('%d %s is shown as %s, and as %s in a field', (value, declared, shown, typed) => {
    expect(formatQuantity(value, unit(declared), { measures: 'metric' })).toBe(shown);
    expect(formatForTyping(value, unit(declared), 'metric')).toBe(typed);
  });
});

describe('text for an edit field', () => {
  it.each([
    [0.0825, '%', '8.25'],
    [0.07, '%', '7'],
    [1234567.25, 'ft2', '1234567.25'],
    [0.1 + 0.2, 'gal', '0.3'],
    [0.00000012, 'gal', '0.00000012'],
    [-22.5, 'ft', '-22.5'],
    [46090, 'date', '2026-03-09'],
    [Number.NaN, 'ft', ''],
  ])('writes %d of %s as %s', (value, text, typed) => {
    expect(formatForTyping(value, unit(text))).toBe(typed);
  });
});
