import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toMetric } from '../../src/units/conversion.ts';
import { readTypedIn, standingText, textToKeep } from '../../src/units/typed-measure.ts';
import { parseUnit, type Unit } from '../../src/units/unit.ts';
import { printedSeed } from '../helpers/random-seed.ts';

const seed = printedSeed('typed-measure.property');

function unit(text: string): Unit {
  const read = parseUnit(text);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.unit;
}

/** Every unit of the shipped sheets that metric shows otherwise. */
const converted = [
  'ft',
  'ft2',
  'in',
  'in3',
  'mil',
  'mi',
  'gal',
  'lb',
  'ft/h',
  'ft2/h',
  'ft2/min',
  'ft2/gal',
  'ft2*mil/gal',
  'lb/ft2',
  'lb/in2',
  'lb/gal',
  'oz/gal',
  'oz/lb',
  'in/ft',
  'in2/ft2',
  'in3/gal',
  'in3/ft',
  'gal/coat',
  '$/ft',
  '$/ft2',
  '$/mi',
  'degF',
  'ddegF',
];

/** A number as people type it: at most 7 digits, at most 4 of them decimals. */
const typedNumbers = fc
  .tuple(fc.integer({ min: -9_999_999, max: 9_999_999 }), fc.integer({ min: 0, max: 4 }))
  .map(([digits, decimals]) => String(digits / 10 ** decimals));

describe('a number typed in metric', () => {
  it('is shown again as it was typed, whatever its unit, by its value or by the text kept with it', () => {
    fc.assert(
      fc.property(typedNumbers, fc.constantFrom(...converted), (typed, declared) => {
        const read = readTypedIn(typed, unit(declared), 'metric');
        if (read.kind === 'fault') throw new Error(read.reason);
        const kept = textToKeep(typed, read.value, unit(declared), 'metric');
        expect(standingText(read.value, kept, unit(declared), 'metric')).toBe(typed);
      }),
      { seed, numRuns: 3000 },
    );
  });

  it('of any length comes back as it was typed, by the text kept', () => {
    const long = fc.tuple(fc.nat(999), fc.nat(999_999_999), fc.nat(9)).map(([a, b, c]) => `${a}.${b}${c}1`);
    fc.assert(
      fc.property(long, fc.constantFrom(...converted), (typed, declared) => {
        const read = readTypedIn(typed, unit(declared), 'metric');
        if (read.kind === 'fault') throw new Error(read.reason);
        const kept = textToKeep(typed, read.value, unit(declared), 'metric');
        expect(Number(standingText(read.value, kept, unit(declared), 'metric'))).toBe(Number(typed));
      }),
      { seed, numRuns: 1000 },
    );
  });
});

function magnitudeOf(value: number): number {
  return Math.floor(Math.log10(Math.abs(value)));
}

/** One of the last place to which people write a number of the metric unit. */
function lastUsual(metric: number, shown: string): number {
  const fixed: Readonly<Record<string, number>> = { m: 0.01, m2: 0.01, mm: 1, km: 0.1, MPa: 0.01 };
  const digits = ['um', 'degC', 'ddegC'].includes(shown) ? 3 : 4;
  return shown.startsWith('$') ? 0.01 : (fixed[shown] ?? 10 ** (magnitudeOf(metric) - digits + 1));
}

describe('what is shown of a US number in metric', () => {
  it('is never further from it than half of its last usual decimal or digit, and has two digits at least', () => {
    const values = fc.double({ min: 0.01, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(values, fc.constantFrom(...converted), (value, declared) => {
        const { value: metric, unit: shown } = toMetric(value, unit(declared));
        const text = standingText(value, undefined, unit(declared), 'metric');
        const last = Math.min(lastUsual(metric, shown.text), 10 ** (magnitudeOf(metric) - 1));
        expect(Math.abs(Number(text) - metric)).toBeLessThanOrEqual(0.51 * last + 1e-12);
      }),
      { seed, numRuns: 2000 },
    );
  });
});
