import type { OptionResults } from '../../quote/option-results.ts';
import type { QuoteDocument } from '../../quote/quote-document.ts';

/** An option of a quote with its numbers, as a face shows it. */
export interface NamedResults {
  readonly id: string;
  readonly title: string;
  readonly results: OptionResults;
}

/** A quote that is worked out: the open one, or one that is only looked at. */
export interface WorkedOut {
  readonly quote: QuoteDocument;
  readonly results: (option: string) => OptionResults | undefined;
}

/** The options of a quote in its order, those without numbers left out. */
export function namedResults(of: WorkedOut): NamedResults[] {
  return of.quote.options.flatMap(({ id, title }) => {
    const results = of.results(id);
    return results === undefined ? [] : [{ id, title, results }];
  });
}
