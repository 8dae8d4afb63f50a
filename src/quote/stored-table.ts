import type { CompiledTable } from '../template/compiled-stack.ts';
import type { RowFile } from '../template/line-schema.ts';
import { sheetLimits } from '../template/sheet-limits.ts';
import type { StoredTable, StoredValue } from './quote-document.ts';

/** The ids of a table's rows in order: the quote's own order, or the template's. */
export function rowIds(table: CompiledTable, stored: StoredTable | undefined): readonly string[] {
  return stored?.order ?? table.rows.map((row) => row.id);
}

/** A stored table with its properties in the order in which they are read back. */
export function storedTable({ order, added, cells }: StoredTable): StoredTable {
  return { ...(order && { order }), ...(added && { added }), ...(cells && { cells }) };
}

/** Gives a cell a value, or takes it away. */
export function enterCell(
  stored: StoredTable | undefined,
  row: string,
  column: string,
  value: StoredValue | undefined,
): StoredTable {
  const { [column]: _, ...others } = stored?.cells?.[row] ?? {};
  const cells = value === undefined ? others : { ...others, [column]: value };
  const { [row]: __, ...rows } = stored?.cells ?? {};
  return storedTable({ ...stored, cells: Object.keys(cells).length === 0 ? rows : { ...rows, [row]: cells } });
}

/** The table with another row at place `at` from 0, or why it cannot be. */
export function addRow(
  table: CompiledTable,
  stored: StoredTable | undefined,
  row: string,
  at: number,
  cells: RowFile,
): StoredTable | string {
  const order = rowIds(table, stored);
  if (order.includes(row)) return `There is a row “${row}” already.`;
  if (order.length >= sheetLimits.rowsPerTable) return `A table has at most ${sheetLimits.rowsPerTable} rows.`;
  return storedTable({ ...stored, order: order.toSpliced(at, 0, row), added: { ...stored?.added, [row]: cells } });
}

/** The table without a row; what was entered in it goes with it. */
export function removeRow(table: CompiledTable, stored: StoredTable | undefined, row: string): StoredTable | string {
  const order = rowIds(table, stored);
  if (!order.includes(row)) return `The table has no row “${row}”.`;
  const { min, title } = table.definition;
  if (order.length <= min) return `“${title}” keeps at least ${min} row${min === 1 ? '' : 's'}.`;
  const { [row]: _, ...added } = stored?.added ?? {};
  const { [row]: __, ...cells } = stored?.cells ?? {};
  return { order: order.filter((id) => id !== row), added, cells };
}

export function moveRow(
  table: CompiledTable,
  stored: StoredTable | undefined,
  row: string,
  to: number,
): StoredTable | string {
  const order = rowIds(table, stored);
  if (!order.includes(row)) return `The table has no row “${row}”.`;
  return storedTable({ ...stored, order: order.filter((id) => id !== row).toSpliced(to, 0, row) });
}

/** A table of these rows only, or why it cannot be. */
export function replaceRows(
  table: CompiledTable,
  rows: readonly { readonly row: string; readonly cells: RowFile }[],
): StoredTable | string {
  const order = rows.map(({ row }) => row);
  const { min, title } = table.definition;
  if (new Set(order).size < order.length) return 'Two of the rows have one id.';
  if (order.length < min) return `“${title}” keeps at least ${min} row${min === 1 ? '' : 's'}.`;
  if (order.length > sheetLimits.rowsPerTable) return `A table has at most ${sheetLimits.rowsPerTable} rows.`;
  return { order, added: Object.fromEntries(rows.map(({ row, cells }) => [row, cells])) };
}
