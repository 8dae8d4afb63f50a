import type { SingleEdit } from './edit.ts';
import type { OptionResults } from './option-results.ts';
import type { SheetPlace } from './quote-document.ts';

/** The edit that adds a row at the end of a table, under a code nobody has yet. */
export function newRowEdit(
  results: OptionResults,
  sheet: SheetPlace,
  table: string,
): Extract<SingleEdit, { kind: 'addRow' }> {
  const rows = results.option.rows.get(table) ?? [];
  const key = results.stack.tables.get(table)?.key;
  const code = freeCode(key ?? table, new Set(rows.map((row) => row.id)));
  return { kind: 'addRow', sheet, table, row: code, at: rows.length, cells: key === undefined ? {} : { [key]: code } };
}

function freeCode(stem: string, taken: ReadonlySet<string>): string {
  let number = taken.size + 1;
  while (taken.has(`${stem}_${number}`)) number += 1;
  return `${stem}_${number}`;
}
