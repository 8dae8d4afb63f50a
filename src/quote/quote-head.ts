import * as z from 'zod/mini';
import { plainText } from '../template/line-schema.ts';
import { formatQuantity } from '../units/format.ts';
import { isoTime, quoteId } from './document-schema.ts';
import { cellOfLine, type OptionResults } from './option-results.ts';
import { mostOptions, type QuoteDocument } from './quote-document.ts';
import { type ReadValue, readBySchema } from './read-by-schema.ts';
import { isHeldBack } from './told-checks.ts';

/** An option as a list of quotes shows it: the price is text, frozen as it read when the quote was last changed. */
export interface OptionSummary {
  readonly title: string;
  readonly price: string;
  /** True while the price may not be given. Heads from before it was told have none. */
  readonly held?: boolean | undefined;
}

/** The state a quote is in after its last change, with what a list shows of it. */
export interface QuoteHead {
  readonly quote: QuoteDocument;
  readonly options: readonly OptionSummary[];
}

/** A head as it is stored. The quote in it is not yet read. */
export interface StoredHead {
  readonly id: string;
  readonly quote: unknown;
  /** Of the last entry of the log, 0 for an empty one. */
  readonly seq: number;
  readonly updatedAt: string;
  readonly summary: {
    readonly title: string;
    readonly options: readonly OptionSummary[];
    readonly demo: boolean;
  };
}

/** What a price that failed reads as in a list. */
const incompletePrice = 'incomplete';

/**
 * Titles and prices of all options as people read them, and which are held back.
 * Example: `{ title: 'Solid colour', price: '$3,275.00' }`.
 */
export function optionSummaries(
  quote: QuoteDocument,
  resultsOf: (option: string) => OptionResults | undefined,
): readonly OptionSummary[] {
  return quote.options.map(({ id, title }) => {
    const results = resultsOf(id);
    if (results === undefined) return { title, price: incompletePrice };
    return { title, price: priceText(results), ...(isHeldBack(results) && { held: true }) };
  });
}

function priceText(results: OptionResults): string {
  const cell = cellOfLine(results, 'price');
  const value = cell === undefined ? undefined : results.read(cell);
  const type = cell === undefined ? undefined : results.option.plan.cells[cell]?.type;
  return typeof value === 'number' && type?.kind === 'number' ? formatQuantity(value, type.unit) : incompletePrice;
}

const storedOption = z.strictObject({ title: plainText, price: plainText, held: z.optional(z.boolean()) });

const storedHead = z.strictObject({
  id: quoteId,
  quote: z.unknown(),
  seq: z.number().check(z.int(), z.gte(0)),
  updatedAt: isoTime,
  summary: z.strictObject({
    title: plainText,
    options: z.array(storedOption).check(z.maxLength(mostOptions)),
    demo: z.boolean(),
  }),
});

export function readHead(value: unknown): ReadValue<StoredHead> {
  return readBySchema(storedHead, value);
}
