import { describe, expect, it } from 'vitest';
import { openWorkbook } from '../../src/engine/workbook.ts';
import { answer } from './answer.ts';
import {
  call,
  code,
  column,
  divisionByZero,
  type Entry,
  here,
  line,
  lineCell,
  minus,
  noRealAnswer,
  num,
  oneUp,
  op,
  planOf,
  rowsAbove,
  tableCell,
} from './plan-builder.ts';

describe('where a failure began', () => {
  const chain = (first: Entry) => ({
    lines: {
      first,
      second: op(line('first'), '+', num(1)),
      third: call('IF', op(num(1), '=', num(1)), line('second'), num(0)),
    },
    tables: { coats: { gallons: [1, line('third')] } },
  });

  it('is kept through lines, arms, columns and functions', () => {
    const sum = op(call('SUM', column('coats', 'gallons')), '*', num(2));
    expect(answer(sum, chain(divisionByZero))).toBe('division at first');
    expect(answer(sum, chain(call('LN', num(0))))).toBe('undefined at first');
  });

  it.each([
    ['a function’s', noRealAnswer],
    ['a product’s', op(num(1e308), '*', num(10))],
    ['a bare column’s', call('SUM', num(1e308), num(1e308))],
  ])('is the first cell when its outermost step overflows: %s', (_, overflow) => {
    expect(answer(line('third'), chain(overflow))).toBe('undefined at first');
  });

  it('moves when the first failure is mended and a second remains', () => {
    const plan = planOf({
      lines: {
        a: 0,
        b: 0,
        over_a: op(num(1), '/', line('a')),
        over_b: op(num(1), '/', line('b')),
        sum: op(line('over_a'), '+', line('over_b')),
      },
    });
    const workbook = openWorkbook(plan);
    const sum = lineCell(plan, 'sum');
    expect(workbook.value(sum)).toEqual({ kind: 'division', origin: lineCell(plan, 'over_a') });
    expect(workbook.setValue(lineCell(plan, 'a'), 1)).toContain(sum);
    expect(workbook.value(sum)).toEqual({ kind: 'division', origin: lineCell(plan, 'over_b') });
    workbook.close();
  });
});

describe('an edit', () => {
  const plan = planOf({
    lines: {
      width: 10,
      length: 20,
      area: op(line('width'), '*', line('length')),
      whole: call('ROUNDUP', op(line('area'), '/', num(1000)), num(0)),
      finish: 'matte',
      shine: call('IF', op(line('finish'), '=', { ...num(0), kind: 'code', value: 'gloss' }), num(1), num(0)),
      broken: op(num(1), '/', num(0)),
      still_broken: op(line('broken'), '+', line('width')),
    },
  });
  const cell = (name: string) => lineCell(plan, name);

  it('answers only the cells whose value is another', () => {
    const workbook = openWorkbook(plan);
    expect([...workbook.setValue(cell('width'), 12)].sort()).toEqual([cell('width'), cell('area')]);
    expect(workbook.value(cell('area'))).toBe(240);
    expect(workbook.value(cell('whole'))).toBe(1);
    expect(workbook.setValue(cell('width'), 12)).toEqual([]);
    workbook.close();
  });

  it('takes a code', () => {
    const workbook = openWorkbook(plan);
    expect([...workbook.setValue(cell('finish'), 'gloss')].sort()).toEqual([cell('finish'), cell('shine')]);
    expect(workbook.value(cell('finish'))).toBe('gloss');
    expect(() => workbook.setValue(cell('finish'), '=1')).toThrow('"=1" cannot be a code');
    expect(() => workbook.setValue(cell('width'), Number.NaN)).toThrow('a cell cannot hold the number NaN');
    workbook.close();
  });

  it('sets several cells at once', () => {
    const workbook = openWorkbook(plan);
    const changed = workbook.setValues(
      new Map([
        [cell('width'), 30],
        [cell('length'), 50],
      ]),
    );
    expect([...changed].sort()).toEqual([cell('width'), cell('length'), cell('area'), cell('whole')]);
    expect(workbook.values()[cell('area')]).toBe(1500);
    workbook.close();
  });

  it('replaces a formula by a value that stands in its place', () => {
    const workbook = openWorkbook(plan);
    workbook.setValue(cell('area'), 5000);
    expect(workbook.value(cell('whole'))).toBe(5);
    workbook.close();
  });
});

