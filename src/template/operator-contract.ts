import type { OperatorName, OperatorWork } from '../formula/operator.ts';

/** What an operator asks of the sheets and what it gives; each in the order in which its work takes and gives it. */
export interface OperatorContract {
  readonly name: OperatorName;
  readonly reads: readonly OperatorRead[];
  readonly gives: readonly OperatorResult[];
  readonly work: OperatorWork;
}

/** A column of its own table (without `table`), one of another, or a line. `unit` is `code` for codes. */
export type OperatorRead =
  | { readonly kind: 'column'; readonly table?: string; readonly column: string; readonly unit: string }
  | { readonly kind: 'line'; readonly line: string; readonly unit: string };

export interface OperatorResult {
  readonly column: string;
  readonly unit: string;
}

/** Stands in place of a unit where codes are read. */
export const codes = 'code';

/** Example: `coats.recoat_from in h`. */
export function readText(read: OperatorRead): string {
  const name =
    read.kind === 'line' ? read.line : [read.table, read.column].filter((part) => part !== undefined).join('.');
  return read.unit === codes ? `the codes “${name}”` : `“${name}” in ${read.unit}`;
}
