import type { Edit } from '../../quote/edit.ts';
import type { QuoteDocument } from '../../quote/quote-document.ts';
import type { DeskFault, QuoteDesk } from '../../session/quote-desk.ts';
import type { QuoteSession } from '../../session/quote-session.ts';
import type { OfferedSystem } from '../price/price-face.ts';

/** Every system a quote may be made of, and the option that is it already. */
export function offeredSystems({ options }: QuoteDocument, desk: QuoteDesk): OfferedSystem[] {
  return desk.systems.map(({ id, title, hash }) => ({
    id,
    title,
    option: options.find((option) => option.system === hash)?.id,
  }));
}

/** The edit that takes a system's option away, or brings one, once its sheet is here; undefined when another press was quicker. */
export async function switchedSystem(
  session: QuoteSession,
  desk: QuoteDesk,
  id: string,
): Promise<Edit | DeskFault | undefined> {
  const standing = (): string | undefined => offeredSystems(session.quote, desk).find((one) => one.id === id)?.option;
  const before = standing();
  if (before !== undefined) return { kind: 'removeOption', option: before };
  const added = await desk.optionOf(id);
  if ('kind' in added) return added;
  if (standing() !== undefined) return undefined;
  const at = session.quote.options.length;
  const option = { ...added.option, id: `option_${session.seq + at + 1}` };
  return { kind: 'addOption', option, products: added.products, at };
}
