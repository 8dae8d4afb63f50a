import type { CompiledStack, CompiledTable } from '../template/compiled-stack.ts';
import type { ProductRow } from '../template/entries.ts';
import { sheetLimits } from '../template/sheet-limits.ts';
import type { SingleEdit } from './edit.ts';
import { enteredRefusal } from './entered-refusal.ts';
import { followers } from './followers.ts';
import { layerOf, type StoredTable } from './quote-document.ts';
import { addRow, enterCell, moveRow, removeRow, replaceRows, rowIds } from './stored-table.ts';

export type TableEdit = Extract<SingleEdit, { kind: 'enterCell' | 'addRow' | 'removeRow' | 'moveRow' | 'replaceRows' }>;

export type EditedTables =
  /** By name, the one that was edited first. */
  | { readonly kind: 'tables'; readonly tables: ReadonlyMap<string, StoredTable> }
  | { readonly kind: 'refused'; readonly reason: string };

/** The tables of a sheet that an edit of one makes others, or why it may not be. */
export function editedTables(
  edit: TableEdit,
  stack: CompiledStack | undefined,
  stored: Readonly<Record<string, StoredTable>>,
  products: readonly ProductRow[],
): EditedTables {
  const table = stack?.tables.get(edit.table);
  if (stack === undefined || table?.layer !== layerOf(edit.sheet))
    return refused(`There is no table “${edit.table}” in this sheet.`);
  const before = stored[edit.table];
  const refusal = editRefusal(edit, table, before, products);
  if (refusal !== undefined) return refused(refusal);
  const after = tableAfter(edit, table, before);
  if (typeof after === 'string') return refused(after);
  const moved = edit.kind === 'moveRow' ? edit.row : undefined;
  const others = followers(stack, table, { before, after, moved }, stored);
  for (const { order = [] } of others.values())
    if (order.length > sheetLimits.rowsPerTable)
      return refused(`A table has at most ${sheetLimits.rowsPerTable} rows.`);
  return { kind: 'tables', tables: new Map([[edit.table, after], ...others]) };
}

function editRefusal(
  edit: TableEdit,
  table: CompiledTable,
  before: StoredTable | undefined,
  products: readonly ProductRow[],
): string | undefined {
  const { rows, title } = table.definition;
  if (edit.kind !== 'enterCell') return rows === 'free' ? undefined : `The rows of “${title}” are fixed.`;
  const definition = table.columns.get(edit.column)?.definition;
  if (definition === undefined) return `The table “${edit.table}” has no column “${edit.column}”.`;
  if (definition.kind === 'key' && rows !== 'free') return `The rows of “${title}” have their names from the sheet.`;
  if (rows !== 'gathered' && !rowIds(table, before).includes(edit.row))
    return `The table “${edit.table}” has no row “${edit.row}”.`;
  return enteredRefusal(definition, edit.value, products);
}

function tableAfter(edit: TableEdit, table: CompiledTable, before: StoredTable | undefined): StoredTable | string {
  switch (edit.kind) {
    case 'enterCell':
      return enterCell(before, edit.row, edit.column, edit.value);
    case 'addRow':
      return addRow(table, before, edit.row, edit.at, edit.cells);
    case 'removeRow':
      return removeRow(table, before, edit.row);
    case 'moveRow':
      return moveRow(table, before, edit.row, edit.to);
    case 'replaceRows':
      return replaceRows(table, edit.rows);
    default:
      return edit satisfies never;
  }
}

function refused(reason: string): EditedTables {
  return { kind: 'refused', reason };
}
