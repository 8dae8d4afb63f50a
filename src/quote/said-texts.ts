import type { CellValue } from '../formula/cells.ts';
import type { ValueType } from '../formula/checked-tree.ts';
import type { PartEvaluator } from '../formula/evaluate-part.ts';
import { valueText } from '../formula/explain.ts';
import type { SayPiece } from '../template/compiled-stack.ts';
import type { SectionUse } from '../template/sheet-schema.ts';
import { formatQuantity, isMoney } from '../units/format.ts';
import { evaluatorOf, lineValue, type OptionResults } from './option-results.ts';

/** What a sheet says to the customer in a line of its own: a text, its holes filled with today's values, or a value. */
export interface SaidText {
  readonly name: string;
  readonly label: string;
  readonly text: string;
}

/** The lines of an option's sections that are for `use`, in sheet order, without those whose `when` does not hold. */
export function saidTexts(results: OptionResults, use: SectionUse): SaidText[] {
  const evaluate = evaluatorOf(results);
  return results.stack.sheets.flatMap((sheet) =>
    sheet.sections
      .filter((section) => section.for === use)
      .flatMap((section) => section.lines.flatMap(({ line }) => said(line.name, results, evaluate) ?? [])),
  );
}

/** A free-text line with its holes filled, whether or not its `when` holds. */
export function filledLine(results: OptionResults, name: string, evaluate: PartEvaluator): string {
  const say = results.stack.lines.get(name)?.say ?? [];
  return filledText(say, ({ tree }) => spoken(evaluate(tree, { kind: 'line', name }), tree.type));
}

function said(name: string, results: OptionResults, evaluate: PartEvaluator): SaidText | undefined {
  const line = results.stack.lines.get(name);
  if (line === undefined || line.definition.kind === 'check') return undefined;
  const { label } = line.definition;
  if (line.definition.kind !== 'text') return { name, label, text: valueText(lineValue(results, name), line.type) };
  if (line.tree !== undefined && evaluate(line.tree, { kind: 'line', name }) !== true) return undefined;
  return { name, label, text: filledLine(results, name, evaluate) };
}

/** As explanations have it, but whole dollars without their cents: people say $9 a foot. */
function spoken(value: CellValue, type: ValueType): string {
  if (typeof value !== 'number' || type.kind !== 'number' || !isMoney(type.unit) || !Number.isInteger(value)) {
    return valueText(value, type);
  }
  return formatQuantity(value, type.unit, { digits: 0 });
}

/** What is said with each of its holes filled. */
export function filledText(
  say: readonly SayPiece[],
  fill: (piece: Extract<SayPiece, { kind: 'value' }>) => string,
): string {
  return say.map((piece) => (piece.kind === 'words' ? piece.words : fill(piece))).join('');
}
