import type { NamedColumn } from '../formula/cell-name.ts';
import type { Checked, ValueType } from '../formula/checked-tree.ts';
import type { Limits } from '../units/limits.ts';
import type { Unit } from '../units/unit.ts';
import type { ComposedSheet, PlacedRow } from './composed-sheet.ts';
import type { FormerNames } from './former-names.ts';
import type { ColumnFile, LineFile } from './line-schema.ts';
import type { ScopeMaker } from './scope-maker.ts';
import type { Layer, TableFile } from './sheet-schema.ts';

/** Sheets lying on each other, every formula checked: what a quote's option is priced by. */
export interface CompiledStack {
  readonly sheets: readonly ComposedSheet[];
  readonly lines: ReadonlyMap<string, CompiledLine>;
  readonly tables: ReadonlyMap<string, CompiledTable>;
  readonly products: ProductFields;
  /** Of each sheet, the conditions of the questions that have one, by their ids. */
  readonly askedWhen: ReadonlyMap<Layer, ReadonlyMap<string, Checked>>;
  /** What lines and columns were called before; none where nothing was renamed. */
  readonly former: FormerNames;
  /** What names mean from a layer, for the formulas that rows bring. */
  readonly scope: ScopeMaker;
}

export interface CompiledLine {
  readonly definition: LineFile;
  readonly layer: Layer;
  readonly path: string;
  readonly type: ValueType;
  /** Of a formula, the condition of a check, or the `when` of a text. */
  readonly tree?: Checked;
  readonly say?: readonly SayPiece[];
}

/** A piece of what a check or a text says: plain words, a value worked out when it is told, or what a person wrote. */
export type SayPiece =
  | { readonly kind: 'words'; readonly words: string }
  | { readonly kind: 'value'; readonly tree: Checked }
  /** Of the text's own row, or of a line; `unsaid` is told while nothing is written. */
  | { readonly kind: 'written'; readonly name: string; readonly ofRow: boolean; readonly unsaid: string };

/**
 * `cases` are keyed by the codes of the column that units follow (`unitBy`), or by `''` alone where units are fixed.
 */
export interface CompiledColumn {
  readonly definition: ColumnFile;
  readonly cases: ReadonlyMap<string, ColumnCase>;
  /** Whether rows differ in unit, so that the column cannot be read as a whole. */
  readonly mixedUnits: boolean;
}

export interface ColumnCase {
  readonly type: ValueType;
  readonly tree?: Checked;
  readonly first?: Checked;
  readonly say?: readonly SayPiece[];
}

export interface CompiledTable {
  readonly definition: TableFile;
  readonly layer: Layer;
  readonly path: string;
  readonly key?: string;
  readonly columns: ReadonlyMap<string, CompiledColumn>;
  readonly rows: readonly PlacedRow[];
  /** The choice column that units follow. */
  readonly unitColumn?: string;
  /** Product columns whose products a gathered table has a row for. */
  readonly gather: readonly NamedColumn[];
}

/** What the price-list sheet says of products. */
export interface ProductFields {
  readonly kinds: ReadonlyMap<string, { readonly label: string; readonly soldBy: 'gal' | 'lb' | 'each' }>;
  readonly fields: ReadonlyMap<string, ProductField>;
}

export interface ProductField {
  readonly name: string;
  readonly label: string;
  readonly type: ValueType;
  readonly unit?: Unit;
  /** Kinds that have the field; undefined: all. */
  readonly kinds?: readonly string[];
  readonly codes?: readonly string[];
  /** Of its numbers in a price list. */
  readonly limits?: Limits;
}

/** What a column is in rows of a unit case: that of a column whose unit is fixed is the same in all. */
export function caseOf(column: CompiledColumn, unitCase: string): ColumnCase | undefined {
  return column.cases.get(unitCase) ?? column.cases.values().next().value;
}

/** The one case of a column whose unit does not change from row to row. */
export const onlyCase = '';
