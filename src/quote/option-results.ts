import type { CellPlace, CellValue } from '../formula/cells.ts';
import { type PartEvaluator, partEvaluator } from '../formula/evaluate-part.ts';
import type { ExplainedPlan } from '../formula/explain.ts';
import type { CompiledStack } from '../template/compiled-stack.ts';
import type { ColumnFile, LineFile } from '../template/line-schema.ts';
import type { OptionPlan } from '../template/plan.ts';
import type { Layer } from '../template/sheet-schema.ts';
import type { Measures } from '../units/measures.ts';
import type { MovingCells } from './kept-by-cells.ts';
import type { PassedStops } from './quote-document.ts';

/** One option of a quote, worked out: what its sheets are and what every cell reads. */
export interface OptionResults {
  readonly stack: CompiledStack;
  readonly option: OptionPlan;
  /** The value of a cell by its index in the plan. */
  readonly read: (cell: number) => CellValue;
  /** Knows what was made of its cells; left out where nothing of that is kept. */
  readonly moving?: MovingCells;
  /** Stops that were gone past, by the layer of their sheet. */
  readonly passed?: Readonly<Partial<Record<Layer, PassedStops>>>;
}

/** Index of a line's cell, undefined for free text or a name the option lacks. */
export function cellOfLine(results: OptionResults, line: string): number | undefined {
  return results.option.plan.lines.get(line);
}

/** What a person wrote in a line that takes words; empty where nobody has. */
export function writtenLine({ option }: OptionResults, line: string): string {
  return option.written.lines.get(line) ?? '';
}

export function cellOfColumn(results: OptionResults, table: string, column: string, row: number): number | undefined {
  return results.option.plan.tables.get(table)?.columns.get(column)?.[row];
}

/** A line's value. Throws for a name that no sheet of the option has. */
export function lineValue(results: OptionResults, line: string): CellValue {
  const cell = cellOfLine(results, line);
  if (cell === undefined) throw new Error(`The option has no line ${line}`);
  return results.read(cell);
}

/** What stands at a place, as its sheet declares it; undefined for what the price list gives. */
export function definitionAt({ stack }: OptionResults, place: CellPlace): LineFile | ColumnFile | undefined {
  if (place.kind === 'line') return stack.lines.get(place.name)?.definition;
  return stack.tables.get(place.table)?.columns.get(place.column)?.definition;
}

/** What explanations are made over. */
export function explainedPlan(results: OptionResults, measures: Measures = 'us'): ExplainedPlan {
  return { plan: results.option.plan, read: results.read, evaluate: evaluatorOf(results), measures };
}

/** Works out pieces of formulas over an option's values. */
export function evaluatorOf({ option, read }: OptionResults): PartEvaluator {
  return partEvaluator(option.plan, read);
}
