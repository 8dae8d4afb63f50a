import { cellName, rowName } from '../../../formula/cell-name.ts';
import type { CellPlace, CellValue } from '../../../formula/cells.ts';
import { isCode } from '../../../formula/code-text.ts';
import { KeptByCells } from '../../../quote/kept-by-cells.ts';
import { cellOfColumn } from '../../../quote/option-results.ts';
import { FormulaReader } from '../../../template/compile-formula.ts';
import { type CompiledColumn, type CompiledTable, caseOf } from '../../../template/compiled-stack.ts';
import type { ColumnFile, RowCell, RowFile } from '../../../template/line-schema.ts';
import { ownValue } from '../../../template/own-value.ts';
import type { OptionRow } from '../../../template/plan.ts';
import { rowWords } from '../../../template/table-rows.ts';
import { writtenIn } from '../../../template/written-words.ts';
import { type ShownField, shownField } from '../../parts/shown-field.ts';
import { plainStandard, type SheetInView, type ShownInstead } from './sheet-in-view.ts';
import { type ShownColumn, seenColumns, shownColumns, tellingColumns } from './shown-columns.ts';

export interface ShownTable {
  readonly name: string;
  readonly title: string;
  /** What the sheet says of the table; empty when it says nothing. */
  readonly note: string;
  /** Whether rows may be added and taken away. */
  readonly free: boolean;
  readonly columns: readonly ShownColumn[];
  readonly rows: readonly ShownRow[];
  /** The columns whose numbers a closed card shows, at most three. */
  readonly telling: readonly string[];
}

export interface ShownRow {
  readonly id: string;
  readonly label: string;
  readonly fields: readonly ShownField[];
}

/** A row of a table, and what it gives its columns itself. */
interface RowInView {
  readonly row: OptionRow;
  /** Its place, from 0. */
  readonly at: number;
  readonly own: RowFile;
}

const keptTables = new KeptByCells<ShownTable | undefined>();
const keptRows = new KeptByCells<ShownRow>();
const keptFields = new KeptByCells<ShownField>();

export function shownTable(name: string, sheet: SheetInView): ShownTable | undefined {
  const { results, products, measures, entries } = sheet;
  return keptTables.of(results, name, [entries.tables[name], products, measures], () => {
    const table = results.stack.tables.get(name);
    if (table === undefined) return undefined;
    return {
      name,
      title: table.definition.title,
      note: table.definition.note ?? '',
      free: table.definition.rows === 'free',
      columns: shownColumns(table, sheet),
      rows: shownRows(table, sheet),
      telling: tellingColumns(seenColumns(table)),
    };
  });
}

function shownRows(table: CompiledTable, sheet: SheetInView): ShownRow[] {
  const { results, products, measures, entries } = sheet;
  const { name } = table.definition;
  const columns = seenColumns(table);
  const ownOf = ownCells(table, sheet);
  return (results.option.rows.get(name) ?? []).map((row, at) =>
    keptRows.of(results, rowName(name, row.id), [entries.tables[name], products, measures], () => {
      const inView = { row, at, own: ownOf(row.id) };
      return { id: row.id, label: row.label, fields: columns.map((column) => cellField(table, column, inView, sheet)) };
    }),
  );
}

function cellField(table: CompiledTable, column: CompiledColumn, inView: RowInView, sheet: SheetInView): ShownField {
  const { results, products, measures, entries } = sheet;
  const { row, own } = inView;
  const [tableName, columnName] = [table.definition.name, column.definition.name];
  const stored = entries.tables[tableName]?.cells?.[row.id]?.[columnName];
  const ofRow = ownCell(own, column.definition);
  const from = [stored, ofRow, products, measures];
  return keptFields.of(results, cellName(tableName, row.id, columnName), from, () => {
    const { definition } = column;
    const { at } = inView;
    const cell = cellOfColumn(results, tableName, columnName, at);
    const shown = shownField({
      definition,
      type: (cell === undefined ? undefined : results.option.plan.cells[cell]?.type) ?? noType,
      cell,
      stored,
      value: cell === undefined ? undefined : results.read(cell),
      standard: typeof ofRow === 'object' ? undefined : standardCell(definition, ofRow),
      ownFormula: typeof ofRow === 'object',
      worked: stored === undefined ? undefined : workedAt(table, column, inView, sheet),
      productNames: products,
      measures,
    });
    return { ...shown, ...shownInstead(table, column, inView, sheet) };
  });
}

/** Of a cell that the plan does not have. */
const noType = { kind: 'truth' } as const;

/** A row's name in the place of its code, and what a person wrote, which has no cell. */
function shownInstead(
  table: CompiledTable,
  { definition }: CompiledColumn,
  { row, at }: RowInView,
  { results }: SheetInView,
): ShownInstead {
  if (definition.kind === 'key') return nameOf(table, row);
  const words = writtenIn(results.option.written, table.definition.name, definition.name, at);
  return words === undefined ? {} : { shown: words, typed: words };
}

/** What a row is called. People name the rows that they add, so there the name is written. */
function nameOf({ definition }: CompiledTable, { label }: OptionRow): ShownInstead {
  return definition.rows === 'free'
    ? { shown: label, typed: label, chosen: '', kind: 'words' }
    : { shown: label, kind: 'result' };
}

/** What a row is called before anybody renames it. */
function ownName(own: RowFile, key: string): string | undefined {
  const name = ownValue(own, key);
  if (typeof name !== 'string') return undefined;
  return isCode(name) || typeof ownValue(own, 'label') === 'string' ? rowWords(own, name) : name;
}

/** What a row gives a column itself. */
function ownCell(own: RowFile, { kind, name }: ColumnFile): RowCell | undefined {
  return (kind === 'key' ? ownName(own, name) : undefined) ?? ownValue(own, name);
}

/** What each row of a table gives itself, by its id, under what is entered over it. */
function ownCells({ definition, rows }: CompiledTable, { entries }: SheetInView): (row: string) => RowFile {
  const standard = new Map(rows.map(({ id, cells }) => [id, cells]));
  const added = entries.tables[definition.name]?.added ?? {};
  return (row) => {
    const cells = ownValue(added, row);
    return cells === undefined ? (standard.get(row) ?? {}) : { ...definition.newRow, ...cells };
  };
}

/** What the formula of a cell gives that a number was typed over. */
function workedAt(
  table: CompiledTable,
  column: CompiledColumn,
  { row, at, own }: RowInView,
  { results, evaluate }: SheetInView,
): CellValue | undefined {
  const { name } = table.definition;
  const place: CellPlace = { kind: 'cell', table: name, column: column.definition.name, row: at };
  const found = caseOf(column, row.unitCase);
  if (found === undefined) return undefined;
  if (column.definition.kind === 'formula') {
    const tree = at === 0 && found.first !== undefined ? found.first : found.tree;
    return tree && evaluate(tree, place);
  }
  const given = ownValue(own, column.definition.name);
  if (typeof given !== 'object') return undefined;
  const scope = results.stack.scope(table.layer, { table: name, unitCase: row.unitCase, mayReadAbove: false });
  const tree = new FormulaReader(() => undefined).read(given.formula, scope, found.type, row.id);
  return tree && evaluate(tree, place);
}

function standardCell(definition: ColumnFile, own: Exclude<RowCell, object> | undefined): number | string | undefined {
  if (definition.kind === 'words') return own ?? definition.words;
  return plainStandard(own ?? ('default' in definition ? definition.default : undefined));
}
