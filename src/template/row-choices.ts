import { nearestName } from '../formula/nearest-name.ts';
import { didYouMean } from '../units/nearest-word.ts';
import type { ComposedSection, PlacedTable } from './composed-sheet.ts';
import type { ColumnFile } from './line-schema.ts';
import type { SheetFault } from './sheet-fault.ts';
import type { Layer } from './sheet-schema.ts';
import { rowWords } from './table-rows.ts';

type ChoiceColumn = Extract<ColumnFile, { kind: 'choice' }>;
type Option = ChoiceColumn['options'][number];

/** Of the rows of its own table a column may name one above it; this is the one just above. */
const rowAbove = 'above';
/** Of the rows of another table a column may name none. */
export const noRow = 'none';

/**
 * Gives every column that chooses among the rows of a table those rows as its options. A part alone may name a table that
 * another part brings.
 */
export function withRowChoices(
  sections: readonly ComposedSection[],
  layer: Layer,
  broken: readonly string[],
  faults: SheetFault[],
): ComposedSection[] {
  const tables = new Map(sections.flatMap((section) => section.tables.map((placed) => [placed.table.name, placed])));
  const choice = (column: ChoiceColumn & { readonly rowOf: string }, own: PlacedTable, path: string): ColumnFile => {
    const named = tables.get(column.rowOf);
    const first = named === own ? { code: rowAbove, label: 'The row above' } : { code: noRow, label: 'None' };
    const refusal = named === undefined ? missing(column.rowOf, tables, layer, broken) : refusalOf(named);
    if (refusal !== undefined) faults.push({ path: `${path}.rowOf`, reason: refusal });
    return { ...column, options: [first, ...(named === undefined ? [] : optionsOf(named))] };
  };
  return sections.map((section) => ({
    ...section,
    tables: section.tables.map((placed) => {
      if (!placed.table.columns.some(choosesRow)) return placed;
      const columns = placed.table.columns.map((column, at) =>
        choosesRow(column) ? choice(column, placed, `${placed.path}.columns[${at}]`) : column,
      );
      return { ...placed, table: { ...placed.table, columns } };
    }),
  }));
}

function choosesRow(column: ColumnFile): column is ChoiceColumn & { readonly rowOf: string } {
  return column.kind === 'choice' && column.rowOf !== undefined;
}

function optionsOf({ rows }: PlacedTable): Option[] {
  return rows.map(({ id, cells }) => ({ code: id, label: rowWords(cells, id) }));
}

function refusalOf({ table }: PlacedTable): string | undefined {
  if (table.rows !== 'gathered' && table.columns.some((column) => column.kind === 'key')) return undefined;
  return `The rows of “${table.name}” have no codes of their own to choose among.`;
}

function missing(
  name: string,
  tables: ReadonlyMap<string, PlacedTable>,
  layer: Layer,
  broken: readonly string[],
): string | undefined {
  if (layer === 'part' || broken.includes(name)) return undefined;
  return `There is no table “${name}” in this sheet.${didYouMean(nearestName(name, tables.keys()))}`;
}
