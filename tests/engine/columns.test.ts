import { describe, expect, it } from 'vitest';
import type { FunctionName } from '../../src/formula/checked-tree.ts';
import { answer } from './answer.ts';
import { call, code, column, divisionByZero, field, line, noRealAnswer, num, op, rowsAbove } from './plan-builder.ts';

const coats = {
  tables: {
    coats: {
      gallons: [1, 2.5, 4],
      rate: [10, 20, 30],
      kind: ['base', 'top', 'base'],
      broken: [1, divisionByZero, noRealAnswer],
    },
  },
};
const gallons = column('coats', 'gallons');
const rate = column('coats', 'rate');
const kind = column('coats', 'kind');
const broken = column('coats', 'broken');
const none = { tables: { coats: { gallons: [], kind: [] } } };

describe('a whole column', () => {
  it('sums, counts and averages three rows', () => {
    expect(answer(call('SUM', gallons), coats)).toBe(7.5);
    expect(answer(call('SUM', num(1), gallons, num(2)), coats)).toBe(10.5);
    expect(answer(call('MIN', gallons, num(3)), coats)).toBe(1);
    expect(answer(call('MAX', gallons, num(3)), coats)).toBe(4);
    expect(answer(call('COUNT', gallons), coats)).toBe(3);
    expect(answer(call('AVERAGE', gallons), coats)).toBe(2.5);
    expect(answer(call('SUMPRODUCT', gallons, rate), coats)).toBe(180);
  });

  it('sums from the left, where a rest below 1e-13 of the sum so far is 0', () => {
    const rest = { tables: { coats: { gallons: [1, -1 + 5e-14, 1] } } };
    expect(answer(op(call('SUM', gallons), '=', num(1)), rest)).toBe(true);
    expect(answer(call('SUM', gallons, num(-1)), rest)).toBe(0);
  });

  it('selects by a code or a number', () => {
    expect(answer(call('SUMIFS', gallons, kind, code('base')), coats)).toBe(5);
    expect(answer(call('SUMIFS', gallons, kind, code('base'), rate, num(30)), coats)).toBe(4);
    expect(answer(call('SUMIFS', gallons, kind, code('primer')), coats)).toBe(0);
    expect(answer(call('COUNTIFS', kind, code('base')), coats)).toBe(2);
    expect(answer(call('COUNTIFS', rate, num(20), kind, code('top')), coats)).toBe(1);
    expect(answer(call('COUNTIFS', rate, call('DATE', num(1900), num(1), num(9))), coats)).toBe(1);
  });

  it('selects numbers equal within 1e-13, but MATCH finds only the same number', () => {
    expect(answer(call('COUNTIFS', rate, num(20 * (1 + 5e-14))), coats)).toBe(1);
    expect(answer(call('COUNTIFS', rate, num(20 * (1 + 5e-13))), coats)).toBe(0);
    expect(answer(call('MATCH', num(20), rate, num(0)), coats)).toBe(2);
    expect(answer(call('MATCH', num(20 * (1 + 5e-14)), rate, num(0)), coats)).toBe('notFound at answer');
    const thirds = { tables: { coats: { rate: [0.1, op(num(0.1), '+', num(0.2)), 0.3] } } };
    expect(answer(call('MATCH', num(0.3), rate, num(0)), thirds)).toBe(3);
  });

  it('looks a row up by its key', () => {
    expect(answer(call('INDEX', gallons, call('MATCH', code('top'), kind, num(0)), num(1)), coats)).toBe(2.5);
    expect(answer(call('INDEX', kind, num(2)), coats)).toBe('top');
    expect(answer(call('MATCH', code('primer'), kind, num(0)), coats)).toBe('notFound at answer');
  });

  it('takes the whole part of INDEX’s row and fails outside the column', () => {
    expect(answer(call('INDEX', gallons, num(2.9)), coats)).toBe(2.5);
    expect(answer(call('INDEX', gallons, num(2.9999999999999996)), coats)).toBe(4);
    expect(answer(call('INDEX', gallons, num(4)), coats)).toBe('outside at answer');
    expect(answer(call('INDEX', gallons, num(0)), coats)).toBe('outside at answer');
    expect(answer(call('INDEX', gallons, num(-1)), coats)).toBe('outside at answer');
  });
});

describe('an empty column', () => {
  it.each<FunctionName>(['SUM', 'COUNT', 'MIN', 'MAX', 'SUMPRODUCT'])('gives 0 to %s', (name) => {
    expect(answer(call(name, gallons), none)).toBe(0);
  });

  it('gives 0 to SUMIFS and COUNTIFS, also for the criterion 0', () => {
    expect(answer(call('SUMIFS', gallons, kind, code('base')), none)).toBe(0);
    expect(answer(call('COUNTIFS', gallons, num(0)), none)).toBe(0);
  });

  it('is a failure to AVERAGE, MATCH and INDEX', () => {
    expect(answer(call('AVERAGE', gallons), none)).toBe('notFound at answer');
    expect(answer(call('AVERAGE', gallons, num(3)), none)).toBe(3);
    expect(answer(call('MATCH', num(0), gallons, num(0)), none)).toBe('notFound at answer');
    expect(answer(call('INDEX', gallons, num(1)), none)).toBe('notFound at answer');
  });
});

