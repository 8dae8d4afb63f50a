import type { CellValue } from '../formula/cells.ts';
import type { ValueType } from '../formula/checked-tree.ts';
import { valueText } from '../formula/explain.ts';
import { cellOfColumn, cellOfLine, type OptionResults } from '../quote/option-results.ts';
import type { Measures } from '../units/measures.ts';

/** A value and what it is. */
export interface TypedValue {
  readonly value: CellValue;
  readonly type: ValueType;
}

/** One line's value; undefined for a name the option lacks. */
export function lineIn(results: OptionResults, name: string): TypedValue | undefined {
  return typedValue(results, cellOfLine(results, name));
}

export function cellIn(results: OptionResults, table: string, column: string, row: number): TypedValue | undefined {
  return typedValue(results, cellOfColumn(results, table, column, row));
}

/** In words with its unit; empty where there is none. */
export function wordsOf(typed: TypedValue | undefined, measures: Measures = 'us'): string {
  return typed === undefined ? '' : valueText(typed.value, typed.type, measures);
}

function typedValue({ option, read }: OptionResults, cell: number | undefined): TypedValue | undefined {
  const planned = cell === undefined ? undefined : option.plan.cells[cell];
  return cell === undefined || planned === undefined ? undefined : { value: read(cell), type: planned.type };
}
