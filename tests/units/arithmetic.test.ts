import { describe, expect, it } from 'vitest';
import { type ArithmeticRules, readArithmetic } from '../../src/units/arithmetic.ts';

/** Words for numbers that no person could type in 200 characters. */
const words: Readonly<Record<string, number>> = { huge: 1e300, tiny: 1e-300, two: 2, nil: 0 };
const rules: ArithmeticRules = {
  spacedMinus: false,
  readLiteral: (text, at) => {
    const word = /[a-z]+/.exec(text.slice(at))?.[0] ?? '';
    const value = words[word];
    if (value === undefined) return { kind: 'fault', reason: `no number ${word}` };
    return { kind: 'literal', amount: { value }, end: at + word.length };
  },
};

function resultOf(text: string): number | string {
  const read = readArithmetic(text, rules);
  return read.kind === 'amount' ? read.amount.value : read.reason;
}

describe('arithmetic over any literals', () => {
  it('works out two + two * two as 6, and keeps division from left to right', () => {
    expect(resultOf('two + two * two')).toBe(6);
    expect(resultOf('two / two / two')).toBe(0.5);
    expect(resultOf('(two + two) * -two')).toBe(-8);
  });

  it('refuses 1e300 * 1e300 as too large, and 1e-300 * 1e-300 rather than give 0', () => {
    expect(resultOf('huge * huge')).toContain('too large');
    expect(resultOf('tiny * tiny')).toContain('too small');
    expect(resultOf('tiny / huge')).toContain('too small');
    expect(resultOf('huge / tiny')).toContain('too large');
    expect(resultOf('nil * huge')).toBe(0);
  });

  it('refuses a division by 0, also of 0', () => {
    expect(resultOf('nil / nil')).toContain('divides by 0');
  });

  it('passes on why a literal could not be read', () => {
    expect(resultOf('two + three')).toBe('no number three');
  });
});
