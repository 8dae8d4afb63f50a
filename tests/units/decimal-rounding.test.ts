import { describe, expect, it } from 'vitest';
import { fifteenDigits, roundDownTo, roundTo, roundUpTo, wholePart } from '../../src/units/decimal-rounding.ts';

describe('rounding to the nearest', () => {
  it.each([
    [1.005, 2, 1.01],
    [2.345, 2, 2.35],
    [-2.345, 2, -2.35],
    [2.355, 2, 2.36],
    [0.5, 0, 1],
    [-0.5, 0, -1],
    [0.49999999999999994, 0, 1],
    [0.4999999999999, 0, 0],
    [4325, -2, 4300],
    [4350, -2, 4400],
    [8.345e14, -12, 8.35e14],
    [1604.166666666667, 2, 1604.17],
    [1e-320, 2, 0],
    [1e300, 400, 1e300],
    [1e300, -400, 0],
    [1e300, -299, 1e300],
    [4.5e300, -300, 5e300],
    [5e-324, 400, 5e-324],
    [9.999999999999999e22, 0, 1e23],
    [12.5, 0.9, 13],
  ])('rounds %d to %d places as %d', (value, places, rounded) => {
    expect(roundTo(value, places)).toBe(rounded);
  });

  it('never gives -0', () => {
    expect([roundTo(-0.001, 2), roundTo(-0, 2), roundUpTo(-0, 0), roundDownTo(-0.9, 0), wholePart(-0)]).toEqual([
      0, 0, 0, 0, 0,
    ]);
  });

  it('leaves what is not a number as it is', () => {
    expect([roundTo(Number.NaN, 2), roundTo(1, Number.NaN)]).toEqual([Number.NaN, Number.NaN]);
    expect([roundTo(Number.POSITIVE_INFINITY, 2), roundUpTo(Number.NEGATIVE_INFINITY, -3)]).toEqual([
      Infinity,
      -Infinity,
    ]);
    expect(wholePart(Number.NEGATIVE_INFINITY)).toBe(-Infinity);
    expect(roundTo(1.25, Number.POSITIVE_INFINITY)).toBe(1.25);
  });
});

describe('rounding up and down', () => {
  it('rounds 0.07 up to 0.07 and 0.0701 up to 0.08', () => {
    expect(roundUpTo(0.07, 2)).toBe(0.07);
    expect(roundUpTo(0.0701, 2)).toBe(0.08);
  });

  it('rounds 86*3.3/3.3 kits up to 86, not 87', () => {
    expect((86 * 3.3) / 3.3).not.toBe(86);
    expect(roundUpTo((86 * 3.3) / 3.3, 0)).toBe(86);
  });

  it('rounds 10.2 gal in 3-gal packs up to 4 packs, and 9 gal to 3', () => {
    expect(roundUpTo(10.2 / 3, 0)).toBe(4);
    expect(roundUpTo(9 / 3, 0)).toBe(3);
  });

  it('rounds up away from zero and down toward zero', () => {
    expect([roundUpTo(-2.1, 0), roundDownTo(-2.9, 0), roundUpTo(1e-300, 2), roundDownTo(2.9999, 2)]).toEqual([
      -3, -2, 0.01, 2.99,
    ]);
  });

  it('rounds 4301 up to 4400 and down to 4300 at -2 places', () => {
    expect([roundUpTo(4301, -2), roundDownTo(4399, -2), roundUpTo(4300, -2)]).toEqual([4400, 4300, 4300]);
  });

  it('rounds 0.1+0.2 neither up nor down at 1 place', () => {
    expect([roundUpTo(0.1 + 0.2, 1), roundDownTo(0.1 + 0.2, 1), roundDownTo(0.1 * 3 - 1e-17, 1)]).toEqual([
      0.3, 0.3, 0.3,
    ]);
  });
});

describe('the whole part', () => {
  it.each([
    [-1.5, -2],
    [1.5, 1],
    [2.9999999999999996, 3],
    [-2.9999999999999996, -3],
    [-3.0000000000000004, -3],
    [2.99999999999, 2],
    [-0.2, -1],
    [0, 0],
    [1e300, 1e300],
  ])('of %d is %d', (value, whole) => {
    expect(wholePart(value)).toBe(whole);
  });
});

describe('the 15-digit reading', () => {
  it('reads 0.1+0.2 as 0.3 and 86*3.3/3.3 as 86', () => {
    expect([fifteenDigits(0.1 + 0.2), fifteenDigits((86 * 3.3) / 3.3), fifteenDigits(-(0.1 + 0.2))]).toEqual([
      0.3, 86, -0.3,
    ]);
  });

  it('keeps 0, and reads -0 as 0', () => {
    expect(fifteenDigits(0)).toBe(0);
    expect(fifteenDigits(-0)).toBe(0);
  });
});
