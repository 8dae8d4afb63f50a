import type { QuoteDesk } from '../../session/quote-desk.ts';

/** The quotes kept in this browser, to be looked at and not changed. */
export type KeptQuotes = Pick<QuoteDesk, 'list' | 'look'>;
