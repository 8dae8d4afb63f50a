import type { CellPlace } from './cells.ts';

/**
 * A name as people, sheets and quotes write it: `price` for a line (or for a table as a whole), `coats.product` for a
 * column, `coats.base.gallons` for the cell of a row. The only place that joins and takes apart such names.
 */
export type CellName = { readonly kind: 'line'; readonly line: string } | NamedColumn | NamedCell;

export interface NamedColumn {
  readonly kind: 'column';
  readonly table: string;
  readonly column: string;
}

export interface NamedCell {
  readonly kind: 'cell';
  readonly table: string;
  readonly row: string;
  readonly column: string;
}

/** Undefined for what has more parts than a cell. Whether there is such a line or cell is for others to say. */
export function parseCellName(text: string): CellName | undefined {
  const [first = '', second, third, ...more] = text.split('.');
  if (more.length > 0) return undefined;
  if (second === undefined) return { kind: 'line', line: first };
  if (third === undefined) return { kind: 'column', table: first, column: second };
  return { kind: 'cell', table: first, row: second, column: third };
}

export function printCellName(name: CellName): string {
  switch (name.kind) {
    case 'line':
      return name.line;
    case 'column':
      return columnName(name.table, name.column);
    case 'cell':
      return cellName(name.table, name.row, name.column);
    default:
      return name satisfies never;
  }
}

/** Example: `coats.product`. */
export function columnName(table: string, column: string): string {
  return `${table}.${column}`;
}

/** Example: `coats.base.gallons`. */
export function cellName(table: string, row: string, column: string): string {
  return `${table}.${row}.${column}`;
}

/** Where a row stands, in faults and as a key; never read back. Example: `coats.base`. */
export function rowName(table: string, row: string): string {
  return `${table}.${row}`;
}

/** The line or table a name begins with. Example: `coats.base.gallons` → `coats`. */
export function lineOrTableOf(text: string): string {
  return text.split('.', 1)[0] ?? text;
}

/** A cell's place in formula words: `price`, `coats.gallons row 2`. */
export function placeText(place: CellPlace | undefined): string {
  if (place === undefined) return '';
  return place.kind === 'line' ? place.name : `${columnName(place.table, place.column)} row ${place.row + 1}`;
}

const word = '[a-z][a-z0-9_]*';
/** Ids of rows that a quote added may have hyphens. */
const rowWord = '[a-z][a-z0-9_-]*';

/** What a file may write where one of these forms is wanted. */
export const namePatterns = {
  column: new RegExp(`^${word}\\.${word}$`),
  lineOrColumn: new RegExp(`^${word}(\\.${word})?$`),
  lineOrCell: new RegExp(`^${word}(\\.${rowWord}\\.${word})?$`),
} as const;
