import * as formulajs from '@formulajs/formulajs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openWorkbook } from '../../src/engine/workbook.ts';
import type { CellValue } from '../../src/formula/cells.ts';
import type { Checked } from '../../src/formula/checked-tree.ts';
import { closuresOf } from '../../src/formula/closures.ts';
import { call, code, column, lineCell, num, op, planOf } from '../engine/plan-builder.ts';
import { printedSeed } from '../helpers/random-seed.ts';

/*
 * The functions of the language in both evaluators against formulajs 4.6.1, an implementation of the spreadsheet
 * functions by other people, on random arguments. Where formulajs is not what OpenFormula says, or reads a number to more
 * than 15 digits, the last part of this file pins both answers.
 */
const seed = printedSeed('open-formula.property');
const runs = 400;

interface Question {
  readonly formula: Checked;
  readonly expected: unknown;
}

function sample<T>(arbitrary: fc.Arbitrary<T>, count = runs): T[] {
  return fc.sample(arbitrary, { seed, numRuns: count });
}

/** All questions as lines of one plan, answered by both evaluators. */
function answers(formulas: readonly Checked[], tables = {}): [CellValue, CellValue][] {
  const plan = planOf({ lines: Object.fromEntries(formulas.map((formula, at) => [`q${at}`, formula])), tables });
  const closures = closuresOf(plan);
  const workbook = openWorkbook(plan);
  const both = formulas.map((_, at): [CellValue, CellValue] => {
    const cell = lineCell(plan, `q${at}`);
    return [workbook.value(cell), closures.value(cell)];
  });
  workbook.close();
  return both;
}

function expectAll(questions: readonly Question[], tables = {}): void {
  const both = answers(
    questions.map(({ formula }) => formula),
    tables,
  );
  expect(questions.length).toBeGreaterThan(0);
  for (const [at, { formula, expected }] of questions.entries()) {
    for (const answer of both[at] ?? []) expect({ answer, formula }).toEqual({ answer: asRead(expected), formula });
  }
}

/** Equal but for the last of 15 digits, which the reading of a cell may round from the 16th. */
function expectNear(questions: readonly Question[]): void {
  const both = answers(questions.map(({ formula }) => formula));
  for (const [at, { formula, expected }] of questions.entries()) {
    for (const answer of both[at] ?? []) {
      const wanted = asRead(expected);
      if (typeof wanted !== 'number') expect({ answer, formula }).toEqual({ answer: wanted, formula });
      else expect(Math.abs(Number(answer) - wanted)).toBeLessThanOrEqual(1.1e-14 * Math.abs(wanted));
    }
  }
}

/** As a cell reads: 15 digits, truths as 1 and 0, errors and what is no finite number as a failure. */
function asRead(value: unknown): unknown {
  if (value instanceof Error || (typeof value === 'number' && !Number.isFinite(value)))
    return expect.objectContaining({ kind: 'undefined' });
  if (value instanceof Date) return Math.round((value.getTime() - Date.UTC(1899, 11, 30)) / 86_400_000);
  return typeof value === 'number' ? Number(value.toPrecision(15)) : value;
}

/** A decimal of at most 12 digits: read alike by those who round the double and those who round its digits. */
const decimal = fc
  .tuple(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 0, max: 5 }))
  .map(([digits, places]) => Number(`${digits}e-${places}`));
const truth = (value: boolean): Checked => op(num(value ? 1 : 0), '=', num(1));
const truthAsNumber = (formula: Checked): Checked => call('IF', formula, num(1), num(0));

describe('rounding', () => {
  it.each([
    ['ROUND', formulajs.ROUND],
    ['ROUNDUP', formulajs.ROUNDUP],
    ['ROUNDDOWN', formulajs.ROUNDDOWN],
  ] as const)('%s to -3 to 4 places', (name, theirs) => {
    // Quarters have exact doubles, so that scaling by a power of ten adds no noise that formulajs would round.
    const quarter = fc.integer({ min: -1e8, max: 1e8 }).map((count) => count / 4);
    const places = fc.integer({ min: -3, max: 4 });
    expectAll(
      sample(fc.tuple(quarter, places)).map(([value, to]) => ({
        formula: call(name, num(value), num(to)),
        expected: theirs(value, to),
      })),
    );
  });

  it('ROUND of any decimal to 0 to 4 places, half away from zero', () => {
    expectAll(
      sample(fc.tuple(decimal, fc.integer({ min: 0, max: 4 }))).map(([value, to]) => ({
        formula: call('ROUND', num(value), num(to)),
        expected: formulajs.ROUND(value, to),
      })),
    );
  });

  it('INT goes down, also below zero', () => {
    expectAll(sample(decimal).map((value) => ({ formula: call('INT', num(value)), expected: formulajs.INT(value) })));
  });
});

