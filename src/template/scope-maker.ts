import type { Scope } from '../formula/scope.ts';
import type { Layer } from './sheet-schema.ts';

/** Where in a table a formula stands. */
export interface RowPlace {
  readonly table: string;
  /** The code that units follow in this row. */
  readonly unitCase: string;
  readonly mayReadAbove: boolean;
}

/** What names mean to a formula of a layer, standing in a line or in a row. */
export type ScopeMaker = (layer: Layer, row?: RowPlace) => Scope;
