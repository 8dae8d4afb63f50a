import type { OptionResults } from '../../src/quote/option-results.ts';

/** The same results, of which nothing is kept: what is made of them is made from nothing. */
export function unkept({ moving: _moving, ...results }: OptionResults): OptionResults {
  return results;
}
