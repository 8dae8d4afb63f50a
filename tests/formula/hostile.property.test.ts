import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkFormula } from '../../src/formula/check.ts';
import { functionNames } from '../../src/formula/checked-tree.ts';
import { parseFormula } from '../../src/formula/parser.ts';
import { cpuMilliseconds } from '../helpers/cpu-time.ts';
import { type ScopeParts, scopeOf } from '../helpers/formula-scope.ts';
import { entry, entryColumn, floor, formula, key, laid, table } from '../helpers/sheets.ts';

const longestAnswer = 50;
const runs = 5000;

const words = [
  '__proto__',
  'constructor',
  'toString',
  'prototype',
  'above',
  'first',
  'area',
  'coats',
  'gallons',
  'total',
];
const name = fc.oneof(fc.constantFrom(...words), fc.stringMatching(/^[a-z_]{1,70}$/));
const func = fc.oneof(fc.constantFrom<string>(...functionNames), fc.constantFrom(...words));
const number = fc.oneof(
  fc.constantFrom('0', '1e308', '1e-308', '1e999', '9'.repeat(400), '0.'.padEnd(300, '0'), '1.2.3', '00'),
  fc.double({ min: 0, noNaN: true, noDefaultInfinity: true }).map(String),
);
const odd = fc.constantFrom(
  '"*"',
  '"?~*"',
  '"unclosed',
  '""""',
  '"a\u0000b"',
  '\ud800',
  '\u202e',
  '🏠',
  '（',
  '−',
  ';',
  '!',
  '#REF!',
  '{',
  '$A$1',
  'A1:B2',
  '=1+1',
  '%',
  '@',
);
const operator = fc.constantFrom('+', '-', '*', '/', '^', '=', '<>', '<=', '<', '>', '>=', ',', '.', '(', ')', ' ');
const piece = fc.oneof(name, number, odd, operator, fc.string({ unit: 'binary', maxLength: 6 }));

const call = fc
  .tuple(
    func,
    fc.array(fc.oneof(name, number, fc.constant('coats.gallons'), fc.constant('above(gallons)')), { maxLength: 35 }),
  )
  .map(([called, args]) => `${called}(${args.join(',')})`);
const nested = fc
  .tuple(
    fc.constantFrom('(', '-', 'ABS(', 'IF(1=1,', 'SUM(coats.gallons,', 'above(', 'NOT('),
    fc.nat(2100),
    fc.boolean(),
  )
  .map(([open, times, close]) => open.repeat(times) + (close ? `1${')'.repeat(times)}` : ''));
const long = fc
  .tuple(fc.constantFrom('1+', 'area*', 'coats.gallons,', '2^', '"a"=', 'nothing_such*', 'a.b+'), fc.nat(1200))
  .map(([part, times]) => `${part.repeat(times)}1`);
const many = fc.array(piece, { maxLength: 120 }).map((pieces) => pieces.join(''));
const hostile = fc.oneof(
  call,
  nested,
  long,
  many,
  fc.tuple(call, operator, nested).map((parts) => parts.join('')),
);

const lines = Object.fromEntries(Array.from({ length: 300 }, (_, at) => [`line_number_${at}_of_the_sheet`, 'ft2']));
const parts: ScopeParts = {
  lines: { ...lines, area: 'ft2', total: '$' },
  tables: { coats: { gallons: 'gal', include: '1' } },
  ownTable: 'coats',
};
const scope = scopeOf(parts);

/** Reads and checks a formula; gives how many faults it has. */
function answer(text: string): number {
  const parsed = parseFormula(text);
  return parsed.kind === 'fault' ? 1 : checkFormula(parsed.tree, scope).faults.length;
}

function timed(text: string): number {
  return cpuMilliseconds(() => answer(text));
}

describe('5,000 hostile formulas', () => {
  it(`are each refused or answered within ${longestAnswer} ms`, () => {
    let [slowest, refused, taken] = [0, 0, 0];
    for (let warm = 0; warm < 50; warm += 1) answer(`SUM(coats.gallons) * ${warm} + nothing_such`);
    fc.assert(
      fc.property(hostile, (text) => {
        const first = timed(text);
        // The machine may have looked away: a slow one is tried once more.
        const time = first > longestAnswer ? timed(text) : first;
        slowest = Math.max(slowest, time);
        if (answer(text) > 0) refused += 1;
        else taken += 1;
        expect(time).toBeLessThanOrEqual(longestAnswer);
      }),
      { numRuns: runs },
    );
    console.info(`hostile formulas: ${refused} refused, ${taken} answered, the slowest in ${slowest.toFixed(1)} ms`);
    expect(refused + taken).toBe(runs);
    expect(taken).toBeGreaterThan(50);
  });

  it.each([
    ['200 unknown names beside 300 lines', Array.from({ length: 200 }, (_, at) => `x${at}`).join('+')],
    ['unknown names as long as names are', Array.from({ length: 32 }, () => 'y'.repeat(59)).join('+')],
    ['one name of 2,000 letters', 'z'.repeat(2000)],
    ['1,000 quotation marks', '"'.repeat(999)],
    ['a wall of text marks', '"a'.repeat(999)],
    ['powers of powers of a unit', `area${'^12'.repeat(190)}`],
  ])('%s too', (_, text) => {
    answer(text);
    expect(Math.min(timed(text), timed(text))).toBeLessThanOrEqual(longestAnswer);
  });
});

it('a formula that may stand is worked out, or fails as a value: 500 of the hostile ones', () => {
  const coats = table('coats', [key('coat'), entryColumn('gallons', '1', 2)], [{ coat: 'base' }, { coat: 'clear' }]);
  let worked = 0;
  const unitless = fc.oneof(call, nested, long).map((text) => text.replaceAll('above(', 'ABS('));
  fc.assert(
    fc.property(unitless, (text) => {
      fc.pre(text !== '' && text.length <= 2000);
      const sheet = laid([
        floor([entry('area', '1', 3), entry('total', '1', 0), formula('answer', '1', text)], [coats]),
      ]);
      if (sheet.faults.length > 0) return;
      const value = sheet.value('answer');
      expect(typeof value === 'number' ? Number.isFinite(value) : typeof value === 'object').toBe(true);
      worked += 1;
    }),
    { numRuns: 500 },
  );
  expect(worked).toBeGreaterThan(20);
});
