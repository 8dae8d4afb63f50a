import type { RowFile } from './line-schema.ts';

/** What a quote gives the lines and tables of its sheets; everything it does not name stands as the templates have it. */
export interface StackEntries {
  readonly lines: ReadonlyMap<string, GivenValue>;
  readonly tables: ReadonlyMap<string, GivenTable>;
}

export type GivenValue =
  /** An entry's number (a date as its serial day), or the code of a choice or product. */
  | { readonly kind: 'value'; readonly value: number | string }
  /** Words that a person wrote. */
  | { readonly kind: 'written'; readonly value: string }
  /** A departure: a value in place of a formula's. */
  | { readonly kind: 'instead'; readonly value: number };

export interface GivenTable {
  /** Ids of the rows in order; undefined: those of the template. */
  readonly order?: readonly string[];
  /** Rows the template has not, by id. */
  readonly added: ReadonlyMap<string, RowFile>;
  /** Row id → column → value. */
  readonly cells: ReadonlyMap<string, ReadonlyMap<string, GivenValue>>;
}

export const noEntries: StackEntries = { lines: new Map(), tables: new Map() };

/** A product as the price list has it. Shares are fractions; every field stands in the unit the price-list sheet declares. */
export interface ProductRow {
  readonly product: string;
  readonly kind: string;
  readonly name: string;
  readonly fields: Readonly<Record<string, number | string>>;
}
