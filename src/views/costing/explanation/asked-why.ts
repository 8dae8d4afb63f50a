import type { CellPlace } from '../../../formula/cells.ts';
import { cellOfColumn, cellOfLine, type OptionResults } from '../../../quote/option-results.ts';

/** A value that somebody asked why of. Its cell has another number once rows come, go or move; its place stays. */
export interface AskedWhy {
  readonly option: string;
  readonly place: CellPlace;
  /** The id of the row of a table's cell; empty for a line. */
  readonly row: string;
}

export function askedAt(option: string, results: OptionResults, cell: number): AskedWhy | undefined {
  const place = results.option.plan.cells[cell]?.place;
  if (place === undefined) return undefined;
  const row = place.kind === 'cell' ? results.option.rows.get(place.table)?.[place.row]?.id : '';
  return row === undefined ? undefined : { option, place, row };
}

/** Where it stands now; undefined when it is gone with its row. */
export function askedCell({ place, row }: AskedWhy, results: OptionResults): number | undefined {
  if (place.kind === 'line') return cellOfLine(results, place.name);
  const at = results.option.rows.get(place.table)?.findIndex(({ id }) => id === row) ?? -1;
  return cellOfColumn(results, place.table, place.column, at);
}
