import { rowName } from '../formula/cell-name.ts';
import type { CompiledTable } from './compiled-stack.ts';
import type { PlacedRow } from './composed-sheet.ts';
import type { GivenTable, GivenValue } from './entries.ts';
import type { RowFile } from './line-schema.ts';
import { ownValue } from './own-value.ts';
import { withRowCodes } from './row-names.ts';

/** A row as it stands in a quote: the template's cells, or an added row's, under what the quote gives. */
export interface StandingRow {
  readonly id: string;
  readonly label: string;
  /** Path of the template row, or of the added one. */
  readonly path: string;
  readonly cells: RowFile;
  readonly given: ReadonlyMap<string, GivenValue>;
  readonly added: boolean;
}

const nothingGiven: ReadonlyMap<string, GivenValue> = new Map();

/** The rows of a table that is not gathered, in order. What people call a row that they name is its label. */
export function standingRows(table: CompiledTable, given: GivenTable | undefined): StandingRow[] {
  const standard = new Map(table.rows.map((row) => [row.id, row]));
  const order = given?.order ?? table.rows.map((row) => row.id);
  const rows = order.flatMap((id) => standingRow(id, standard.get(id), table, given) ?? []);
  const named = table.key === undefined || table.definition.rows !== 'free' ? rows : withRowCodes(rows, table.key);
  return named.map((row) => ({ ...row, label: labelOf(row.cells, table, row.id) }));
}

function standingRow(
  id: string,
  own: PlacedRow | undefined,
  table: CompiledTable,
  given: GivenTable | undefined,
): StandingRow | undefined {
  const addedCells = given?.added.get(id);
  const cells = addedCells === undefined ? own?.cells : { ...table.definition.newRow, ...addedCells };
  if (cells === undefined) return undefined;
  const path = (addedCells === undefined ? own?.path : undefined) ?? rowName(table.definition.name, id);
  const row = {
    id,
    label: id,
    path,
    cells,
    given: given?.cells.get(id) ?? nothingGiven,
    added: addedCells !== undefined,
  };
  return table.definition.rows === 'free' ? renamed(row, table.key) : row;
}

/** A row under the name that somebody gave it; it keeps its code, which formulas may know. */
function renamed(row: StandingRow, key: string | undefined): StandingRow {
  const name = key === undefined ? undefined : row.given.get(key);
  if (name?.kind !== 'written') return row;
  const given = new Map([...row.given].filter(([column]) => column !== key));
  return { ...row, cells: { ...row.cells, label: name.value }, given };
}

function labelOf(cells: RowFile, table: CompiledTable, id: string): string {
  const key = table.key === undefined ? undefined : ownValue(cells, table.key);
  return rowWords(cells, typeof key === 'string' ? key : id);
}

/** What a row is called: the label it gives itself, or its code in words. */
export function rowWords(cells: RowFile, code: string): string {
  const own = ownValue(cells, 'label');
  return typeof own === 'string' ? own : wordsOfCode(code);
}

/** `first_colour` → `First colour`: how a code reads where nothing better is given. */
export function wordsOfCode(code: string): string {
  const words = code.replaceAll('_', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}
