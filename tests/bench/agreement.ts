import { lineValue } from '../../src/quote/option-results.ts';
import { resultLines } from '../../src/template/result-lines.ts';
import type { BenchQuote } from './bench-quote.ts';
import { handEntriesOf } from './hand-written-entries.ts';
import { priceByHand } from './hand-written-quote.ts';

/** Two ways to one number gave two numbers: whatever was timed is worth nothing. */
export class Disagreement extends Error {}

const tolerance = 1e-9;

/** Every result line of every option against the hand-written quote of the same entries. Throws where they differ. */
export function mustAgree(bench: BenchQuote, when: string): void {
  for (const option of bench.options) {
    const results = bench.results(option);
    const byHand = priceByHand(handEntriesOf(results, option.system));
    for (const line of resultLines) {
      const engine = lineValue(results, line);
      const hand = byHand[line];
      if (typeof engine === 'number' && Math.abs(engine - hand) <= tolerance * Math.max(1, Math.abs(hand))) continue;
      throw new Disagreement(
        `${when}: ${line} of ${option.id} (${option.system}) is ${JSON.stringify(engine)} by the engine and ${hand} by hand`,
      );
    }
  }
}
