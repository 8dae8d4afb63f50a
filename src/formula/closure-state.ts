import { fifteenDigits } from '../units/decimal-rounding.ts';
import type { CellPlan, CellValue, Failure } from './cells.ts';
import type { ValueType } from './checked-tree.ts';
import type { FailureKind } from './failure-kind.ts';
import type { OperatorOutput } from './operator.ts';

/**
 * The store that closures read and write. Numbers stand raw; a code is its index in `codes`; truths are 1 and 0; NaN is
 * a failed cell, and `failures` says how it failed.
 */
export interface ClosureState {
  readonly raw: Float64Array;
  readonly failures: (Failure | undefined)[];
  readonly codes: CodeBook;
  /** What the operator of a table gave last: for each result column, a value a row. */
  readonly outputs: Map<string, readonly (readonly OperatorOutput[])[]>;
  /** How the closure that last gave NaN failed. */
  failure: Failure | undefined;
}

/** A formula, or a part of one, ready to run: gives a raw value, or NaN after setting `state.failure`. */
export type Work = () => number;

export function emptyState(plan: CellPlan): ClosureState {
  return {
    raw: new Float64Array(plan.cells.length),
    failures: new Array<Failure | undefined>(plan.cells.length).fill(undefined),
    codes: new CodeBook(),
    outputs: new Map(),
    failure: undefined,
  };
}

/** Numbers codes in order of first appearance, so that a closure compares codes as numbers. */
export class CodeBook {
  private readonly numbers = new Map<string, number>();
  private readonly written: string[] = [];

  numberOf(code: string): number {
    const known = this.numbers.get(code);
    if (known !== undefined) return known;
    this.numbers.set(code, this.written.length);
    this.written.push(code);
    return this.written.length - 1;
  }

  codeOf(number: number): string {
    const code = this.written[number];
    if (code === undefined) throw new Error(`No code bears the number ${number}`);
    return code;
  }
}

/** Fails in the cell `origin`: sets the failure and gives NaN. */
export function fail(state: ClosureState, kind: FailureKind, origin: number): number {
  state.failure = { kind, origin };
  return Number.NaN;
}

/** Reads a cell, passing on how it failed. */
export function readCell(state: ClosureState, cell: number): number {
  const value = state.raw[cell] ?? Number.NaN;
  if (Number.isNaN(value)) state.failure = state.failures[cell];
  return value;
}

/** What a raw value reads as; `failure` is how it failed if it is NaN. A number too large to read fails in `cell`. */
export function cellReading(
  raw: number,
  type: ValueType,
  { codes }: ClosureState,
  cell: number,
  failure: Failure | undefined,
): CellValue {
  if (Number.isNaN(raw)) return failure ?? { kind: 'undefined', origin: cell };
  if (type.kind === 'code') return codes.codeOf(raw);
  if (type.kind === 'truth') return raw === 1;
  return readingOf(raw) ?? { kind: 'undefined', origin: cell };
}

/** The 15-digit reading of a raw number: first as the engine reads cells, then the nearest double of those digits. */
function readingOf(raw: number): number | undefined {
  // A whole number of 15 digits or fewer is its own reading.
  if (Number.isInteger(raw) && Math.abs(raw) < 1e15) return raw + 0;
  const read = fifteenDigits(raw);
  if (Number.isNaN(read)) return 0;
  return Number.isFinite(read) ? Number(read.toPrecision(15)) + 0 : undefined;
}
