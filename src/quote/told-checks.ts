import type { CellValue } from '../formula/cells.ts';
import type { PartEvaluator } from '../formula/evaluate-part.ts';
import { valueText } from '../formula/explain.ts';
import type { Measures } from '../units/measures.ts';
import { type CheckPlace, checkPlaces } from './check-places.ts';
import { evaluatorOf, type OptionResults } from './option-results.ts';
import { outlineChecks } from './outline-checks.ts';
import { filledText } from './said-texts.ts';

/** A check and its verdict. */
export interface ToldCheck extends Omit<CheckPlace, 'place' | 'say' | 'row'> {
  /** `unknown` when what it asks cannot be worked out: that is no pass. */
  readonly verdict: 'holds' | 'fails' | 'unknown';
  /** What it says when it does not hold. */
  readonly says: string;
}

/**
 * Every check of an option with its verdict: lines, columns, then outlines by corners, each in sheet order; numbers in
 * what it says are in `measures`.
 */
export function toldChecks(results: OptionResults, measures: Measures = 'us'): ToldCheck[] {
  return toldOf(results, checkPlaces(results), measures);
}

/** Checks that do not hold, or of which nobody can tell. */
export function openChecks(results: OptionResults, measures: Measures = 'us'): ToldCheck[] {
  const open = checkPlaces(results).filter(({ cell }) => verdictOf(results.read(cell)) !== 'holds');
  return toldOf(results, open, measures).filter(({ verdict }) => verdict !== 'holds');
}

/** Whether any stop is open, so that the price may not be given. */
export function isHeldBack(results: OptionResults): boolean {
  const holds = ({ cell, severity }: CheckPlace): boolean =>
    severity !== 'stop' || verdictOf(results.read(cell)) === 'holds';
  if (!checkPlaces(results).every(holds)) return true;
  return outlineChecks(results).some(({ severity, verdict }) => severity === 'stop' && verdict !== 'holds');
}

function toldOf(results: OptionResults, places: readonly CheckPlace[], measures: Measures): ToldCheck[] {
  let evaluator: PartEvaluator | undefined;
  const speak = ({ say, place, row }: CheckPlace): string => {
    evaluator ??= evaluatorOf(results);
    const evaluate = evaluator;
    const words = filledText(say, measures, ({ tree }) => valueText(evaluate(tree, place), tree.type, measures));
    return row === undefined ? words : `${row}: ${words}`;
  };
  const told = places.map((check): ToldCheck => {
    const { place: _place, say: _say, row, ...shown } = check;
    const verdict = verdictOf(results.read(check.cell));
    const label = row === undefined ? check.label : `${row}: ${check.label}`;
    return { ...shown, verdict, says: saying(verdict, label, () => speak(check)) };
  });
  return [...told, ...outlineChecks(results)];
}

/** What fails in words; what nobody can tell is not said to fail. */
function saying(verdict: ToldCheck['verdict'], label: string, speak: () => string): string {
  if (verdict === 'holds') return '';
  return verdict === 'fails' ? speak() : `${label}: this cannot be told, since a number it asks for is missing.`;
}

function verdictOf(value: CellValue): ToldCheck['verdict'] {
  if (typeof value !== 'boolean') return 'unknown';
  return value ? 'holds' : 'fails';
}
