import { describe, expect, it } from 'vitest';
import { readDecimal } from '../../src/units/decimal-text.ts';

describe('decimal separators and thousands', () => {
  it.each([
    ['1,234.5', 1234.5],
    ['1.234,5', 1234.5],
    ['3,5', 3.5],
    ['1,234', 1234],
    ['1.234', 1.234],
    ['0,125', 0.125],
    ['1234,567', 1234.567],
    ['1,234,567.89', 1234567.89],
    ['1.234.567', 1234567],
    ['1.234.567,8', 1234567.8],
    ['.5', 0.5],
    [',5', 0.5],
    ['5.', 5],
    ['0', 0],
    ['007', 7],
  ])('reads %s as %d', (text, value) => {
    expect(readDecimal(text)).toEqual({ kind: 'number', value });
  });

  it.each(['1..2', '.', ',', '1,23,4', '1,2.3,4', '12,34.5', '1.23.4', '1,234,', '1,,2', '0,123,456'])(
    'does not guess at %s',
    (text) => {
      expect(readDecimal(text)).toMatchObject({ kind: 'fault', reason: expect.stringContaining('is not clear') });
    },
  );

  it('refuses a number that would overflow, or vanish into 0', () => {
    expect(readDecimal('9'.repeat(400)).kind).toBe('fault');
    expect(readDecimal(`0.${'0'.repeat(400)}1`).kind).toBe('fault');
  });
});
