import { describe, expect, it } from 'vitest';
import { closuresOf } from '../../src/formula/closures.ts';
import { choice, entry, entryColumn, floor, formula, key, laid, spoken, table } from '../helpers/sheets.ts';

const coats = table(
  'coats',
  [key('coat'), entryColumn('gallons', 'gal', 0), entryColumn('mils', 'mil', 0), entryColumn('each_way', '1', 0)],
  [
    { coat: 'primer', gallons: 2, mils: 8, each_way: 1 },
    { coat: 'base', gallons: 3.5, mils: 10, each_way: 0 },
    { coat: 'clear', gallons: 4, mils: 8, each_way: 1 },
  ],
);
const failing = [
  entry('none', '1', 0),
  formula('first_failed', '1', '1 / none'),
  formula('second_failed', '1', 'SQRT(none - 1)'),
];
const failingRows = table(
  'rows',
  [
    entryColumn('share', '1', 0),
    { name: 'over', label: 'over', unit: '1', formula: '1 / share' },
    { name: 'root', label: 'root', unit: '1', formula: 'SQRT(0 - 1 - share)' },
  ],
  [{ share: 1 }, {}, { share: 4 }, {}],
);
const nothing = table('nothing', [key('item'), entryColumn('amount', '1', 0)]);

/** What a formula gives in a floor sheet that has the lines and tables above. */
function answer(text: string, unit = '1') {
  const sheet = laid([floor([...failing, formula('answer', unit, text)], [coats, failingRows, nothing])]);
  if (sheet.faults.length > 0) throw new Error(sheet.faults.join('\n'));
  return spoken(sheet.value('answer'), sheet);
}

describe('operators', () => {
  it.each([
    ['-2^2', 4],
    ['2^3^2', 64],
    ['7 - 2 - 1', 4],
    ['8 / 4 / 2', 1],
    ['2 + 3 * 4', 14],
    ['0.1 + 0.2', 0.3],
    ['0.1 + 0.2 - 0.3', 0],
    ['-0', 0],
    ['+5', 5],
    ['6.25^0.5', 2.5],
    ['IF(0.1 + 0.2 = 0.3, 1, 0)', 1],
    ['IF(1 <> 2, 1, 0)', 1],
    ['IF(2 < 1, 1, 0)', 0],
    ['IF(2 <= 2, 1, 0)', 1],
    ['IF(3 > 2, 1, 0)', 1],
    ['IF(2 >= 3, 1, 0)', 0],
    ['IF("base" = "base", 1, 0)', 1],
  ])('%s is %d', (text, wanted) => {
    expect(answer(text)).toBe(wanted);
  });
});

describe('functions of values', () => {
  it.each([
    ['IF(1 = 1, 5, 1 / none)', 5],
    ['IF(AND(1 = 1, 2 = 2), 1, 0)', 1],
    ['IF(AND(1 = 1, 2 = 3), 1, 0)', 0],
    ['IF(OR(1 = 2, 2 = 2), 1, 0)', 1],
    ['IF(OR(1 = 2), 1, 0)', 0],
    ['IF(NOT(1 = 2), 1, 0)', 1],
    ['ABS(-3)', 3],
    ['SQRT(9)', 3],
    ['EXP(0)', 1],
    ['LN(EXP(2))', 2],
    ['ROUND(PI() * 1e6, 0)', 3_141_593],
    ['SIN(0)', 0],
    ['COS(PI())', -1],
    ['ACOS(-1) - PI()', 0],
    ['ROUND(1.005, 2)', 1.01],
    ['ROUND(-2.5, 0)', -3],
    ['ROUND(1250, -2)', 1300],
    ['ROUNDUP(86 * 3.3 / 3.3, 0)', 86],
    ['ROUNDUP(0.07, 2)', 0.07],
    ['ROUNDUP(-1.1, 0)', -2],
    ['ROUNDDOWN(1.99, 1)', 1.9],
    ['INT(-1.5)', -2],
    ['DATE(2026, 1, 5) - DATE(2025, 1, 5)', 365],
    ['WEEKDAY(DATE(2026, 1, 5), 2)', 1],
  ])('%s is %d', (text, wanted) => {
    expect(answer(text, text.startsWith('DATE') ? 'd' : '1')).toBe(wanted);
  });
});

describe('functions of columns', () => {
  it.each([
    ['SUM(coats.gallons)', 'gal', 9.5],
    ['SUM(coats.gallons, coats.gallons) + 0', 'gal', 19],
    ['MIN(coats.gallons)', 'gal', 2],
    ['MAX(coats.mils)', 'mil', 10],
    ['COUNT(coats.gallons, 7 * SUM(coats.gallons))', '1', 4],
    ['AVERAGE(coats.mils)', 'mil', 8.66666666666667],
    ['SUMPRODUCT(coats.gallons, coats.each_way)', 'gal', 6],
    ['SUMIFS(coats.gallons, coats.coat, "base")', 'gal', 3.5],
    ['SUMIFS(coats.gallons, coats.mils, MIN(coats.mils), coats.each_way, 1)', 'gal', 6],
    ['SUMIFS(coats.gallons, coats.coat, "none_such")', 'gal', 0],
    ['COUNTIFS(coats.each_way, 1)', '1', 2],
    ['COUNTIFS(coats.each_way, 1, coats.coat, "clear")', '1', 1],
    ['INDEX(coats.gallons, 2)', 'gal', 3.5],
    ['INDEX(coats.gallons, 2.9, 1)', 'gal', 3.5],
    ['INDEX(coats.gallons, MATCH("clear", coats.coat, 0), 1)', 'gal', 4],
    ['MATCH(MAX(coats.mils), coats.mils, 0)', '1', 2],
  ])('%s is %s %d', (text, unit, wanted) => {
    expect(answer(text, unit)).toBe(wanted);
  });

  it.each(['SUM', 'MIN', 'MAX', 'COUNT'])('%s of an empty column is 0', (name) => {
    expect(answer(`${name}(nothing.amount)`)).toBe(0);
  });

  it.each([
    ['SUMPRODUCT(nothing.amount, nothing.amount)', 0],
    ['SUMIFS(nothing.amount, nothing.item, "a")', 0],
    ['COUNTIFS(nothing.amount, 0)', 0],
    ['AVERAGE(nothing.amount)', 'notFound at answer'],
    ['MATCH(0, nothing.amount, 0)', 'notFound at answer'],
    ['INDEX(nothing.amount, 1)', 'notFound at answer'],
  ])('of an empty column %s is %s', (text, wanted) => {
    expect(answer(text)).toBe(wanted);
  });
});

