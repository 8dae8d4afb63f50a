import { describe, expect, it } from 'vitest';
import { mustAgree } from '../bench/agreement.ts';
import { openBenchQuote } from '../bench/bench-quote.ts';
import { mustAgreeInVariants } from '../bench/variants.ts';

describe('the quote written by hand that the bench measures against', () => {
  it('agrees with the engine to 1e-9 in every result line, as the templates stand and down their other paths', async () => {
    const bench = await openBenchQuote(['flake-full-broadcast', 'solid-colour']);
    expect(() => mustAgree(bench, 'at first')).not.toThrow();
    expect(mustAgreeInVariants(bench)).toBeGreaterThan(10);
  });
});
