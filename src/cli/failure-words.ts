import type { Failure } from '../formula/cells.ts';
import { failureText } from '../formula/failure-text.ts';
import { nameOfCell } from '../quote/named-cell.ts';
import { explainedPlan, type OptionResults } from '../quote/option-results.ts';

/** Why a number failed, told where the failure began. */
export function failureWords(results: OptionResults, failure: Failure): string {
  return failureText(failure, explainedPlan(results), (place) => nameOfCell(results.option, place));
}