describe('failed cells in a column', () => {
  it('give the first failure to SUM, MIN, MAX, AVERAGE and SUMPRODUCT', () => {
    for (const name of ['SUM', 'MIN', 'MAX', 'AVERAGE', 'SUMPRODUCT'] as const) {
      expect(answer(call(name, broken), coats)).toBe('division at coats.broken[1]');
    }
    expect(answer(call('SUM', noRealAnswer, broken), coats)).toBe('undefined at answer');
  });

  it('are not counted by COUNT', () => {
    expect(answer(call('COUNT', broken), coats)).toBe(1);
    expect(answer(call('COUNT', divisionByZero, num(1)), coats)).toBe(1);
  });

  it('fail SUMIFS where their row is selected, and SUMIFS and COUNTIFS where they decide about it', () => {
    expect(answer(call('SUMIFS', broken, rate, num(10)), coats)).toBe(1);
    expect(answer(call('SUMIFS', broken, kind, code('top')), coats)).toBe('division at coats.broken[1]');
    expect(answer(call('SUMIFS', broken, kind, code('base')), coats)).toBe('undefined at coats.broken[2]');
    expect(answer(call('SUMIFS', gallons, broken, num(1)), coats)).toBe('division at coats.broken[1]');
    expect(answer(call('COUNTIFS', broken, num(1)), coats)).toBe('division at coats.broken[1]');
    expect(answer(call('COUNTIFS', rate, num(10), broken, num(1)), coats)).toBe(1);
    expect(answer(call('COUNTIFS', broken, noRealAnswer), coats)).toBe('undefined at answer');
  });

  it('fail MATCH when they come before what is sought', () => {
    expect(answer(call('MATCH', num(1), broken, num(0)), coats)).toBe(1);
    expect(answer(call('MATCH', num(2), broken, num(0)), coats)).toBe('division at coats.broken[1]');
    expect(answer(call('INDEX', broken, num(3)), coats)).toBe('undefined at coats.broken[2]');
  });

  it('count the same in a table of one row', () => {
    const one = { tables: { coats: { gallons: [2], broken: [divisionByZero] } } };
    expect(answer(call('SUMIFS', broken, gallons, num(3)), one)).toBe(0);
    expect(answer(call('SUMIFS', gallons, broken, num(3)), one)).toBe('division at coats.broken[0]');
    expect(answer(call('COUNT', broken), one)).toBe(0);
    expect(answer(call('INDEX', broken, noRealAnswer), one)).toBe('undefined at answer');
  });
});

describe('the rows above', () => {
  it('add up a running total, and find a predecessor by its key', () => {
    const running = (row: number) => (row === 0 ? 0 : call('SUM', rowsAbove('tasks', 'hours')));
    const found = call(
      'INDEX',
      rowsAbove('tasks', 'hours'),
      call('MATCH', code('grind'), rowsAbove('tasks', 'key'), num(0)),
      num(1),
    );
    const tasks = {
      key: ['grind', 'vacuum', 'coat'],
      hours: [3, 1, 2],
      before: [0, 1, 2].map(running),
      grinding: [0, found, found],
    };
    expect(answer(call('INDEX', column('tasks', 'before'), num(3)), { tables: { tasks } })).toBe(4);
    expect(answer(call('SUM', column('tasks', 'grinding')), { tables: { tasks } })).toBe(6);
  });

  it('are refused in the first row', () => {
    const tasks = { hours: [3], before: [call('SUM', rowsAbove('tasks', 'hours'))] };
    expect(() => answer(num(1), { tables: { tasks } })).toThrow('tasks.before row 1 reads the rows above the first');
  });
});

describe('a product’s field', () => {
  const products = { product: ['clear', 'grey'], solids: [0.5, 1] };

  it('is read from the price list by the product’s code', () => {
    const parts = { lines: { chosen: 'grey' }, tables: { products } };
    expect(answer(field(line('chosen'), 'solids'), parts)).toBe(1);
  });

  it('is not found when the price list has no such product or none at all', () => {
    const parts = { lines: { chosen: 'red' }, tables: { products } };
    expect(answer(field(line('chosen'), 'solids'), parts)).toBe('notFound at answer');
    const empty = { lines: { chosen: 'red' }, tables: { products: { product: [], solids: [] } } };
    expect(answer(field(line('chosen'), 'solids'), empty)).toBe('notFound at answer');
  });
});
