import Papa from 'papaparse';
import { codeRefusal } from '../formula/code-text.ts';
import { type Limits, limitsRefusal } from '../units/limits.ts';
import { didYouMean, nearestWord } from '../units/nearest-word.ts';
import { readTyped } from '../units/typed-number.ts';
import type { Unit } from '../units/unit.ts';

/** A field a price list may give, as its sheet declares it. */
export interface PriceField {
  readonly name: string;
  /** Of a number; a field without one holds one of `codes`. */
  readonly unit?: Unit;
  readonly codes?: readonly string[];
  readonly limits?: Limits;
  /** Kinds of product that have the field; undefined: all. */
  readonly kinds?: readonly string[];
}

export interface PriceRow {
  readonly product: string;
  readonly kind: string;
  /** The product's words. */
  readonly name: string;
  readonly fields: Readonly<Record<string, number | string>>;
}

export interface PriceFault {
  /** Line of the file, the header being 1. */
  readonly line: number;
  readonly column: string;
  readonly reason: string;
}

export interface ReadProducts {
  /** Products by code. A row with a fault is left out. */
  readonly products: ReadonlyMap<string, PriceRow>;
  readonly faults: readonly PriceFault[];
}

const ownColumns = ['product', 'kind', 'name'];
const largest = 5_000_000;
const mostRows = 20_000;

/**
 * Reads a price list from CSV (RFC 4180) whose header names the columns `product` (a code), `kind`, `name` and fields.
 * Numbers stand in the field's own unit and shares as fractions. Every fault is told with its line.
 */
export function readProducts(csv: string, fields: readonly PriceField[], kinds: Iterable<string>): ReadProducts {
  if (csv.length > largest) return refused(1, '', `The price list is larger than ${largest / 1_000_000} MB.`);
  const {
    rows: [header, ...rows],
    errors,
  } = numberedRows(csv.replace(/^\uFEFF/, ''));
  if (header === undefined) return refused(1, '', 'The price list is empty: its first line names the columns.');
  const headerFaults = faultsOfHeader(header.cells, fields);
  if (headerFaults.length > 0) return { products: new Map(), faults: headerFaults };
  if (rows.length > mostRows) return refused(1, '', `A price list has at most ${mostRows} products.`);
  const faults: PriceFault[] = [...errors];
  const reader = new RowReader(
    header.cells.map((name) => name.trim()),
    fields,
    [...kinds],
  );
  const products = new Map<string, PriceRow>();
  for (const { cells, line } of rows) {
    const row = reader.row(cells, line, faults);
    if (row === undefined) continue;
    if (products.has(row.product))
      faults.push({ line, column: 'product', reason: `The product “${row.product}” stands twice.` });
    else products.set(row.product, row);
  }
  return { products, faults };
}

interface NumberedRow {
  readonly cells: readonly string[];
  /** Line of the file on which the row begins: blank lines and line breaks in quoted cells count. */
  readonly line: number;
}

function numberedRows(csv: string): { rows: readonly NumberedRow[]; errors: readonly PriceFault[] } {
  const parsed = Papa.parse<string[]>(csv, { skipEmptyLines: false });
  let line = 1;
  const numbered = parsed.data.map((cells): NumberedRow => {
    const begins = line;
    line += 1 + cells.reduce((breaks, cell) => breaks + cell.split(/\r\n|\n|\r/).length - 1, 0);
    return { cells, line: begins };
  });
  const errors = parsed.errors
    // One column of words has no comma to find.
    .filter((error) => error.code !== 'UndetectableDelimiter')
    .map((error) => ({ line: numbered[error.row ?? 0]?.line ?? 1, column: '', reason: `${error.message}.` }));
  return { rows: numbered.filter(({ cells }) => cells.some((cell) => cell.trim() !== '')), errors };
}

function refused(line: number, column: string, reason: string): ReadProducts {
  return { products: new Map(), faults: [{ line, column, reason }] };
}

function faultsOfHeader(header: readonly string[], fields: readonly PriceField[]): PriceFault[] {
  const known = [...ownColumns, ...fields.map((field) => field.name)];
  const names = header.map((name) => name.trim());
  const faults = ownColumns
    .filter((name) => !names.includes(name))
    .map((name) => ({ line: 1, column: name, reason: `The header lacks the column “${name}”.` }));
  names.forEach((name, at) => {
    const near = nearestWord(name, known);
    if (!known.includes(name))
      faults.push({
        line: 1,
        column: name,
        reason: `There is no field “${name}”.${didYouMean(near)}`,
      });
    else if (names.indexOf(name) !== at)
      faults.push({ line: 1, column: name, reason: `The column “${name}” stands twice.` });
  });
  return faults;
}

class RowReader {
  private readonly header: readonly string[];
  private readonly fields: readonly PriceField[];
  private readonly kinds: readonly string[];

  constructor(header: readonly string[], fields: readonly PriceField[], kinds: readonly string[]) {
    this.header = header;
    this.fields = fields;
    this.kinds = kinds;
  }

  row(cells: readonly string[], line: number, faults: PriceFault[]): PriceRow | undefined {
    const own: PriceFault[] = [];
    const refuse = (column: string, reason: string): void => {
      own.push({ line, column, reason });
    };
    const cell = (name: string): string => (cells[this.header.indexOf(name)] ?? '').trim();
    if (cells.length > this.header.length) refuse('', 'The row has more cells than the header names.');
    const product = cell('product');
    const kind = cell('kind');
    const noCode = codeRefusal(product);
    if (noCode !== undefined) refuse('product', noCode);
    if (!this.kinds.includes(kind)) {
      const near = nearestWord(kind, this.kinds);
      refuse('kind', `There is no kind of product “${kind}”.${didYouMean(near)}`);
    }
    const fields: Record<string, number | string> = {};
    for (const field of this.kinds.includes(kind) ? this.fields : []) {
      const has = field.kinds === undefined || field.kinds.includes(kind);
      const value = has
        ? this.value(cell(field.name), field, refuse)
        : this.absent(cell(field.name), field, kind, refuse);
      if (value !== undefined) fields[field.name] = value;
    }
    faults.push(...own);
    return own.length > 0 ? undefined : { product, kind, name: cell('name') || product, fields };
  }

  private value(
    text: string,
    field: PriceField,
    refuse: (column: string, reason: string) => void,
  ): number | string | undefined {
    if (field.unit === undefined) {
      if (field.codes?.includes(text)) return text;
      refuse(field.name, `One of ${(field.codes ?? []).join(', ')} is wanted here, not “${text}”.`);
      return undefined;
    }
    const read = readTyped(text, field.unit, { shareAs: 'fraction' });
    const refusal = read.kind === 'fault' ? read.reason : numberRefusal(read.value, field, field.unit);
    if (read.kind !== 'fault' && refusal === undefined) return read.value;
    refuse(field.name, refusal ?? '');
    return undefined;
  }

  private absent(
    text: string,
    field: PriceField,
    kind: string,
    refuse: (column: string, reason: string) => void,
  ): undefined {
    if (text !== '') refuse(field.name, `Products of the kind ${kind} have no “${field.name}”; leave it empty.`);
    return undefined;
  }
}

function numberRefusal(value: number, { name, limits }: PriceField, unit: Unit): string | undefined {
  if (limits !== undefined) return limitsRefusal(name, value, limits, unit);
  return value < 0 && unit.point === undefined ? 'A product’s field is not negative.' : undefined;
}
