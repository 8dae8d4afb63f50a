import type { NewQuote } from '../../quote/new-quote.ts';
import { readIsoDate } from '../../units/serial-day.ts';

/** Most garages take flake on sight of the board, and solid colour is what they ask it beside. */
const firstSystems = ['flake-full-broadcast', 'solid-colour'];

/** A new quote made at an ISO time: its id and title come from that, and its first options are flake and solid colour. */
export function newQuoteAt(at: string): NewQuote {
  const today = at.slice(0, 10);
  return {
    id: `q${at.replaceAll(/\D/g, '')}`,
    title: `Floor of ${today}, ${at.slice(11, 16)}`,
    shop: 'standard',
    floor: 'garage',
    systems: firstSystems,
    ...madeOnDayOf(at),
  };
}

/** The day of an ISO time as the day a quote is made on. */
export function madeOnDayOf(at: string): Pick<NewQuote, 'madeOn'> {
  const day = readIsoDate(at.slice(0, 10));
  return day.kind === 'day' ? { madeOn: day.day } : {};
}
