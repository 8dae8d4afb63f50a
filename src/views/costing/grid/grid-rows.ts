import { html, nothing, type TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { repeat } from 'lit/directives/repeat.js';
import type { ShownRow, ShownTable } from '../sheet/shown-table.ts';
import { actionsCell, type CellHandlers, gridCell } from './grid-cell.ts';
import type { GridEditor } from './grid-editor.ts';
import { faultId } from './grid-faults.ts';
import type { PlacedColumn } from './grid-header.ts';
import { type GridPlace, isSamePlace } from './grid-keys.ts';
import { isAllowed, type RowAction } from './row-actions.ts';

/** What the rows of a grid show beside their values, and what they call. */
export interface GridRowsView {
  /** The one cell that Tab stops at. */
  readonly place: GridPlace | undefined;
  readonly editor: GridEditor;
  /** Another after each refusal: what shows the refused entry is drawn anew. */
  readonly refusals: ReadonlyMap<string, string>;
  readonly handlers: (place: GridPlace) => CellHandlers;
  readonly act: (row: ShownRow, at: number, action: RowAction) => void;
}

/**
 * The rows of a grid under `headers` heading rows; a row keeps its elements when it moves, and is described anew only when
 * something of it is another.
 */
export function gridRows(
  table: ShownTable,
  columns: readonly PlacedColumn[],
  headers: number,
  view: GridRowsView,
): unknown {
  const positions = columns.map(({ position }) => position).join();
  const { place, editor, refusals } = view;
  return repeat(
    table.rows,
    (row) => row.id,
    (row, at) => {
      const stop = place?.row === row.id ? place.column : undefined;
      const edit = editor.edit?.place.row === row.id ? editor.edit : undefined;
      const from = [row, at, table.rows.length, table.columns, positions, headers, stop, edit, editor.unread, refusals];
      return guard(
        from,
        () => html`<tr data-row=${row.id} aria-rowindex=${headers + at + 1}>
          ${columns.map((column, index) => cell(row, column, index === 0, view))}
          ${table.free ? actions(table, row, at, view) : nothing}
        </tr>`,
      );
    },
  );
}

function cell(
  row: ShownRow,
  { column, position }: PlacedColumn,
  isRowHeader: boolean,
  { place: current, editor, handlers }: GridRowsView,
): TemplateResult {
  const place = { row: row.id, column: column.name };
  const field = row.fields[position - 1];
  if (field === undefined) return html`<td></td>`;
  const state = {
    field,
    label: `${row.label}, ${field.label}`,
    position,
    isRowHeader,
    isCurrent: isSamePlace(current, place),
    draft: editor.draftAt(place),
    unread: editor.unreadAt(place),
    faultId: faultId(place),
  };
  return gridCell(state, handlers(place));
}

function actions(table: ShownTable, row: ShownRow, at: number, view: GridRowsView): TemplateResult {
  const state = (action: RowAction) => ({
    isCurrent: isSamePlace(view.place, { row: row.id, column: action }),
    isAllowed: isAllowed(action, at, table.rows.length),
  });
  return actionsCell(row.label, table.columns.length + 1, state, (action) => view.act(row, at, action));
}
