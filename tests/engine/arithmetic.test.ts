import { describe, expect, it } from 'vitest';
import type { BinaryOperator } from '../../src/formula/tree.ts';
import { answer } from './answer.ts';
import { call, code, column, divisionByZero, line, minus, noRealAnswer, num, op } from './plan-builder.ts';

const calc = (left: number, operator: BinaryOperator, right: number) => answer(op(num(left), operator, num(right)));

describe('rounding, in place of HyperFormula’s own', () => {
  const cases = [
    ['ROUND(1.005, 2)', call('ROUND', num(1.005), num(2)), 1.01],
    ['ROUNDUP(0.07, 2)', call('ROUNDUP', num(0.07), num(2)), 0.07],
    ['ROUNDDOWN(-2.99, 0)', call('ROUNDDOWN', num(-2.99), num(0)), -2],
    ['INT(-1.5)', call('INT', num(-1.5)), -2],
    ['ROUND(1234, -2)', call('ROUND', num(1234), num(-2)), 1200],
    ['ROUNDUP(86*3.3/3.3, 0)', call('ROUNDUP', op(op(num(86), '*', num(3.3)), '/', num(3.3)), num(0)), 86],
  ] as const;
  it.each(cases)('gives %s as on paper', (_, formula, expected) => expect(answer(formula)).toBe(expected));

  it('fails with its value’s failure before its places’', () => {
    expect(answer(call('ROUND', noRealAnswer, divisionByZero))).toBe('undefined at answer');
    expect(answer(call('ROUND', num(1), divisionByZero))).toBe('division at answer');
  });
});

describe('operators', () => {
  it('reads 2^3^2 from the left as 64 and -2^2 as 4', () => {
    expect(answer(op(op(num(2), '^', num(3)), '^', num(2)))).toBe(64);
    expect(answer(op(minus(num(2)), '^', num(2)))).toBe(4);
    expect(answer(op(num(-2), '^', num(2)))).toBe(4);
    expect(answer(minus(op(num(2), '^', num(2))))).toBe(-4);
  });

  it('keeps the order of the tree: 10 - (3 - 2) is 9, 10 - 3 - 2 is 5, 2 * (3 + 4) is 14', () => {
    expect(answer(op(num(10), '-', op(num(3), '-', num(2))))).toBe(9);
    expect(answer(op(op(num(10), '-', num(3)), '-', num(2)))).toBe(5);
    expect(answer(op(num(2), '*', op(num(3), '+', num(4))))).toBe(14);
  });

  it('snaps a sum or difference below 1e-13 of its left operand to 0', () => {
    expect(answer(op(op(num(0.1), '+', num(0.2)), '-', num(0.3)))).toBe(0);
    expect(calc(1e-20, '+', 0)).toBe(1e-20);
    expect(calc(1, '-', 1 - 1e-12)).toBeCloseTo(1e-12, 15);
  });

  it('compares numbers as equal within 1e-13 of themselves', () => {
    expect(calc(1, '=', 1 + 1e-14)).toBe(true);
    expect(calc(1, '<', 1 + 1e-14)).toBe(false);
    expect(calc(1, '<=', 1 - 1e-14)).toBe(true);
    expect(calc(-1, '=', -1 - 1e-14)).toBe(true);
    expect(calc(1, '=', 1 + 2e-13)).toBe(false);
    expect(calc(0, '=', 1e-300)).toBe(false);
  });

  it('takes 0^0 as 1 and finds no real answer for (-8)^(1/3), 0^-1 and 1e308 * 10', () => {
    expect(calc(0, '^', 0)).toBe(1);
    expect(calc(-8, '^', 1 / 3)).toBe('undefined at answer');
    expect(calc(0, '^', -1)).toBe('undefined at answer');
    expect(calc(1e308, '*', 10)).toBe('undefined at answer');
  });

  it('lets the left failure win', () => {
    expect(answer(op(divisionByZero, '+', noRealAnswer))).toBe('division at answer');
    expect(answer(op(noRealAnswer, '+', divisionByZero))).toBe('undefined at answer');
    expect(answer(op(noRealAnswer, '=', divisionByZero))).toBe('undefined at answer');
  });

  it('never gives -0', () => {
    expect(answer(minus(num(0)))).toBe(0);
    expect(calc(0, '*', -5)).toBe(0);
    expect(answer(op(num(1), '/', minus(num(0))))).toBe('division at answer');
  });

  it('reads numbers to 15 digits, also very small and large ones', () => {
    expect(calc(0.1, '+', 0.2)).toBe(0.3);
    expect(answer(op(line('tiny'), '*', num(1)), { lines: { tiny: 1e-300 } })).toBe(0);
    expect(calc(1e21, '*', 2)).toBe(2e21);
    expect(calc(1e-7, '*', 1)).toBe(1e-7);
  });

  it('adds 400 numbers in one formula', () => {
    const sum = Array.from({ length: 399 }, () => num(1)).reduce((left, right) => op(left, '+', right), num(1));
    expect(answer(sum)).toBe(400);
  });
});

