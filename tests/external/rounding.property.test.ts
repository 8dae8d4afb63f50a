import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { HyperFormula } from 'hyperformula';
import { describe, expect, it } from 'vitest';
import { fifteenDigits, roundDownTo, roundTo, roundUpTo, wholePart } from '../../src/units/decimal-rounding.ts';

/*
 * Second opinions: decimal.js (toSignificantDigits(15), then toDecimalPlaces), and HyperFormula itself for the
 * 15-digit reading. The examples 2.345 and 2.355 are after ISO 80000-1, Annex B, rule B (the larger magnitude),
 * from memory.
 */
const seed = Math.floor(Math.random() * 2 ** 31);
console.info(`rounding.property seed ${seed}`);

type Rounding = (value: number, places: number) => number;
const ways: readonly (readonly [string, Rounding, Decimal.Rounding])[] = [
  ['roundTo', roundTo, Decimal.ROUND_HALF_UP],
  ['roundUpTo', roundUpTo, Decimal.ROUND_UP],
  ['roundDownTo', roundDownTo, Decimal.ROUND_DOWN],
];

function secondOpinion(value: number, places: number, way: Decimal.Rounding): number {
  const reading = new Decimal(value).toSignificantDigits(15, Decimal.ROUND_HALF_UP);
  if (places >= 0) return reading.toDecimalPlaces(places, way).toNumber() + 0;
  const scale = new Decimal(10).pow(-places);
  return reading.div(scale).toDecimalPlaces(0, way).times(scale).toNumber() + 0;
}

/** A small seeded generator (xorshift), so that 100,000 values cost little and can be repeated. */
function randomFrom(start: number): () => number {
  let state = start | 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}

function disagreements(values: readonly number[], places: readonly number[]): string[] {
  const found: string[] = [];
  for (const value of values) {
    for (const count of places) {
      for (const [name, rounding, way] of ways) {
        const ours = rounding(value, count);
        const theirs = secondOpinion(value, count, way);
        if (!Object.is(ours, theirs)) found.push(`${name}(${value}, ${count}) is ${ours}, decimal.js says ${theirs}`);
      }
    }
  }
  return found;
}

describe('rounding against decimal.js', () => {
  it('agrees on 100,000 random money values at 2 places, half of them at or beside a half cent', () => {
    const random = randomFrom(seed);
    const values = Array.from({ length: 100_000 }, (_, index) => {
      const cents = Math.floor(random() * 10 ** (1 + random() * 8));
      const value = index % 2 === 0 ? cents / 100 + random() / 100 : (cents * 10 + 5) / 1000;
      const beside = index % 4 === 1 ? value * (1 + (random() - 0.5) * 4e-15) : value;
      return random() < 0.2 ? -beside : beside;
    });
    expect(disagreements(values, [2])).toEqual([]);
  }, 120_000);

  it('agrees on products and quotients that carry binary noise, at 0, 2 and -2 places', () => {
    const random = randomFrom(seed + 2);
    const values = Array.from({ length: 10_000 }, () => {
      const count = Math.floor(random() * 1000);
      const size = Math.ceil(random() * 100) / 10;
      return (count * size) / size;
    });
    expect(disagreements(values, [0, 2, -2])).toEqual([]);
  }, 120_000);

  it('agrees on any double at -30 to 30 places', () => {
    const doubles = fc.double({ noNaN: true, noDefaultInfinity: true });
    fc.assert(
      fc.property(doubles, fc.integer({ min: -30, max: 30 }), (value, places) => {
        // decimal.js carries 20 digits by default; the division by 10^30 keeps all 15.
        expect(disagreements([value], [places])).toEqual([]);
      }),
      { seed, numRuns: 20_000 },
    );
  }, 120_000);

  it('agrees on the whole part, floor of the reading', () => {
    const values = fc.oneof(
      fc.double({ min: -1e9, max: 1e9, noNaN: true }),
      fc.integer().map((n) => n * (1 + 2 ** -52)),
    );
    fc.assert(
      fc.property(values, (value) => {
        const floor = new Decimal(value).toSignificantDigits(15, Decimal.ROUND_HALF_UP).floor().toNumber();
        expect(wholePart(value)).toBe(floor + 0);
      }),
      { seed, numRuns: 20_000 },
    );
  });

  it('rounds 2.345 to 2.35 and 2.355 to 2.36, the larger magnitude', () => {
    expect([roundTo(2.345, 2), roundTo(2.355, 2), roundTo(-2.345, 2)]).toEqual([2.35, 2.36, -2.35]);
  });
});

describe('the 15-digit reading against HyperFormula', () => {
  it('is what a cell with precisionRounding 14 shows, on 5,000 random values', () => {
    const random = randomFrom(seed + 3);
    const values = Array.from({ length: 5000 }, () => (random() - 0.5) * 10 ** Math.floor(random() * 40 - 20));
    const workbook = HyperFormula.buildFromArray(
      values.map((value) => [value]),
      { licenseKey: 'gpl-v3', precisionRounding: 14, smartRounding: true, maxRows: 6000, maxColumns: 5 },
    );
    const shown = values.map((_, row) => workbook.getCellValue({ sheet: 0, row, col: 0 }));
    workbook.destroy();
    expect(values.map(fifteenDigits)).toEqual(shown);
  });
});
