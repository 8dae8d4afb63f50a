import type { CellContent, CellPlace, CellPlan, PlannedCell, PlannedTable } from '../../src/formula/cells.ts';
import type { Checked, FunctionName, ValueType } from '../../src/formula/checked-tree.ts';
import type { BinaryOperator } from '../../src/formula/tree.ts';

// Trees and plans written by hand: what the checker and the compiler would give, without them.
const span = { start: 0, end: 0 };
const type: ValueType = { kind: 'faulty' };

export const num = (value: number): Checked => ({ kind: 'number', value, type, span });
export const code = (value: string): Checked => ({ kind: 'code', value, type, span });
export const line = (name: string) => ({ kind: 'line', name, type, span }) as const;
export const here = (table: string, column: string) =>
  ({ kind: 'cell', table, column, row: 'same', type, span }) as const;
export const oneUp = (table: string, column: string) =>
  ({ kind: 'cell', table, column, row: 'above', type, span }) as const;
export const column = (table: string, name: string): Checked => ({
  kind: 'range',
  table,
  column: name,
  rows: 'all',
  type,
  span,
});
export const rowsAbove = (table: string, name: string): Checked => ({
  kind: 'range',
  table,
  column: name,
  rows: 'above',
  type,
  span,
});
export const field = (product: ReturnType<typeof line> | ReturnType<typeof here>, name: string): Checked => ({
  kind: 'productField',
  product,
  field: name,
  type,
  span,
});
export const minus = (operand: Checked): Checked => ({ kind: 'unary', operator: '-', operand, type, span });
export const op = (left: Checked, operator: BinaryOperator, right: Checked): Checked => ({
  kind: 'binary',
  operator,
  left,
  right,
  type,
  span,
});
export const call = (name: FunctionName, ...args: readonly Checked[]): Checked => ({
  kind: 'call',
  name,
  args,
  type,
  span,
});
export const divisionByZero = op(num(1), '/', num(0));
export const noRealAnswer = call('SQRT', minus(num(1)));

/** A number, a code, or a formula. */
export type Entry = number | string | Checked;

export interface PlanParts {
  readonly lines?: Readonly<Record<string, Entry>>;
  readonly tables?: Readonly<Record<string, Readonly<Record<string, readonly Entry[]>>>>;
}

export function planOf({ lines = {}, tables = {} }: PlanParts): CellPlan {
  const cells: PlannedCell[] = [];
  const add = (place: CellPlace, entry: Entry) => cells.push({ place, type, content: contentOf(entry) }) - 1;
  const plannedLines = Object.entries(lines).map(
    ([name, entry]) => [name, add({ kind: 'line', name }, entry)] as const,
  );
  const plannedTables = Object.entries(tables).map(([table, columns]): readonly [string, PlannedTable] => [
    table,
    {
      rows: Math.max(0, ...Object.values(columns).map((entries) => entries.length)),
      columns: new Map(
        Object.entries(columns).map(([name, entries]) => [
          name,
          entries.map((entry, row) => add({ kind: 'cell', table, column: name, row }, entry)),
        ]),
      ),
    },
  ]);
  return { cells, lines: new Map(plannedLines), tables: new Map(plannedTables), operators: new Map() };
}

export function lineCell(plan: CellPlan, name: string): number {
  return plan.lines.get(name) ?? -1;
}

export function tableCell(plan: CellPlan, table: string, name: string, row: number): number {
  return plan.tables.get(table)?.columns.get(name)?.[row] ?? -1;
}

function contentOf(entry: Entry): CellContent {
  if (typeof entry === 'number') return { kind: 'number', value: entry };
  if (typeof entry === 'string') return { kind: 'code', value: entry };
  return { kind: 'formula', tree: entry };
}