describe('functions of one number', () => {
  // Down to a millionth: the smallest doubles are read as 0.
  const within = (min: number, max: number) =>
    fc.double({ min, max, noNaN: true }).filter((value) => value === 0 || Math.abs(value) > 1e-6);
  const small = within(-600, 700);

  it.each([
    ['ABS', formulajs.ABS, decimal],
    ['SQRT', formulajs.SQRT, within(-10, 1e9)],
    ['EXP', formulajs.EXP, small],
    ['LN', formulajs.LN, within(1e-9, 1e9)],
    ['SIN', formulajs.SIN, small],
    ['COS', formulajs.COS, small],
    ['ACOS', formulajs.ACOS, within(-1.5, 1.5)],
  ] as const)('%s', (name, theirs, values) => {
    expectNear(sample<number>(values).map((value) => ({ formula: call(name, num(value)), expected: theirs(value) })));
  });

  it('PI', () => {
    expectNear([{ formula: call('PI'), expected: formulajs.PI() }]);
  });
});

describe('conditions', () => {
  const truths = fc.array(fc.boolean(), { minLength: 1, maxLength: 5 });

  it.each([
    ['AND', formulajs.AND],
    ['OR', formulajs.OR],
  ] as const)('%s', (name, theirs) => {
    expectAll(
      sample(truths, 100).map((values) => ({
        formula: truthAsNumber(call(name, ...values.map(truth))),
        expected: theirs(...values) === true ? 1 : 0,
      })),
    );
  });

  it('NOT, and IF with the arm that is taken', () => {
    expectAll(
      sample(fc.tuple(fc.boolean(), decimal, decimal), 100).flatMap(([value, yes, no]) => [
        { formula: truthAsNumber(call('NOT', truth(value))), expected: formulajs.NOT(value) ? 1 : 0 },
        { formula: call('IF', truth(value), num(yes), num(no)), expected: formulajs.IF(value, yes, no) },
      ]),
    );
  });
});

describe('dates', () => {
  it('DATE, with months and days that run over, from 1904 to 2199', () => {
    const parts = fc.tuple(
      fc.integer({ min: 1904, max: 2199 }),
      fc.integer({ min: -30, max: 40 }),
      fc.integer({ min: -400, max: 400 }),
    );
    expectAll(
      sample(parts).map(([year, month, day]) => ({
        formula: call('DATE', num(year), num(month), num(day)),
        expected: formulajs.DATE(year, month, day),
      })),
    );
  });

  it.each([1, 2, 3, 11, 12, 13, 14, 15, 16, 17])('WEEKDAY of type %d from March 1900 on', (type) => {
    expectAll(
      sample(fc.integer({ min: 61, max: 110_000 }), 60).map((day) => ({
        formula: call('WEEKDAY', num(day), num(type)),
        expected: formulajs.WEEKDAY(day, type),
      })),
    );
  });
});

