import type { QuoteDocument } from '../../quote/quote-document.ts';
import type { QuoteDesk } from '../../session/quote-desk.ts';
import type { OfferedSystem } from '../price/price-face.ts';

/** Every system a quote may be made of, and the option that is it already. */
export function offeredSystems({ options }: QuoteDocument, desk: QuoteDesk): OfferedSystem[] {
  return desk.systems.map(({ id, title, hash }) => ({
    id,
    title,
    option: options.find((option) => option.system === hash)?.id,
  }));
}
