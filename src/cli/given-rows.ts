import { rowName } from '../formula/cell-name.ts';
import type { ValueType } from '../formula/checked-tree.ts';
import {
  type EntryContext,
  type EntryReading,
  readEntryNumber,
  readEntryText,
  whyNotTyped,
} from '../quote/entry-text.ts';
import { type CompiledColumn, type CompiledTable, caseOf } from '../template/compiled-stack.ts';
import type { PlacedRow } from '../template/composed-sheet.ts';
import type { GivenTable } from '../template/entries.ts';
import type { ColumnFile, LineFile, RowCell, RowFile } from '../template/line-schema.ts';
import { ownValue } from '../template/own-value.ts';
import { rowNameRefusal, withRowCodes } from '../template/row-names.ts';
import { sheetLimits } from '../template/sheet-limits.ts';
import { unitCaseOf } from '../template/table-shape.ts';
import { rowFormulaRefusal } from '../template/value-refusal.ts';
import { nearestWord } from '../units/nearest-word.ts';
import { messages } from './messages.ts';

/** What entries are read against, and whether the products in it are those that were meant. */
export interface CliContext extends EntryContext {
  readonly productsKnown: boolean;
}

/** Reads a typed entry. The code of a product cannot be judged without its price list. */
export function readGivenText(
  text: string,
  definition: LineFile | ColumnFile,
  type: ValueType,
  context: CliContext,
): EntryReading {
  if (definition.kind === 'product' && !context.productsKnown) return { kind: 'value', value: text };
  return readEntryText(text, definition, type, context);
}

export type RowsReading =
  | { readonly kind: 'rows'; readonly rows: readonly PlacedRow[] }
  | { readonly kind: 'refused'; readonly reasons: readonly string[] };

/** Reads rows given in place of a table's own. Only a free table has such; every fault is told with its row. */
export function readGivenRows(table: CompiledTable, value: unknown, context: CliContext): RowsReading {
  const { name, rows } = table.definition;
  if (rows !== 'free')
    return { kind: 'refused', reasons: [rows === 'fixed' ? messages.rowsFixed(name) : messages.rowsGathered(name)] };
  if (!Array.isArray(value)) return { kind: 'refused', reasons: [messages.rowsNoList] };
  if (value.length > sheetLimits.rowsPerTable)
    return { kind: 'refused', reasons: [messages.tooManyRows(sheetLimits.rowsPerTable)] };
  const reader = new RowReader(table, context);
  const read = value.map((row: unknown, at) => reader.row(row, at + 1));
  if (reader.reasons.length > 0) return { kind: 'refused', reasons: reader.reasons };
  return { kind: 'rows', rows: table.key === undefined ? read : identified(read, table.key, name) };
}

/** Each row under its code, which is made from the words by which it is called. */
function identified(rows: readonly PlacedRow[], key: string, table: string): PlacedRow[] {
  return withRowCodes(rows, key).map(({ cells, ...row }) => {
    const code = ownValue(cells, key);
    return typeof code === 'string' ? { id: code, cells, path: rowName(table, code) } : { ...row, cells };
  });
}

/** What rows that are given are called, before anything else in them is looked at. */
export function rowsNamed(value: unknown, key: string): GivenTable {
  const rows = (Array.isArray(value) ? value : []).flatMap((row: unknown, at): [string, RowFile][] => {
    if (!isObject(row) || typeof row[key] !== 'string') return [];
    return [[`row_${at + 1}`, { [key]: row[key], ...(typeof row.label === 'string' && { label: row.label }) }]];
  });
  return { order: rows.map(([id]) => id), added: new Map(rows), cells: new Map() };
}

/** The type of a column in a row of which only some cells are given: units may follow a choice in the row. */
export function typeInRow(table: CompiledTable, column: CompiledColumn, cells: RowFile): ValueType {
  const unitCase = unitCaseOf(table.definition.columns, table.unitColumn, (name) => ownValue(cells, name));
  const one = caseOf(column, unitCase);
  if (one === undefined) throw new Error(`The column ${column.definition.name} has no type`);
  return one.type;
}

class RowReader {
  readonly reasons: string[] = [];
  private readonly table: CompiledTable;
  private readonly context: CliContext;

  constructor(table: CompiledTable, context: CliContext) {
    this.table = table;
    this.context = context;
  }

  row(value: unknown, number: number): PlacedRow {
    const { key, definition } = this.table;
    const cells: Record<string, RowCell> = { ...definition.newRow };
    const missing = { id: `row_${number}`, cells, path: rowName(definition.name, `row_${number}`) };
    if (!isObject(value)) {
      this.reasons.push(messages.rowNoObject(number));
      return missing;
    }
    const given = Object.entries(value);
    // Units may follow a choice that stands later in the row, so texts come first.
    for (const [name, cell] of given) if (typeof cell === 'string') cells[name] = cell;
    for (const [name, cell] of given) {
      const read = this.cell(name, cell, cells);
      if (typeof read === 'object' && 'refused' in read) this.reasons.push(messages.cellAt(number, name, read.refused));
      else cells[name] = read;
    }
    if (key === undefined) return missing;
    const code = cells[key];
    if (code === undefined) this.reasons.push(messages.keyMissing(number, key));
    return missing;
  }

  private cell(name: string, cell: unknown, cells: RowFile): RowCell | { readonly refused: string } {
    if (name === 'label') return typeof cell === 'string' ? cell : { refused: messages.textWanted };
    const column = this.table.columns.get(name);
    if (column === undefined) {
      const near = nearestWord(name, this.table.columns.keys());
      return { refused: messages.noColumn(this.table.definition.name, name, near) };
    }
    const { definition } = column;
    if (definition.kind === 'key') {
      const refusal = typeof cell === 'string' ? rowNameRefusal(cell) : messages.nameWanted;
      return refusal === undefined && typeof cell === 'string' ? cell : { refused: refusal ?? '' };
    }
    if (definition.kind === 'text') return typeof cell === 'string' ? cell : { refused: messages.textWanted };
    if (isFormula(cell)) {
      const refusal = whyNotTyped(definition) ?? rowFormulaRefusal(definition);
      return refusal === undefined ? { formula: cell.formula } : { refused: refusal };
    }
    if (typeof cell === 'number')
      return entered(readEntryNumber(cell, definition, typeInRow(this.table, column, cells)));
    if (typeof cell !== 'string') return { refused: messages.cellForms };
    return entered(readGivenText(cell, definition, typeInRow(this.table, column, cells), this.context));
  }
}

function entered(read: EntryReading): number | string | { readonly refused: string } {
  return read.kind === 'refused' ? { refused: read.reason } : read.value;
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isFormula(cell: unknown): cell is { readonly formula: string } {
  return isObject(cell) && typeof cell.formula === 'string' && Object.keys(cell).length === 1;
}