describe('functions of columns', () => {
  const codes = ['slate', 'dove', 'sand'];
  const row = fc.record({
    value: decimal.filter((number) => Math.abs(number) < 1e7),
    other: fc.integer({ min: 0, max: 6 }),
    key: fc.constantFrom(...codes),
  });
  const rows = sample(fc.array(row, { minLength: 12, maxLength: 12 }), 1)[0] ?? [];
  const [value, other, key] = [
    rows.map((each) => each.value),
    rows.map((each) => each.other),
    rows.map((each) => each.key),
  ];
  const tables = { rows: { value, other, key } };
  const [values, others, keys] = [column('rows', 'value'), column('rows', 'other'), column('rows', 'key')];
  const extra = sample(
    decimal.filter((number) => Math.abs(number) < 1e7),
    20,
  );

  it.each([
    ['MIN', formulajs.MIN],
    ['MAX', formulajs.MAX],
    ['COUNT', formulajs.COUNT],
  ] as const)('%s of a column and a number', (name, theirs) => {
    expectAll(
      extra.map((number) => ({
        formula: call(name, values, num(number)),
        expected: theirs([...value], number),
      })),
      tables,
    );
  });

  it.each([
    ['SUM', [values, num(1.5)], () => formulajs.SUM([...value], 1.5)],
    ['AVERAGE', [values, num(1.5)], () => formulajs.AVERAGE([...value], 1.5)],
    ['SUMPRODUCT', [values, others], () => formulajs.SUMPRODUCT([...value], [...other])],
  ] as const)('%s, but for the order in which it adds', (name, args, theirs) => {
    for (const answer of answers([call(name, ...args)], tables)[0] ?? []) {
      const scale = value.reduce((sum, each) => sum + 6 * Math.abs(each), 1);
      expect(Math.abs(Number(answer) - Number(theirs())) / scale).toBeLessThan(1e-14);
    }
  });

  it('SUMIFS and COUNTIFS by a code, by a number, and by both', () => {
    const questions = codes.flatMap((wanted) =>
      [0, 1, 2, 3, 4, 5, 6].flatMap((count) => [
        { formula: call('COUNTIFS', keys, code(wanted)), expected: formulajs.COUNTIFS(key, wanted) },
        {
          formula: call('COUNTIFS', keys, code(wanted), others, num(count)),
          expected: formulajs.COUNTIFS(key, wanted, other, count),
        },
        { formula: call('SUMIFS', others, keys, code(wanted)), expected: formulajs.SUMIFS(other, key, wanted) },
        {
          formula: call('SUMIFS', others, keys, code(wanted), others, num(count)),
          expected: formulajs.SUMIFS(other, key, wanted, other, count),
        },
      ]),
    );
    expectAll(questions, tables);
  });

  it('MATCH finds the first equal one, and INDEX reads its row', () => {
    const found = codes.filter((wanted) => key.includes(wanted));
    expectAll(
      found.flatMap((wanted) => {
        const place = call('MATCH', code(wanted), keys, num(0));
        const theirs = formulajs.MATCH(wanted, key, 0);
        const column = value.map((each) => [each]);
        return [
          { formula: place, expected: theirs },
          { formula: call('INDEX', values, place, num(1)), expected: formulajs.INDEX(column, Number(theirs), 1) },
        ];
      }),
      tables,
    );
  });
});

describe('where formulajs is another', () => {
  // Ours on the left. It changes the arrays that it is given, too: COUNT, MIN, MAX, SUM and AVERAGE get copies above.
  const both = (formula: Checked, tables = {}): CellValue[] => answers([formula], tables)[0] ?? [];
  const failed = (kind: string) => [expect.objectContaining({ kind }), expect.objectContaining({ kind })];

  it('reads more than 15 digits: 86 * 3.3 / 3.3 rounds up to 87, and 8.2 - 0.2 has the whole part 7', () => {
    const kits = op(op(num(86), '*', num(3.3)), '/', num(3.3));
    expect(both(call('ROUNDUP', kits, num(0)))).toEqual([86, 86]);
    expect(formulajs.ROUNDUP((86 * 3.3) / 3.3, 0)).toBe(87);
    expect(both(call('INT', op(num(8.2), '-', num(0.2))))).toEqual([8, 8]);
    expect(formulajs.INT(8.2 - 0.2)).toBe(7);
  });

  it('gives Infinity and NaN where there is no answer', () => {
    expect(both(call('EXP', num(1000)))).toEqual(failed('undefined'));
    expect(formulajs.EXP(1000)).toBe(Number.POSITIVE_INFINITY);
    expect(both(call('LN', num(-1)))).toEqual(failed('undefined'));
    expect(formulajs.LN(-1)).toBeNaN();
  });

  it('counts the weekdays before March 1900 wrongly: 59, 60 and 61 are all one; and has none of type 5', () => {
    expect([59, 60, 61].map((day) => formulajs.WEEKDAY(day))).toEqual([5, 5, 5]);
    expect([59, 60, 61].flatMap((day) => both(call('WEEKDAY', num(day))))).toEqual([3, 3, 4, 4, 5, 5]);
    expect(formulajs.WEEKDAY(45_292, 5)).toBeUndefined();
    expect(both(call('WEEKDAY', num(45_292), num(5)))).toEqual(failed('undefined'));
  });

  it('reads row 0 as row 1, and a row between two not at all', () => {
    const tables = { rows: { value: [10, 20, 30] } };
    const at = (row: number) => both(call('INDEX', column('rows', 'value'), num(row)), tables);
    const theirs = (row: number) => formulajs.INDEX([[10], [20], [30]], row);
    expect(theirs(0)).toBe(10);
    expect(at(0)).toEqual(failed('outside'));
    expect(() => theirs(1.5)).toThrow();
    expect(at(1.5)).toEqual([10, 10]);
    expect(at(4)).toEqual(failed('outside'));
  });
});
