import type { CompiledStack, CompiledTable } from '../template/compiled-stack.ts';
import { type FollowedRows, followRows } from '../template/follow-rows.ts';
import type { RowCell } from '../template/line-schema.ts';
import { ownValue } from '../template/own-value.ts';
import { standingRows } from '../template/table-rows.ts';
import type { StoredTable } from './quote-document.ts';
import { givenTable } from './stack-entries.ts';
import { enterCell, storedTable } from './stored-table.ts';

/** A table before and after an edit, and the row that was moved. */
interface TableChange {
  readonly before: StoredTable | undefined;
  readonly after: StoredTable;
  readonly moved: string | undefined;
}

/** The tables whose rows come and go with those of another that was edited, as they are then; those that stay are left out. */
export function followers(
  stack: CompiledStack,
  table: CompiledTable,
  { before, after, moved }: TableChange,
  stored: Readonly<Record<string, StoredTable>>,
): Map<string, StoredTable> {
  const tables = new Map<string, StoredTable>();
  const rows = (one: CompiledTable, own: StoredTable | undefined) => standingRows(one, own && givenTable(own));
  const change = { before: rows(table, before), after: rows(table, after), moved };
  for (const brings of table.definition.brings) {
    const target = stack.tables.get(brings.table);
    if (target === undefined) continue;
    const own = tables.get(brings.table) ?? stored[brings.table];
    const followed = followRows(table, brings, target, change, rows(target, own));
    const next = withFollowed(target, own, followed);
    if (next !== own && next !== undefined) tables.set(brings.table, next);
  }
  return tables;
}

/** A table with the rows that came, without those that went, and with what is said anew. */
function withFollowed(
  table: CompiledTable,
  own: StoredTable | undefined,
  { order, brought, changed }: FollowedRows,
): StoredTable | undefined {
  const before = own?.order ?? table.rows.map(({ id }) => id);
  const moved = order.length !== before.length || order.some((id, at) => id !== before[at]);
  const placed = moved ? withOrder(own, order, brought) : own;
  return changed.reduce<StoredTable | undefined>((current, cell) => withCell(table, current, cell), placed);
}

function withOrder(
  own: StoredTable | undefined,
  order: readonly string[],
  brought: FollowedRows['brought'],
): StoredTable {
  const kept = <T>(record: Readonly<Record<string, T>> = {}): Readonly<Record<string, T>> =>
    Object.fromEntries(Object.entries(record).filter(([id]) => order.includes(id)));
  const added = { ...kept(own?.added), ...Object.fromEntries(brought) };
  return storedTable({ order, added, ...(own?.cells && { cells: kept(own.cells) }) });
}

/** Says a cell anew where it stands: in an added row, or over what the template has. A template's row takes no formula. */
function withCell(
  table: CompiledTable,
  own: StoredTable | undefined,
  { row, column, value }: { readonly row: string; readonly column: string; readonly value: RowCell },
): StoredTable | undefined {
  const added = own?.added?.[row];
  const given = own?.cells?.[row]?.[column];
  if (added !== undefined && given === undefined)
    return storedTable({ ...own, added: { ...own?.added, [row]: { ...added, [column]: value } } });
  if (typeof value === 'object' || column === 'label') return own;
  const standard = ownValue(added ?? table.rows.find(({ id }) => id === row)?.cells ?? {}, column);
  return enterCell(own, row, column, value === standard ? undefined : value);
}
