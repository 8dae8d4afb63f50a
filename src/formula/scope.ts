import type { ValueType } from './checked-tree.ts';

/**
 * What the names in a formula mean where it stands. `tooHigh` answers for a name that exists in a sheet lying above the
 * formula's own, which it may not read.
 */
export interface Scope {
  line(name: string): ScopeLine | undefined;
  /** The columns of a table, or undefined when there is no such table to be read from here. */
  table(name: string): ScopeTable | undefined;
  /** The table in whose rows the formula stands. */
  readonly ownTable?: string;
  /** False in a row's own formula and in `first`, where there may be no row above. */
  readonly mayReadAbove: boolean;
  /** The type of a price-list field for products of these kinds. */
  productField(kinds: readonly string[], field: string): ScopeField;
  /** Every name that could be meant, for the nearest match. */
  names(): Iterable<string>;
}

export type ScopeLine =
  | { readonly kind: 'line'; readonly type: ValueType }
  | { readonly kind: 'tooHigh'; readonly stands: string }
  /** A text or a check: it has a name, but no formula reads it. */
  | Unreadable;

export interface ScopeTable {
  column(name: string): ScopeColumn | undefined;
  readonly columnNames: readonly string[];
  readonly tooHigh?: string;
}

export type ScopeColumn =
  | { readonly kind: 'column'; readonly type: ValueType }
  /** Its rows have different units (`unitBy`): only a formula in its own row may read it, in the unit of that row. */
  | { readonly kind: 'mixedUnits'; readonly type: ValueType }
  | Unreadable;

export interface Unreadable {
  readonly kind: 'unreadable';
  readonly what: string;
  /** Of words that a person writes, which texts may tell: what is told while there are none. */
  readonly unsaid?: string;
}

export type ScopeField =
  | { readonly kind: 'field'; readonly type: ValueType }
  | { readonly kind: 'lacking'; readonly kinds: readonly string[] }
  | { readonly kind: 'unknown'; readonly fields: readonly string[] };
