import type { NewQuote } from '../../quote/new-quote.ts';
import { readIsoDate } from '../../units/serial-day.ts';

const optionsAtFirst = 2;

/** A new quote made at an ISO time: its id and title come from that, and its first options are the first systems. */
export function newQuoteAt(at: string, systems: readonly { readonly id: string }[]): NewQuote {
  const today = at.slice(0, 10);
  const day = readIsoDate(today);
  return {
    id: `q${at.replaceAll(/\D/g, '')}`,
    title: `Floor of ${today}`,
    shop: 'standard',
    floor: 'garage',
    systems: systems.slice(0, optionsAtFirst).map((system) => system.id),
    ...(day.kind === 'day' && { madeOn: day.day }),
  };
}