describe('functions of numbers', () => {
  it.each([
    ['SQRT(-1)', call('SQRT', num(-1))],
    ['LN(0)', call('LN', num(0))],
    ['ACOS(2)', call('ACOS', num(2))],
    ['EXP(1000)', call('EXP', num(1000))],
    ['DATE(-500, 1, 1)', call('DATE', num(-500), num(1), num(1))],
    ['DATE(9999, 12, 32)', call('DATE', num(9999), num(12), num(32))],
    ['WEEKDAY(-3)', call('WEEKDAY', num(-3))],
    ['WEEKDAY(45292, 5)', call('WEEKDAY', num(45292), num(5))],
  ])('finds no real answer for %s', (_, formula) => expect(answer(formula)).toBe('undefined at answer'));

  it('knows pi to 15 decimals: PI() - 3 is 0.141592653589793', () => {
    expect(answer(op(call('PI'), '-', num(3)))).toBe(0.141592653589793);
  });

  it('carries months and days over in DATE, and cuts fractions off', () => {
    const date = (y: number, m: number, d: number) => answer(call('DATE', num(y), num(m), num(d)));
    expect(date(2024, 13, 1)).toBe(date(2025, 1, 1));
    expect(date(2024, 0, 1)).toBe(date(2023, 12, 1));
    expect(date(2024, 2, 30)).toBe(date(2024, 3, 1));
    expect(date(2024, 1.9, 15.9)).toBe(45306);
    expect(date(24, 1, 1)).toBe(8767);
    expect(date(1900, 3, 1)).toBe(61);
  });

  it('counts weekdays from Sunday as 1: Monday 2024-01-01 is 2', () => {
    expect(answer(call('WEEKDAY', num(45292.7)))).toBe(2);
    expect(answer(call('WEEKDAY', num(45292), num(2)))).toBe(1);
    expect(answer(call('WEEKDAY', num(45292), num(3)))).toBe(0);
    expect(answer(call('WEEKDAY', num(0)))).toBe(7);
  });
});

describe('IF, SWITCH, AND, OR', () => {
  const yes = op(num(1), '=', num(1));
  const no = op(num(1), '=', num(2));
  const failing = op(divisionByZero, '=', num(1));

  it('loses a failure in the arm of IF that is not taken, and fails with its condition', () => {
    expect(answer(call('IF', yes, num(1), divisionByZero))).toBe(1);
    expect(answer(call('IF', no, num(1), divisionByZero))).toBe('division at answer');
    expect(answer(call('IF', failing, noRealAnswer, num(2)))).toBe('division at answer');
  });

  it('works out of SWITCH the arm behind the code alone, whatever the others fail with', () => {
    const shape = { lines: { shape: 'circle' } };
    const arms = [code('square'), divisionByZero, code('circle'), num(7), code('known'), noRealAnswer];
    expect(answer(call('SWITCH', line('shape'), ...arms), shape)).toBe(7);
    expect(answer(call('SWITCH', line('shape'), ...arms), { lines: { shape: 'square' } })).toBe('division at answer');
    const failing = call('IF', op(divisionByZero, '=', num(1)), code('square'), code('circle'));
    expect(answer(call('SWITCH', failing, ...arms), shape)).toBe('division at answer');
  });

  it('works out every argument of AND and OR; the first failure wins', () => {
    expect(answer(call('AND', no, failing))).toBe('division at answer');
    expect(answer(call('OR', yes, failing))).toBe('division at answer');
    expect(answer(call('OR', op(noRealAnswer, '=', num(1)), failing))).toBe('undefined at answer');
    expect(answer(call('AND', yes, call('NOT', no)))).toBe(true);
  });
});

describe('codes', () => {
  it.each(['e5', 'inf', 'nan', 'jan_1', 'p1', 'am', 'pm', 'na', 'ref', 'pi', 'r1c1', 'a1', 'constructor'])(
    'keeps the code %s a text, in a cell, in a formula and as a criterion',
    (text) => {
      const parts = { lines: { chosen: text }, tables: { rows: { key: ['other', text, text] } } };
      expect(answer(line('chosen'), parts)).toBe(text);
      expect(answer(op(line('chosen'), '=', code(text)), parts)).toBe(true);
      expect(answer(op(line('chosen'), '=', code('other')), parts)).toBe(false);
      expect(answer(call('COUNTIFS', column('rows', 'key'), code(text)), parts)).toBe(2);
      expect(answer(call('MATCH', line('chosen'), column('rows', 'key'), num(0)), parts)).toBe(2);
    },
  );
});
