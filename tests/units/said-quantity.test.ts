import { describe, expect, it } from 'vitest';
import type { Measures } from '../../src/units/measures.ts';
import { saidQuantity } from '../../src/units/said-quantity.ts';
import { parseUnit } from '../../src/units/unit.ts';

function said(value: number, unit: string, measures: Measures = 'us'): string {
  const read = parseUnit(unit);
  if (read.kind === 'fault') throw new Error(read.reason);
  return saidQuantity(value, read.unit, { measures });
}

describe('a worked-out number as a sentence says it', () => {
  it.each([
    [9.566, 'h', '9.6 h'],
    [7.25, 'h', '7.3 h'],
    [9, 'h', '9 h'],
    [0.1843, '%', '18.4 %'],
    [18.43, 'lb', '18.4 lb'],
    [1.956667, 'gal', '2 gal'],
    [0.2421, 'gal', '0.24 gal'],
    [7.2381, 'min', '7.2 min'],
    [53.72, 'degF', '53.7 °F'],
    [-4.581, 'ddegF', '−4.6 °F'],
  ])('has at most a tenth, below one pound, gallon or minute a hundredth: %d of %s is %s', (value, unit, words) => {
    expect(said(value, unit)).toBe(words);
  });

  it.each([
    [22.625, 'ft', '22.63 ft'],
    [528.4, 'ft2', '528.4 ft²'],
    [9.25, '$/ft', '$9.25/ft'],
    [4185, '$', '$4,185.00'],
    [3, 'visit', '3 visits'],
    [0.55, '1', '0.55'],
  ])('keeps lengths, areas, money and counts as they are: %d of %s is %s', (value, unit, words) => {
    expect(said(value, unit)).toBe(words);
  });

  it('has no more decimals than it would have anyway: 1,234.56 h is 1,235 h and 999.96 lb is 1,000 lb', () => {
    expect([said(1234.56, 'h'), said(999.96, 'lb'), said(12.3456, '%')]).toEqual(['1,235 h', '1,000 lb', '1,235 %']);
  });

  it('never says 0 of what is not: 0.04 h is 0.04 h, and 0 h is 0 h', () => {
    expect([said(0.04, 'h'), said(0.0004, 'gal'), said(0, 'h')]).toEqual(['0.04 h', '0.0004 gal', '0 h']);
  });

  it('is rounded in what it is shown in: 18.43 lb are 8.4 kg, 0.5 lb 0.23 kg', () => {
    expect([said(18.43, 'lb', 'metric'), said(0.5, 'lb', 'metric'), said(53.72, 'degF', 'metric')]).toEqual([
      '8.4 kg',
      '0.23 kg',
      '12.1 °C',
    ]);
  });
});
