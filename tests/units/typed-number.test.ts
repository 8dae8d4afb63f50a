import { describe, expect, it } from 'vitest';
import { readTyped, type TypedOptions } from '../../src/units/typed-number.ts';
import { parseUnit, type Unit } from '../../src/units/unit.ts';

function unit(text: string): Unit {
  const read = parseUnit(text);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.unit;
}

function valueIn(text: string, unitName: string, options?: TypedOptions): number | string {
  const read = readTyped(text, unit(unitName), options);
  return read.kind === 'number' ? read.value : read.reason;
}

describe('numbers and arithmetic', () => {
  it.each([
    ['24*22+60', 'ft2', 588],
    ['24×22 + 60', 'ft2', 588],
    ['24 x 22', 'ft2', 528],
    ['10x20', 'ft2', 200],
    ['(24 + 2) * 22 ÷ 2', 'ft2', 286],
    ['528 − 60', 'ft2', 468],
    ['528-60', 'ft2', 468],
    ['2 * -3', '1', -6],
    ['-(2 + 3)', '1', -5],
    ['+5', 'gal', 5],
    ['1,234.5', 'ft2', 1234.5],
    ['1.234,5', 'ft2', 1234.5],
    ['3,5', 'gal', 3.5],
    ['2 1/2', 'gal', 2.5],
    ['2½', 'gal', 2.5],
    ['10 - 10', 'gal', 0],
    ['(1-1)*(3-5)', 'gal', 0],
    ['0', 'gal', 0],
    ['8 - 2 - 1', 'gal', 5],
    ['16/4/2', 'gal', 2],
    ['2026-03-09', 'date', 46090],
    [' 12.5 ', 'gal', 12.5],
  ])('reads %s of %s as %d', (text, unitName, value) => {
    expect(valueIn(text, unitName)).toBe(value);
  });

  it('echoes the result of arithmetic with its unit', () => {
    expect(readTyped('24*22+60', unit('ft2'))).toEqual({ kind: 'number', value: 588, echo: '24*22+60 = 588 ft²' });
    expect(readTyped('588', unit('ft2'))).toEqual({ kind: 'number', value: 588 });
  });
});

describe('units behind the number', () => {
  it.each([
    ['528 ft2', 'ft2', 528],
    ['528 sq ft', 'ft2', 528],
    ['528 sq. ft.', 'ft2', 528],
    ['528 SF', 'ft2', 528],
    ['528 ft²', 'ft2', 528],
    ['528 ft^2', 'ft2', 528],
    ['12 mil', 'mil', 12],
    ['12 mils', 'mil', 12],
    ['3 gallons', 'gal', 3],
    ['3 gal.', 'gal', 3],
    ['200 ft2/gal', 'ft2/gal', 200],
    ['200 sq ft per gallon', 'ft2/gal', 200],
    ['1604 ft²·mil/gal', 'ft2*mil/gal', 1604],
    ['65 °F', 'degF', 65],
    ['65F', 'degF', 65],
    ['-5 °F', 'ddegF', -5],
    ['2 visits', 'visit', 2],
    ['1 crew day', 'crew_day', 1],
    ['3 people', 'person', 3],
    ['2/h', '1/h', 2],
    ['22 ft', 'ft', 22],
    ['2 + 3 gal', 'gal', 5],
  ])('reads %s in a field of %s', (text, unitName, value) => {
    expect(valueIn(text, unitName)).toBe(value);
  });

  it.each([
    ['528 ft', 'ft2', 'ft²'],
    ['12 ft2', 'ft', 'in ft,'],
    ['3 gal', 'lb', 'in lb,'],
    ['2 visits', 'coat', 'in coat,'],
    ['2 visits', '1', 'the number alone'],
    ['24 ft2 + 3 ft2', 'ft2', 'once at the end'],
    ['160 m2', 'ft2', 'in ft²,'],
    ['8 %', 'gal', 'in gal,'],
    ['200 gal/ft2', 'ft2/gal', 'in ft²/gal,'],
    ['38 h', '$/h', 'in $/h,'],
    ['12 $', 'gal', 'in gal,'],
    ['$12', 'gal', 'no amount of money'],
  ])('refuses %s in a field of %s and names the unit that is wanted', (text, unitName, said) => {
    expect(valueIn(text, unitName)).toContain(said);
  });
});

describe('money', () => {
  it.each([
    ['$4,325', '$', 4325],
    ['$ 4,325.50', '$', 4325.5],
    ['4325 dollars', '$', 4325],
    ['38$', '$', 38],
    ['-$5', '$', -5],
    ['$24 + $30', '$', 54],
    ['$38/h', '$/h', 38],
    ['38 $/h', '$/h', 38],
    ['$38 per hour', '$/h', 38],
    ['38 / 2', '$/h', 19],
    ['$8.18/sq ft', '$/ft2', 8.18],
  ])('reads %s of %s as %d', (text, unitName, value) => {
    expect(valueIn(text, unitName)).toBe(value);
  });
});

describe('shares', () => {
  it('reads 8, 8 % and 8% as 0.08 when shares are typed as percent', () => {
    expect(['8', '8 %', '8%', '5 + 3', '8 percent'].map((text) => valueIn(text, '%', { shareAs: 'percent' }))).toEqual([
      0.08, 0.08, 0.08, 0.08, 0.08,
    ]);
    expect(valueIn('8.25', '%')).toBe(0.0825);
  });

  it('reads 0.08 and 8 % as 0.08 when shares are typed as fractions', () => {
    expect(['0.08', '8 %'].map((text) => valueIn(text, '%', { shareAs: 'fraction' }))).toEqual([0.08, 0.08]);
  });

  it('reads 8 % of a plain number as 0.08', () => {
    expect(valueIn('8 %', '1')).toBe(0.08);
    expect(valueIn('8', '1')).toBe(8);
  });
});

describe('what is no number never becomes 0', () => {
  it.each([
    ['', 'Type a number'],
    ['   ', 'Type a number'],
    ['abc', 'is not a number'],
    ['NaN', 'is not a number'],
    ['Infinity', 'is not a number'],
    ['+Infinity', 'is not a number'],
    ['-Infinity', 'is not a number'],
    ['1..2', 'is not clear'],
    ['--', 'A number is missing after “-”'],
    ['--5', 'A number is missing'],
    ['5 +', 'A number is missing after “5 \\+”'],
    ['* 5', 'A number is missing'],
    ['1e999', 'without e'],
    ['1e3', 'without e'],
    ['0x10', 'is not the unit'],
    ['5/0', 'divides by 0'],
    ['5/(2-2)', 'divides by 0'],
    ['(5', 'Parentheses'],
    ['5)', 'Parentheses'],
    ['()', 'A number is missing'],
    ['2 3', 'Put \\+ - \\* or /'],
    ['2(3)', 'Put \\+ - \\* or /'],
    ['5 # 3', 'Put'],
    ['#', 'does not belong'],
    ['2^3', 'Put'],
    ['5²', 'Put'],
    ['5 3/2', 'is not a fraction'],
    [`22'`, 'Feet and inch marks'],
    ['9'.repeat(201), 'at most 200'],
  ])('answers “%s” with: %s', (text, said) => {
    expect(String(valueIn(text, 'gal'))).toMatch(new RegExp(said));
  });

  it('wants a date in a date field', () => {
    expect(valueIn('46090', 'date')).toContain('year-month-day');
    expect(valueIn('2026-02-30', 'date')).toContain('no day');
  });
});
