import { cellName } from '../formula/cell-name.ts';
import type { CellPlace } from '../formula/cells.ts';
import type { CompiledStack, SayPiece } from './compiled-stack.ts';
import type { GivenValue, StackEntries } from './entries.ts';
import type { ColumnFile, LineFile, RowCell } from './line-schema.ts';
import { ownValue } from './own-value.ts';
import type { FaultReporter } from './sheet-fault.ts';
import { standingRows } from './table-rows.ts';
import { givenInFile, valueRefusal } from './value-refusal.ts';

type WordsDefinition = Extract<LineFile | ColumnFile, { kind: 'words' }>;

/** What people have written in the lines and columns of an option that take words; `''` where nobody has yet. */
export interface WrittenWords {
  readonly lines: ReadonlyMap<string, string>;
  /** Table → column → the words of its rows, in order. */
  readonly tables: ReadonlyMap<string, ReadonlyMap<string, readonly string[]>>;
}

/** Reads the words of a stack with a quote's entries over it; they have no cells, so no formula can see them. */
export function writtenWords(
  stack: CompiledStack,
  entries: StackEntries,
  rows: ReadonlyMap<string, readonly { readonly id: string }[]>,
  report: FaultReporter,
): WrittenWords {
  const lines = new Map<string, string>();
  for (const [name, { definition, path }] of stack.lines)
    if (definition.kind === 'words')
      lines.set(name, textOf(definition, entries.lines.get(name), definition.words, path, report));
  const tables = new Map<string, ReadonlyMap<string, readonly string[]>>();
  for (const [name, table] of stack.tables) {
    const columns = [...table.columns.values()].flatMap(({ definition }) =>
      definition.kind === 'words' ? [definition] : [],
    );
    if (columns.length === 0) continue;
    const given = entries.tables.get(name);
    const standing = new Map(standingRows(table, given).map((row) => [row.id, row.cells]));
    const inRows = (column: (typeof columns)[number]): string[] =>
      (rows.get(name) ?? []).map(({ id }) => {
        const own = ownValue(standing.get(id) ?? {}, column.name) ?? column.words;
        return textOf(column, given?.cells.get(id)?.get(column.name), own, cellName(name, id, column.name), report);
      });
    tables.set(name, new Map(columns.map((column) => [column.name, inRows(column)])));
  }
  return { lines, tables };
}

/** The words that a hole of a text is filled with; what it says of nothing written where there is nothing. */
export function wordsInHole(
  written: WrittenWords,
  { name, ofRow, unsaid }: Extract<SayPiece, { kind: 'written' }>,
  place: CellPlace,
): string {
  const words =
    ofRow && place.kind === 'cell' ? writtenIn(written, place.table, name, place.row) : written.lines.get(name);
  return words === undefined || words === '' ? unsaid : words;
}

/** What is written in a row of a table; undefined where its column takes no words. */
export function writtenIn(written: WrittenWords, table: string, column: string, row: number): string | undefined {
  return written.tables.get(table)?.get(column)?.[row];
}

function textOf(
  definition: WordsDefinition,
  given: GivenValue | undefined,
  own: RowCell,
  path: string,
  report: FaultReporter,
): string {
  const held = given ?? (typeof own === 'object' ? undefined : givenInFile(definition, own));
  const { name } = definition;
  const refusal =
    held === undefined ? `A row gives no formula for “${name}”.` : valueRefusal(definition, held, { name });
  if (refusal !== undefined) report(path, refusal);
  return held?.kind === 'written' ? held.value : '';
}
