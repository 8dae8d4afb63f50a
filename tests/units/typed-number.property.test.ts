import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundTo } from '../../src/units/decimal-rounding.ts';
import { writeFeetInches } from '../../src/units/feet-inches.ts';
import { formatForTyping } from '../../src/units/format.ts';
import { readTyped } from '../../src/units/typed-number.ts';
import { parseUnit, type Unit } from '../../src/units/unit.ts';

const seed = Math.floor(Math.random() * 2 ** 31);
console.info(`typed-number.property seed ${seed}`);

function unit(text: string): Unit {
  const read = parseUnit(text);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.unit;
}

function valueIn(text: string, of: Unit): number {
  const read = readTyped(text, of);
  if (read.kind === 'fault') throw new Error(`${text}: ${read.reason}`);
  return read.value;
}

describe('typed numbers, at random', () => {
  it('reads back the 15 digits of every value it writes for an edit field', () => {
    const sizes = fc.double({ min: 1e-15, max: 1e15, noNaN: true });
    const units = fc.constantFrom(...['ft', 'ft2', 'mil', '%', '$', '1', 'degF'].map(unit));
    fc.assert(
      fc.property(sizes, fc.boolean(), units, (size, isNegative, of) => {
        const value = isNegative ? -size : size;
        expect(roundTo(valueIn(formatForTyping(value, of), of), 400)).toBe(roundTo(value, 400));
      }),
      { seed, numRuns: 3000 },
    );
  });

  it('reads back feet and inches to within a 32nd of an inch, and exact sixteenths exactly', () => {
    const ft = unit('ft');
    fc.assert(
      fc.property(fc.double({ min: -5000, max: 5000, noNaN: true }), fc.nat(1_000_000), (feet, count) => {
        expect(Math.abs(valueIn(writeFeetInches(feet), ft) - feet)).toBeLessThanOrEqual(1 / 32 / 12 + 1e-12);
        expect(valueIn(writeFeetInches(count / 192), ft)).toBeCloseTo(count / 192, 10);
      }),
      { seed, numRuns: 3000 },
    );
  });

  it('works out random sums and products as JavaScript does', () => {
    const expression = fc.letrec<{ node: string; leaf: string; pair: string }>((tie) => ({
      leaf: fc.integer({ min: 1, max: 99 }).map(String),
      pair: fc
        .tuple(tie('node'), fc.constantFrom(' + ', ' - ', '*', '/'), tie('node'))
        .map(([left, sign, right]) => `(${left}${sign}${right})`),
      node: fc.oneof({ maxDepth: 4 }, tie('leaf'), tie('pair')),
    })).node;
    fc.assert(
      fc.property(expression, (text) => {
        const wanted: unknown = new Function(`return ${text}`)();
        const read = readTyped(text, unit('1'));
        if (text.length > 200 || !Number.isFinite(wanted)) expect(read.kind).toBe('fault');
        // A division by zero deeper down may be finite again in JavaScript (1/(1/0) is 0); here it is a fault.
        else if (read.kind === 'fault') expect(read.reason).toContain('divides by 0');
        else expect(read.value).toBe(wanted === 0 ? 0 : wanted);
      }),
      { seed, numRuns: 2000 },
    );
  });

  it('answers any text with a finite number or a reason, and never gives 0 for text without a 0 or a minus', () => {
    const signs = fc.constantFrom(...'0123456789.,+-*/()\'" $%½xefintqs²°'.split(''));
    const units = fc.constantFrom(...['ft', 'ft2', 'in', '%', '$/h', 'date', '1'].map(unit));
    fc.assert(
      fc.property(fc.array(signs, { maxLength: 12 }), units, (letters, of) => {
        const text = letters.join('');
        const read = readTyped(text, of);
        if (read.kind === 'fault') expect(read.reason.length).toBeGreaterThan(10);
        else {
          expect(Number.isFinite(read.value)).toBe(true);
          if (!/[0-]/.test(text)) expect(read.value).not.toBe(0);
        }
      }),
      { seed, numRuns: 20_000 },
    );
  });
});
