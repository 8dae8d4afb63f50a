import type { OptionResults } from '../quote/option-results.ts';
import { isHeldBack } from '../quote/told-checks.ts';
import { lineIn } from './option-cells.ts';

/** Whether an option has a price and a total, and no check stops it or cannot be told. */
export function isForSale(results: OptionResults): boolean {
  const complete = ['price', 'total'].every((name) => typeof lineIn(results, name)?.value === 'number');
  return complete && !isHeldBack(results);
}
