import type { CompiledTable } from './compiled-stack.ts';
import type { GivenTable, GivenValue } from './entries.ts';
import type { RowFile } from './line-schema.ts';
import { ownValue } from './own-value.ts';

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

/** The rows of a table that is not gathered, in order. */
export function standingRows(table: CompiledTable, given: GivenTable | undefined): StandingRow[] {
  const standard = new Map(table.rows.map((row) => [row.id, row]));
  const order = given?.order ?? table.rows.map((row) => row.id);
  return order.flatMap((id) => {
    const own = standard.get(id);
    const addedCells = given?.added.get(id);
    const cells = addedCells === undefined ? own?.cells : { ...table.definition.newRow, ...addedCells };
    if (cells === undefined) return [];
    const path = (addedCells === undefined ? own?.path : undefined) ?? `${table.definition.name}.${id}`;
    return [
      {
        id,
        label: labelOf(cells, table, id),
        path,
        cells,
        given: given?.cells.get(id) ?? nothingGiven,
        added: addedCells !== undefined,
      },
    ];
  });
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