describe('SUMIFS over a whole column beside SUMIFS over the rows above', () => {
  it('follows the edit of a key: 3 selected rows become 2', () => {
    // HyperFormula's own SUMIFS keeps the sum of 3 rows here: its cached sum of the rows above is not yet cleared.
    const selected = (range: typeof column) =>
      call('SUMIFS', range('coats', 'gallons'), range('coats', 'kind'), code('base'));
    const plan = planOf({
      tables: {
        coats: {
          gallons: [1, 1, 1],
          kind: ['base', 'base', 'base'],
          all: [selected(column), num(0), num(0)],
          before: [num(0), num(0), selected(rowsAbove)],
          sum: [num(0), num(0), call('SUM', column('coats', 'gallons'))],
        },
      },
    });
    const workbook = openWorkbook(plan);
    expect(workbook.value(tableCell(plan, 'coats', 'all', 0))).toBe(3);
    workbook.setValue(tableCell(plan, 'coats', 'kind', 1), 'top');
    expect(workbook.value(tableCell(plan, 'coats', 'all', 0))).toBe(2);
    expect(workbook.value(tableCell(plan, 'coats', 'before', 2))).toBe(1);
    workbook.close();
  });
});

describe('a plan only a bug can make', () => {
  it('is refused with the cell’s name', () => {
    expect(() => answer(line('missing'))).toThrow('answer reads missing, which is not in the plan');
    expect(() => answer(op(num(1), '+', line('finish')), { lines: { finish: 'matte' } })).toThrow(
      'answer gave #VALUE!',
    );
    expect(() => answer(op(line('answer'), '+', num(1)))).toThrow('answer gave #CYCLE!');
    expect(() => answer({ ...num(0), kind: 'code', value: 'TRUE' })).toThrow('"TRUE" cannot be a code');
    const uneven = { tables: { coats: { gallons: [1, 2] }, tasks: { hours: [1] } } };
    expect(() => answer(call('SUMPRODUCT', column('coats', 'gallons'), column('tasks', 'hours')), uneven)).toThrow(
      'answer gave #VALUE!',
    );
    expect(() => answer(call('SUMIFS', column('coats', 'gallons'), column('tasks', 'hours'), num(1)), uneven)).toThrow(
      'answer gave #VALUE!',
    );
  });
});

describe('a quote of 400 formulas', () => {
  const rows = 80;
  const formulas = (make: (row: number) => Entry) => Array.from({ length: rows }, (_, row) => make(row));
  const plan = planOf({
    lines: { wage: 25, total: call('SUM', column('tasks', 'cost')) },
    tables: {
      tasks: {
        hours: formulas((row) => row + 1),
        paid: formulas(() => op(here('tasks', 'hours'), '*', num(1.1))),
        cost: formulas(() => op(here('tasks', 'paid'), '*', line('wage'))),
        finish: formulas((row) =>
          row === 0 ? here('tasks', 'hours') : op(oneUp('tasks', 'finish'), '+', here('tasks', 'hours')),
        ),
        days: formulas(() => call('ROUNDUP', op(here('tasks', 'finish'), '/', num(8)), num(0))),
        loss: formulas(() => minus(here('tasks', 'cost'))),
      },
    },
  });

  it('follows an edit of its wage through 161 cells and of its first hour through the whole chain', () => {
    const workbook = openWorkbook(plan);
    const hours = (rows * (rows + 1)) / 2;
    expect(workbook.value(lineCell(plan, 'total'))).toBeCloseTo(hours * 1.1 * 25, 8);
    expect(workbook.setValue(lineCell(plan, 'wage'), 30)).toHaveLength(2 + 2 * rows);
    expect(workbook.value(lineCell(plan, 'total'))).toBeCloseTo(hours * 1.1 * 30, 8);
    const changed = workbook.setValue(tableCell(plan, 'tasks', 'hours', 0), 101);
    expect(changed).toContain(tableCell(plan, 'tasks', 'finish', rows - 1));
    expect(workbook.value(tableCell(plan, 'tasks', 'finish', rows - 1))).toBe(hours + 100);
    workbook.close();
  });
});
