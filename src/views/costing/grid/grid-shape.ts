import type { ShownField } from '../../parts/shown-field.ts';
import type { ShownTable } from '../sheet/shown-table.ts';
import { mayGoBack } from '../sheet/standing-words.ts';
import { isEntry } from './grid-edit.ts';
import type { PlacedColumn } from './grid-header.ts';
import type { GridPlace, GridShape } from './grid-keys.ts';
import { rowActions } from './row-actions.ts';

/** The columns that are shown: those of detail when every column is asked for, or where something in them was changed. */
export function shownColumns(table: ShownTable, everyColumn: boolean): readonly PlacedColumn[] {
  return table.columns.flatMap((column, at) => {
    const isFolded = column.detail && !everyColumn && !table.rows.some(({ fields }) => isChanged(fields[at]));
    return isFolded ? [] : [{ column, position: at + 1 }];
  });
}

function isChanged(field: ShownField | undefined): boolean {
  return field !== undefined && mayGoBack(field);
}

/** Every place of a table's grid; the actions of its rows are places too. */
export function gridShape(table: ShownTable | undefined, everyColumn: boolean): GridShape {
  if (table === undefined) return { rows: [], columns: [] };
  const columns = shownColumns(table, everyColumn).map(({ column }) => column.name);
  return { rows: table.rows.map(({ id }) => id), columns: table.free ? [...columns, ...rowActions] : columns };
}

/** The value at a place; undefined at a row's actions. */
export function fieldAt(table: ShownTable | undefined, place: GridPlace | undefined): ShownField | undefined {
  return table?.rows.find(({ id }) => id === place?.row)?.fields.find(({ name }) => name === place?.column);
}

/** Whether something may be entered at a place. */
export function takesEntry(table: ShownTable | undefined, place: GridPlace): boolean {
  const field = fieldAt(table, place);
  return field !== undefined && isEntry(field);
}

/** The place that an element of a grid stands at. */
export function placeOf(target: EventTarget | null): GridPlace | undefined {
  if (!(target instanceof Element)) return undefined;
  const cell = target.closest<HTMLElement>('[data-column]');
  const row = target.closest<HTMLElement>('[data-row]')?.dataset.row;
  const column = cell?.dataset.column;
  return row === undefined || column === undefined ? undefined : { row, column };
}
