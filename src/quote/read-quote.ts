import * as z from 'zod/mini';
import { quoteDocument } from './document-schema.ts';
import type { QuoteDocument } from './quote-document.ts';
import { type ReadValue, readBySchema } from './read-by-schema.ts';

export type ReadQuote =
  | { readonly kind: 'quote'; readonly quote: QuoteDocument }
  | { readonly kind: 'fault'; readonly reason: string };

const frame = z.looseObject({ format: z.literal('spreadrate.quote'), version: z.number() });

/**
 * Reads a quote that comes from storage or a file, as a value: its shape, limits, and that nothing stands in it twice.
 * Whether its sheets are at hand and take its entries is found when they are compiled and laid out.
 */
export function readQuote(value: unknown): ReadQuote {
  const framed: ReadValue<{ version: number }> = readBySchema(frame, value);
  if (framed.kind === 'fault') return { kind: 'fault', reason: `This is not a quote. ${framed.reason}` };
  if (framed.value.version > 1)
    return { kind: 'fault', reason: 'This quote was written by a newer version of this program.' };
  const read: ReadValue<QuoteDocument> = readBySchema(quoteDocument, value);
  if (read.kind === 'fault') return { kind: 'fault', reason: `This quote cannot be read. ${read.reason}` };
  return { kind: 'quote', quote: read.value };
}
