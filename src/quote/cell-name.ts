import type { CellPlace } from '../formula/cells.ts';
import type { OptionPlan } from '../template/plan.ts';

/** A cell as people write it: `price` for a line, `coats.base.gallons` (table, row, column) for a cell. */
export function cellName({ rows }: OptionPlan, place: CellPlace): string {
  if (place.kind === 'line') return place.name;
  return `${place.table}.${rows.get(place.table)?.[place.row]?.id ?? place.row + 1}.${place.column}`;
}

/** Index of the cell a name means, its row by key or by number from 1; undefined when the option has none such. */
export function cellNamed({ plan, rows }: OptionPlan, name: string): number | undefined {
  const [table = '', row, column, ...more] = name.split('.');
  if (row === undefined) return plan.lines.get(name);
  if (column === undefined || more.length > 0) return undefined;
  const ids = (rows.get(table) ?? []).map(({ id }) => id);
  const at = rowPlace(ids, row);
  return at === undefined ? undefined : plan.tables.get(table)?.columns.get(column)?.[at];
}

/** Place from 0 of a row named by its id or by its number from 1. Example: `rowPlace(['bay', 'shed'], '2')` → 1. */
export function rowPlace(ids: readonly string[], row: string): number | undefined {
  const at = /^\d{1,6}$/.test(row) ? Number(row) - 1 : ids.indexOf(row);
  return at >= 0 && at < ids.length ? at : undefined;
}
