import { priceCommand } from '../../../src/cli/price-command.ts';
import { keptMeans } from '../../cli/kept-means.ts';

type Value = number | string | boolean | null;
export type PrintedRow = Readonly<Record<string, Value>>;

interface PrintedSheet {
  readonly lines: Readonly<Record<string, { readonly value: Value; readonly formula: string | null }>>;
  readonly tables: Readonly<Record<string, readonly PrintedRow[]>>;
}

/** What the command line prints for one system, as JSON. */
export class PrintedQuote {
  private readonly sheets: readonly PrintedSheet[];

  constructor(system: string, words: readonly string[]) {
    const result = priceCommand(['--system', system, '--json', ...words], '2026-03-09', keptMeans);
    if (result.kind === 'faults') throw new Error(result.faults.join('\n'));
    const printed: Readonly<Record<string, PrintedSheet>> = JSON.parse(result.text);
    this.sheets = ['shop', 'floor', system].map((name) => printed[name] ?? missing(name));
  }

  /** A number that was entered. Throws for one that is worked out, so that nothing is taken from the formulas. */
  entry(name: string): number {
    const { value, formula } = this.line(name);
    if (typeof value !== 'number' || formula !== null) throw new Error(`${name} is no entered number`);
    return value;
  }

  choice(name: string): string {
    const { value, formula } = this.line(name);
    if (typeof value !== 'string' || formula !== null) throw new Error(`${name} is no choice`);
    return value;
  }

  /** A number that was worked out, to be compared. */
  result(name: string): number {
    const { value, formula } = this.line(name);
    if (typeof value !== 'number' || formula === null) throw new Error(`${name} is no worked-out number`);
    return value;
  }

  rows(table: string): readonly PrintedRow[] {
    return this.sheets.map((sheet) => sheet.tables[table]).find((rows) => rows !== undefined) ?? missing(table);
  }

  row(table: string, key: string, code: string): PrintedRow {
    return this.rows(table).find((row) => row[key] === code) ?? missing(`${table}.${code}`);
  }

  private line(name: string): PrintedSheet['lines'][string] {
    return this.sheets.map((sheet) => sheet.lines[name]).find((line) => line !== undefined) ?? missing(name);
  }
}

export function numberIn(row: PrintedRow, column: string): number {
  const value = row[column];
  if (typeof value !== 'number') throw new Error(`${column} is ${JSON.stringify(value)}, no number`);
  return value;
}

export function codeIn(row: PrintedRow, column: string): string {
  const value = row[column];
  if (typeof value !== 'string') throw new Error(`${column} is ${JSON.stringify(value)}, no code`);
  return value;
}

function missing(name: string): never {
  throw new Error(`${name} is not printed`);
}
