import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openWorkbook } from '../../src/engine/workbook.ts';
import type { Checked } from '../../src/formula/checked-tree.ts';
import { call, code, column, type Entry, here, num, op, planOf, rowsAbove, tableCell } from './plan-builder.ts';

const columnOf = (name: string, above: boolean) => (above ? rowsAbove('rows', name) : column('rows', name));

/** Formulas over the entry columns `value` and `key` and the formula column `over`, which fails where `value` is 0. */
const shapes: readonly ((above: boolean) => Checked)[] = [
  (above) => call('SUM', columnOf('value', above)),
  (above) => call('SUM', columnOf('over', above)),
  (above) => call('MAX', columnOf('value', above), num(1)),
  (above) => call('AVERAGE', columnOf('value', above)),
  (above) => call('COUNT', columnOf('over', above)),
  (above) => call('SUMPRODUCT', columnOf('value', above), columnOf('over', above)),
  (above) => call('SUMIFS', columnOf('value', above), columnOf('key', above), code('a')),
  (above) => call('SUMIFS', columnOf('over', above), columnOf('value', above), num(2)),
  (above) => call('COUNTIFS', columnOf('key', above), code('a')),
  (above) => call('COUNTIFS', columnOf('key', above), code('b'), columnOf('value', above), num(1)),
  (above) => call('INDEX', columnOf('over', above), call('MATCH', code('b'), columnOf('key', above), num(0))),
];

const cellShape = fc.record({ shape: fc.nat(shapes.length - 1), above: fc.boolean() });
const entryRow = fc.record({
  value: fc.nat(2),
  key: fc.constantFrom('a', 'b'),
  cells: fc.tuple(cellShape, cellShape, cellShape, cellShape),
});
const edit = fc.record({ row: fc.nat(5), change: fc.oneof(fc.nat(2), fc.constantFrom('a', 'b')) });
type Row = typeof entryRow extends fc.Arbitrary<infer T> ? T : never;

function planOfRows(rows: readonly Row[], lines: Row['cells']) {
  const formula = (cell: Row['cells'][number], row: number): Entry =>
    shapes[cell.shape]?.(cell.above && row > 0) ?? num(0);
  const formulas = [0, 1, 2, 3].map((i) => rows.map(({ cells }, row) => formula(cells[i] ?? cells[0], row)));
  return planOf({
    lines: Object.fromEntries(lines.map((cell, i) => [`line_${i}`, formula(cell, 0)])),
    tables: {
      rows: {
        value: rows.map(({ value }) => value),
        key: rows.map(({ key }) => key),
        over: rows.map(() => op(num(1), '/', here('rows', 'value'))),
        ...Object.fromEntries(formulas.map((entries, i) => [`formula_${i}`, entries])),
      },
    },
  });
}

describe('a workbook after edits', () => {
  it('holds the values of a workbook built afresh, whatever the order in which ranges were met', () => {
    const quotes = fc.record({
      rows: fc.array(entryRow, { minLength: 1, maxLength: 6 }),
      lines: cellShape.chain(() => fc.tuple(cellShape, cellShape, cellShape, cellShape)),
      edits: fc.array(edit, { minLength: 1, maxLength: 5 }),
    });
    fc.assert(
      fc.property(quotes, ({ rows, lines, edits }) => {
        const current = rows.map((row) => ({ ...row }));
        const plan = planOfRows(current, lines);
        const workbook = openWorkbook(plan);
        for (const { row, change } of edits) {
          const edited = current[row % current.length];
          if (edited === undefined) continue;
          const name = typeof change === 'number' ? 'value' : 'key';
          Object.assign(edited, { [name]: change });
          const before = workbook.values();
          const changed = workbook.setValue(tableCell(plan, 'rows', name, row % current.length), change);
          const afresh = openWorkbook(planOfRows(current, lines));
          expect(workbook.values()).toEqual(afresh.values());
          const differing = workbook
            .values()
            .flatMap((value, cell) =>
              Object.is(value, before[cell]) || JSON.stringify(value) === JSON.stringify(before[cell]) ? [] : [cell],
            );
          expect([...changed].sort((a, b) => a - b)).toEqual(differing);
          afresh.close();
        }
        workbook.close();
      }),
      { numRuns: 100 },
    );
  });
});
