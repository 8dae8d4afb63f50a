import { cellName, parseCellName } from '../formula/cell-name.ts';
import type { CellPlace } from '../formula/cells.ts';
import type { OptionPlan } from '../template/plan.ts';

/** The name of an option's cell: `price` for a line, `coats.base.gallons` for a cell of a table. */
export function nameOfCell({ rows }: OptionPlan, place: CellPlace): string {
  if (place.kind === 'line') return place.name;
  return cellName(place.table, rows.get(place.table)?.[place.row]?.id ?? String(place.row + 1), place.column);
}

/** Index of the cell a name means, its row by key or by number from 1; undefined when the option has none such. */
export function cellNamed({ plan, rows }: OptionPlan, name: string): number | undefined {
  const named = parseCellName(name);
  if (named?.kind === 'line') return plan.lines.get(named.line);
  if (named?.kind !== 'cell') return undefined;
  const ids = (rows.get(named.table) ?? []).map(({ id }) => id);
  const at = rowPlace(ids, named.row);
  return at === undefined ? undefined : plan.tables.get(named.table)?.columns.get(named.column)?.[at];
}

/** Place from 0 of a row named by its id or by its number from 1. Example: `rowPlace(['bay', 'shed'], '2')` → 1. */
export function rowPlace(ids: readonly string[], row: string): number | undefined {
  const at = /^\d{1,6}$/.test(row) ? Number(row) - 1 : ids.indexOf(row);
  return at >= 0 && at < ids.length ? at : undefined;
}
