import type { CompiledTable } from './compiled-stack.ts';
import type { RowCell, RowFile } from './line-schema.ts';
import { ownValue } from './own-value.ts';
import { noRow } from './row-choices.ts';
import type { Brought } from './sheet-schema.ts';
import { rowWords, type StandingRow } from './table-rows.ts';

/** A row that brings others: its id, what it is called, and what stands above it. */
export interface RowPlace {
  readonly id: string;
  /** Name of the table's key, by which the rows that it brings call its code. */
  readonly key: string;
  readonly code: string;
  readonly label: string;
  /** Code of the row above, `none` for the first. */
  readonly above: string;
}

/** The rows of a table in order, each in its place; one that gives 0 for `aboveIf` is above no other. */
export function placedRows(
  { key = '', columns }: CompiledTable,
  { aboveIf = '' }: Brought,
  rows: readonly StandingRow[],
): RowPlace[] {
  const standard = columns.get(aboveIf)?.definition;
  const none = standard?.kind === 'entry' ? standard.default : undefined;
  let above = noRow;
  return rows.map((row) => {
    const code = String(standing(row, key) ?? row.id);
    const placed = { id: row.id, key, code, label: rowWords(row.cells, code), above };
    if ((standing(row, aboveIf) ?? none) !== 0) above = code;
    return placed;
  });
}

/** What a row holds: what the quote gives, else what the row itself does. */
export function standing({ given, cells }: StandingRow, column: string): RowCell | undefined {
  return given.get(column)?.value ?? ownValue(cells, column);
}

/** Names in braces: holes of the texts and formulas of rows that come with another. */
export const hole = /\{([a-z_][a-z0-9_]*)\}/g;

export function filledCell(cell: RowCell, place: RowPlace): RowCell {
  if (typeof cell === 'number') return cell;
  return typeof cell === 'string' ? filledText(cell, place) : { formula: filledText(cell.formula, place) };
}

export function filledRow(row: RowFile, place: RowPlace): RowFile {
  return Object.fromEntries(Object.entries(row).map(([column, cell]) => [column, filledCell(cell, place)]));
}

/** Ids of the rows that a row brings, whether they stand or not: they follow from its own. */
export function idsBrought({ rows }: Brought, target: CompiledTable, { id, ...place }: RowPlace): string[] {
  return rows.map((row) => filledText(String(ownValue(row, target.key ?? '')), { ...place, id, code: id }));
}

function filledText(text: string, { key, code, above, label }: RowPlace): string {
  return text.replace(hole, (whole, name: string) =>
    name === key ? code : name === 'above' ? above : name === 'label' ? label : whole,
  );
}
