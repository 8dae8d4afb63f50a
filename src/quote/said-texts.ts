import type { CellValue } from '../formula/cells.ts';
import type { ValueType } from '../formula/checked-tree.ts';
import type { PartEvaluator } from '../formula/evaluate-part.ts';
import { valueText } from '../formula/explain.ts';
import { unitOf } from '../formula/value-type.ts';
import type { SayPiece } from '../template/compiled-stack.ts';
import type { SectionUse } from '../template/sheet-schema.ts';
import { formatQuantity, isMoney } from '../units/format.ts';
import { type Measures, shownIn } from '../units/measures.ts';
import { amountsIn, labelIn } from '../units/said-units.ts';
import { evaluatorOf, lineValue, type OptionResults } from './option-results.ts';

/** What a sheet says to the customer in a line of its own: a text, its holes filled with today's values, or a value. */
export interface SaidText {
  readonly name: string;
  readonly label: string;
  readonly text: string;
}

/**
 * The lines of an option's sections that are for `use`, in sheet order, without those whose `when` does not hold; numbers
 * are in `measures`.
 */
export function saidTexts(results: OptionResults, use: SectionUse, measures: Measures = 'us'): SaidText[] {
  const evaluate = evaluatorOf(results);
  return results.stack.sheets.flatMap((sheet) =>
    sheet.sections
      .filter((section) => section.for === use)
      .flatMap((section) => section.lines.flatMap(({ line }) => said(line.name, results, evaluate, measures) ?? [])),
  );
}

/** A free-text line with its holes filled, whether or not its `when` holds. */
export function filledLine(
  results: OptionResults,
  name: string,
  evaluate: PartEvaluator,
  measures: Measures = 'us',
): string {
  const say = results.stack.lines.get(name)?.say ?? [];
  return filledText(say, measures, ({ tree }) => spoken(evaluate(tree, { kind: 'line', name }), tree.type, measures));
}

function said(name: string, results: OptionResults, evaluate: PartEvaluator, measures: Measures): SaidText | undefined {
  const line = results.stack.lines.get(name);
  if (line === undefined || line.definition.kind === 'check') return undefined;
  const label = labelIn(line.definition.label, unitOf(line.type), measures);
  if (line.definition.kind !== 'text')
    return { name, label, text: spoken(lineValue(results, name), line.type, measures) };
  if (line.tree !== undefined && evaluate(line.tree, { kind: 'line', name }) !== true) return undefined;
  return { name, label, text: filledLine(results, name, evaluate, measures) };
}

/** As explanations have it, but whole dollars without their cents: people say $9 a foot. */
function spoken(value: CellValue, type: ValueType, measures: Measures): string {
  if (typeof value !== 'number' || type.kind !== 'number' || !isMoney(type.unit))
    return valueText(value, type, measures);
  const whole = Number.isInteger(shownIn(value, type.unit, measures).value);
  return formatQuantity(value, type.unit, whole ? { digits: 0, measures } : { measures });
}

/** What is said with each of its holes filled; amounts among its words are in `measures` too. */
export function filledText(
  say: readonly SayPiece[],
  measures: Measures,
  fill: (piece: Extract<SayPiece, { kind: 'value' }>) => string,
): string {
  return say.map((piece) => (piece.kind === 'words' ? amountsIn(piece.words, measures) : fill(piece))).join('');
}