describe('a failure', () => {
  it.each([
    ['1 / none', 'division at answer'],
    ['none / none', 'division at answer'],
    ['SQRT(-1)', 'undefined at answer'],
    ['LN(none)', 'undefined at answer'],
    ['ACOS(2)', 'undefined at answer'],
    ['EXP(1000)', 'undefined at answer'],
    ['1e308 * 10', 'undefined at answer'],
    ['(-8)^0.5', 'undefined at answer'],
    ['none^-1', 'undefined at answer'],
    ['WEEKDAY(DATE(2026, 1, 1), 99)', 'undefined at answer'],
    ['WEEKDAY(DATE(99999, 1, 1))', 'undefined at answer'],
    ['INDEX(coats.each_way, 4)', 'outside at answer'],
    ['INDEX(coats.each_way, 0)', 'outside at answer'],
    ['MATCH("none_such", coats.coat, 0)', 'notFound at answer'],
  ])('of %s is %s', (text, wanted) => {
    expect(answer(text)).toBe(wanted);
  });

  it.each([
    ['first_failed + 1', 'division at first_failed'],
    ['second_failed + first_failed', 'undefined at second_failed'],
    ['-second_failed', 'undefined at second_failed'],
    ['IF(first_failed > 0, 1, 0)', 'division at first_failed'],
    ['IF(AND(1 = 2, first_failed > 0), 1, 0)', 'division at first_failed'],
    ['IF(OR(1 = 1, first_failed > 0), 1, 0)', 'division at first_failed'],
    ['ROUND(1, first_failed)', 'division at first_failed'],
    ['SUM(rows.over)', 'division at rows.over row 2'],
    ['MAX(rows.root, rows.over)', 'undefined at rows.root row 1'],
    ['MIN(rows.over, rows.root)', 'division at rows.over row 2'],
    ['AVERAGE(rows.over, rows.root)', 'division at rows.over row 2'],
    ['SUMPRODUCT(rows.share, rows.over)', 'division at rows.over row 2'],
    ['SUMIFS(rows.share, rows.over, 1)', 'division at rows.over row 2'],
    ['SUMIFS(rows.over, rows.share, first_failed)', 'division at first_failed'],
    ['COUNTIFS(rows.root, 1)', 'undefined at rows.root row 1'],
    ['INDEX(rows.over, 4)', 'division at rows.over row 4'],
    ['INDEX(rows.over, second_failed)', 'undefined at second_failed'],
    ['MATCH(9, rows.over, 0)', 'division at rows.over row 2'],
  ])('keeps where it began: %s is %s', (text, wanted) => {
    expect(answer(text)).toBe(wanted);
  });

  it.each([
    ['COUNT(rows.over, rows.share)', 6],
    ['COUNT(first_failed, 1)', 1],
    ['SUMIFS(rows.over, rows.share, 4)', 0.25],
    ['INDEX(rows.over, 3)', 0.25],
    ['MATCH(1, rows.over, 0)', 1],
  ])('does not touch what does not need it: %s is %d', (text, wanted) => {
    expect(answer(text)).toBe(wanted);
  });
});

describe('an edit of closures', () => {
  const lines = [
    entry('width', 'ft', 10),
    choice('finish', ['matt', 'gloss'], 'matt'),
    formula('area', 'ft2', 'width * width'),
    formula('shine', '1', 'IF(finish = "gloss", 1 / (width / width - 1), 0)'),
  ];
  const { plan } = laid([floor(lines)]).plan;
  const cell = (name: string) => plan.lines.get(name) ?? -1;

  it('is felt when all is worked out again: 12 ft gives 144 ft2', () => {
    const closures = closuresOf(plan);
    closures.setValue(cell('width'), 12);
    expect(closures.value(cell('area'))).toBe(100);
    closures.recalculate();
    expect(closures.value(cell('area'))).toBe(144);
  });

  it('may fail a cell and mend it', () => {
    const closures = closuresOf(plan);
    closures.setValue(cell('finish'), 'gloss');
    closures.recalculate();
    expect(closures.value(cell('finish'))).toBe('gloss');
    expect(closures.value(cell('shine'))).toEqual({ kind: 'division', origin: cell('shine') });
    closures.setValue(cell('finish'), 'matt');
    closures.recalculate();
    expect(closures.values()).toEqual([10, 'matt', 100, 0]);
  });

  it('keeps out of other closures of the same plan', () => {
    const [one, other] = [closuresOf(plan), closuresOf(plan)];
    one.setValue(cell('width'), 5);
    one.recalculate();
    other.recalculate();
    expect(other.value(cell('area'))).toBe(100);
  });
});
