import type { FailureKind } from './failure-kind.ts';

/** What an operator reads in a cell: a number, a code, or an object that stands for a failure and is passed on as it came. */
export type OperatorInput = number | string | object;
/** What it gives for a cell. */
export type OperatorOutput = number | string | object | BegunFailure;

/** A failure that begins in a result of the operator. */
export class BegunFailure {
  readonly kind: FailureKind;
  readonly column: number;
  readonly row: number;

  constructor(kind: FailureKind, column: number, row: number) {
    this.kind = kind;
    this.column = column;
    this.row = row;
  }
}

/**
 * An algorithm that gives columns of a table and that no formula can say. Pure: `inputs` holds, for each name that it reads, the
 * values of a column or the one value of a line; the answer, for each result column, one value a row.
 */
export type OperatorWork = (inputs: readonly (readonly OperatorInput[])[]) => readonly (readonly OperatorOutput[])[];

export type OperatorName = 'schedule';

/** An operator bound to cells, with its algorithm. */
export interface PlannedOperator extends OperatorCells {
  readonly work: OperatorWork;
}

/** An operator bound to cells, as data alone. */
export interface OperatorCells {
  readonly name: OperatorName;
  readonly cell: number;
  /** For each name that it reads, the cells of the column or the one cell of the line. */
  readonly inputs: readonly (readonly number[])[];
  /** Names of the result columns, in the order in which `work` gives them. */
  readonly results: readonly string[];
}
