import fc from 'fast-check';
import type { Checked, FunctionName } from '../../src/formula/checked-tree.ts';
import type { BinaryOperator } from '../../src/formula/tree.ts';
import {
  call,
  code,
  column,
  divisionByZero,
  here,
  line,
  minus,
  noRealAnswer,
  num,
  op,
  rowsAbove,
} from './plan-builder.ts';

// Random formulas of a table `rows` with the number columns value, over and running, and the code column key.
const numberColumns = ['value', 'over', 'running'] as const;

/** Numbers that meet the traps: near misses, decimals without an exact double, overflow, dates. */
export const anyNumber = fc.oneof(
  fc.integer({ min: -3, max: 40 }),
  fc.double({ min: -1e4, max: 1e4, noNaN: true }),
  fc.constantFrom(0, 0.1, 0.2, 0.3, 1e-14, 1e300, -1e300, 1e-200, 1.005, 0.07, 3.3, 86, 45292, 2024),
);

const leaf = fc.oneof(
  anyNumber.map(num),
  fc.constantFrom<Checked>(line('a'), line('b'), noRealAnswer, divisionByZero, call('PI')),
  fc.constantFrom(...numberColumns).map((name) => here('rows', name)),
);

const arithmetic = fc.constantFrom<BinaryOperator>('+', '-', '*', '/', '+', '-', '*', '/', '^');
const comparison = fc.constantFrom<BinaryOperator>('=', '<>', '<', '<=', '>', '>=');
const numberFunction = fc.constantFrom<FunctionName>('ABS', 'SQRT', 'EXP', 'LN', 'SIN', 'COS', 'ACOS', 'INT');
const rounding = fc.constantFrom<FunctionName>('ROUND', 'ROUNDUP', 'ROUNDDOWN');
const aggregate = fc.constantFrom<FunctionName>('SUM', 'MIN', 'MAX', 'COUNT', 'AVERAGE');
const key = fc.constantFrom('p', 'q', 'r').map(code);

/** A formula that gives a number, for a cell of the first row or of one with rows above. */
export function numberFormula(firstRow: boolean): fc.Arbitrary<Checked> {
  return fc.letrec<{ number: Checked; truth: Checked }>((tie) => ({
    number: fc.oneof(
      { depthSize: 'small', withCrossShrink: true },
      leaf,
      fc.tuple(tie('number'), arithmetic, tie('number')).map(([left, operator, right]) => op(left, operator, right)),
      tie('number').map(minus),
      fc.tuple(tie('truth'), tie('number'), tie('number')).map((args) => call('IF', ...args)),
      fc
        .tuple(chosenKey(tie('truth')), tie('number'), tie('number'))
        .map(([choice, p, q]) => call('SWITCH', choice, code('p'), p, code('q'), q)),
      fc.tuple(numberFunction, tie('number')).map(([name, value]) => call(name, value)),
      fc.tuple(rounding, tie('number'), places(tie('number'))).map(([name, ...args]) => call(name, ...args)),
      dates(tie('number')),
      ofColumns(tie('number'), firstRow),
    ),
    truth: fc.oneof(
      { depthSize: 'small' },
      fc.tuple(tie('number'), comparison, tie('number')).map(([left, operator, right]) => op(left, operator, right)),
      fc
        .tuple(fc.constantFrom<FunctionName>('AND', 'OR'), fc.array(tie('truth'), { minLength: 1, maxLength: 3 }))
        .map(([name, args]) => call(name, ...args)),
      tie('truth').map((truth) => call('NOT', truth)),
      key.map((literal) => op(here('rows', 'key'), '=', literal)),
    ),
  })).number;
}

/** One of the two codes for which a SWITCH has arms. */
function chosenKey(truth: fc.Arbitrary<Checked>): fc.Arbitrary<Checked> {
  return fc.oneof(
    fc.constant(here('rows', 'key')),
    truth.map((condition) => call('IF', condition, code('q'), code('p'))),
  );
}

function places(number: fc.Arbitrary<Checked>): fc.Arbitrary<Checked> {
  return fc.oneof(fc.integer({ min: -4, max: 16 }).map(num), number);
}

function dates(number: fc.Arbitrary<Checked>): fc.Arbitrary<Checked> {
  const year = fc.constantFrom(2024, 1900, 1899, 1600, 24).map(num);
  const carried = fc.integer({ min: -400, max: 400 }).map(num);
  return fc.oneof(
    fc.tuple(year, carried, carried).map((args) => call('DATE', ...args)),
    fc.tuple(number, number, number).map((args) => call('DATE', ...args)),
    number.map((day) => call('WEEKDAY', day)),
    fc.tuple(number, fc.constantFrom(1, 2, 3, 5, 11, 16, 17).map(num)).map((args) => call('WEEKDAY', ...args)),
  );
}

/** The columns of one call are all whole or all of the rows above: others differ in length, which checking refuses. */
function ofColumns(number: fc.Arbitrary<Checked>, firstRow: boolean): fc.Arbitrary<Checked> {
  const rowsTaken = firstRow ? fc.constant(column) : fc.constantFrom(column, rowsAbove);
  return rowsTaken.chain((take) => {
    const numbers = fc.constantFrom(...numberColumns).map((name) => take('rows', name));
    const keys = take('rows', 'key');
    const keyRow = key.map((literal) => call('MATCH', literal, keys, num(0)));
    return fc.oneof(
      fc
        .tuple(aggregate, fc.array(fc.oneof(numbers, number), { minLength: 1, maxLength: 3 }))
        .map(([name, args]) => call(name, ...args)),
      fc.tuple(numbers, numbers).map((args) => call('SUMPRODUCT', ...args)),
      fc.tuple(numbers, numbers, number, key).map(([a, b, c, k]) => call('SUMIFS', a, b, c, keys, k)),
      fc.tuple(numbers, number, key).map(([a, c, k]) => call('COUNTIFS', keys, k, a, c)),
      fc.tuple(numbers, fc.oneof(number, keyRow)).map((args) => call('INDEX', ...args)),
      fc.tuple(number, numbers).map(([sought, a]) => call('MATCH', sought, a, num(0))),
    );
  });
}
