import type { CellPlace, CellPlan, CellValue } from '../formula/cells.ts';
import type { Checked, ValueType } from '../formula/checked-tree.ts';
import { cellIn, lineCell } from '../formula/dependencies.ts';
import type { PartEvaluator } from '../formula/evaluate-part.ts';
import { valueText } from '../formula/explain.ts';
import type { SayPiece } from '../template/compiled-stack.ts';
import { wordsInHole } from '../template/written-words.ts';
import { formatQuantity } from '../units/format.ts';
import { clockHour, clockText } from '../units/hours.ts';
import type { Measures } from '../units/measures.ts';
import { saidQuantity } from '../units/said-quantity.ts';
import { amountsIn } from '../units/said-units.ts';
import { spokenDate } from '../units/serial-day.ts';
import type { OptionResults } from './option-results.ts';

/** A value in a sentence, and what it is worked out from. */
export interface Hole {
  readonly tree: Checked;
  readonly value: CellValue;
}

/** How a text says a value that it says in its own way; undefined for what it says as all do. */
export type OwnWords = (hole: Hole) => string | undefined;

/** Where and with what a sentence is filled. */
export interface Filling {
  readonly place: CellPlace;
  readonly measures: Measures;
  readonly evaluate: PartEvaluator;
  readonly ownWords?: OwnWords;
}

/** What is said with each of its holes filled; amounts among its words are in `measures` too. */
export function filledText(say: readonly SayPiece[], { option }: OptionResults, filling: Filling): string {
  const { place, measures } = filling;
  const inHoles = holeWords(say, option.plan, filling);
  const told = (piece: SayPiece, at: number): string => {
    if (piece.kind === 'value') return inHoles.get(at) ?? '';
    if (piece.kind === 'written') return wordsInHole(option.written, piece, place);
    return amountsIn(isTimeOfDay(say, at - 1) ? piece.words.replace(afterMidnight, '') : piece.words, measures);
  };
  return say.map(told).join('');
}

/** Hours from midnight are a time of day, and the sentence itself says which hours are: 7 and these words are 7 am. */
const afterMidnight = /^ after midnight( of the (day before|first day))?/;

function isTimeOfDay(say: readonly SayPiece[], at: number): boolean {
  const [piece, next] = [say[at], say[at + 1]];
  return (
    piece?.kind === 'value' && isHours(piece.tree.type) && next?.kind === 'words' && afterMidnight.test(next.words)
  );
}

function timeWords(value: CellValue): string | undefined {
  return typeof value === 'number' ? clockText(clockHour(value)) : undefined;
}

/** The words of each hole with a value, by its place in the sentence. */
function holeWords(say: readonly SayPiece[], plan: CellPlan, filling: Filling): ReadonlyMap<number, string> {
  const { place, measures, evaluate, ownWords } = filling;
  const holes = say.flatMap((piece, at) => {
    if (piece.kind !== 'value') return [];
    const hole = { tree: piece.tree, value: evaluate(piece.tree, place) };
    const own = isTimeOfDay(say, at) ? timeWords(hole.value) : ownWords?.(hole);
    const worded = (isRounded: boolean): string => own ?? valueWords(hole.value, hole.tree.type, measures, isRounded);
    return [{ at, value: hole.value, worded, said: worded(isWorkedOut(hole.tree, place, plan)) }];
  });
  // Two numbers that a sentence holds against each other are not rounded until they look the same.
  const looksSame = (at: number, said: string, value: CellValue): boolean =>
    holes.some((other) => other.at !== at && other.said === said && other.value !== value);
  return new Map(holes.map(({ at, worded, said, value }) => [at, looksSame(at, said, value) ? worded(false) : said]));
}

/** A value as sentences say it: a date in words, a number with all its digits or rounded to what people say. */
export function valueWords(value: CellValue, type: ValueType, measures: Measures, isRounded: boolean): string {
  if (typeof value !== 'number' || type.kind !== 'number') return valueText(value, type, measures);
  if (type.unit.text === 'date') return spokenDate(value);
  return isRounded ? saidQuantity(value, type.unit, { measures }) : formatQuantity(value, type.unit, { measures });
}

function isWorkedOut(tree: Checked, place: CellPlace, plan: CellPlan): boolean {
  switch (tree.kind) {
    case 'number':
    case 'productField':
      return false;
    case 'line':
      return isWorkedOutIn(lineCell(tree.name, plan), plan);
    case 'cell':
      return isWorkedOutIn(cellIn(tree, place, plan), plan);
    default:
      return true;
  }
}

/** Whether a formula gives a cell. What stands in one entry, or in the price list, is said as it was typed. */
export function isWorkedOutIn(at: number, plan: CellPlan): boolean {
  const cell = plan.cells[at];
  if (cell?.content.kind === 'result') return true;
  return cell?.content.kind === 'formula' && isWorkedOut(cell.content.tree, cell.place, plan);
}

/** Whether it is a number of hours. */
export function isHours(type: ValueType): boolean {
  return type.kind === 'number' && type.unit.text === 'h';
}
