import type { Checked, ValueType } from './checked-tree.ts';
import type { FailureKind } from './failure-kind.ts';
import type { OperatorCells, PlannedOperator } from './operator.ts';

/**
 * The cells of one option of a quote: every line, every table cell and every product field in use, each a value or a
 * checked formula. Both evaluators are built from this one plan.
 */
export interface CellPlan {
  readonly cells: readonly PlannedCell[];
  /** Line name → index into `cells`. */
  readonly lines: ReadonlyMap<string, number>;
  /** Table name → its columns. The price-list rows in use are a table like any other, named `productTable`. */
  readonly tables: ReadonlyMap<string, PlannedTable>;
  /** Table name → the operator that gives some of its columns. */
  readonly operators: ReadonlyMap<string, PlannedOperator>;
}

/** A plan as data alone, which may go to a worker: an evaluator there has the operators' algorithms itself. */
export interface PlainPlan extends Omit<CellPlan, 'operators'> {
  readonly operators: ReadonlyMap<string, OperatorCells>;
}

export interface PlannedTable {
  readonly rows: number;
  /** Column name → cell index of each row. */
  readonly columns: ReadonlyMap<string, readonly number[]>;
}

export type CellPlace =
  | { readonly kind: 'line'; readonly name: string }
  | { readonly kind: 'cell'; readonly table: string; readonly column: string; readonly row: number };

export interface PlannedCell {
  readonly place: CellPlace;
  readonly type: ValueType;
  readonly content: CellContent;
}

/** A number (a date as its serial day), a code, or what is worked out. No cell is ever empty. */
export type CellContent =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'code'; readonly value: string }
  | { readonly kind: 'formula'; readonly tree: Checked }
  /** The operator of a table: it reads its inputs at once. No line, table or view holds this cell; it reads 0. */
  | { readonly kind: 'operator'; readonly table: string }
  /** What the operator of its table gives in its column and row. */
  | { readonly kind: 'result' };

/** The table that holds the price-list rows in use; its key column bears `productKey`. */
export const productTable = 'products';
export const productKey = 'product';

/** Where a failed number began, and how. */
export interface Failure {
  readonly kind: FailureKind;
  /** Index of the cell in which it began. */
  readonly origin: number;
}

/** A worked-out value: the 15-digit reading of a number, a code, a truth, or a failure. */
export type CellValue = number | string | boolean | Failure;

/** Whether two readings of a cell are the same, failures by kind and origin. */
export function sameValue(left: CellValue, right: CellValue | undefined): boolean {
  if (typeof left !== 'object' || typeof right !== 'object') return left === right;
  return left.kind === right.kind && left.origin === right.origin;
}

export function plainPlan(plan: CellPlan): PlainPlan {
  const operators = [...plan.operators].map(([table, { work: _, ...cells }]): [string, OperatorCells] => [
    table,
    cells,
  ]);
  return { ...plan, operators: new Map(operators) };
}
