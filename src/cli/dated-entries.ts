import { daysToStart } from '../quote/new-quote.ts';
import { readIsoDate, writeIsoDate } from '../units/serial-day.ts';
import type { Given } from './given-entries.ts';

/**
 * What is given, dated as a quote made on `today` (an ISO date) is: the date of the quote and of the start, unless they
 * are given themselves. Example: '2026-03-09' gives `start_date` 2026-03-23.
 */
export function datedEntries(given: Given, today: string): Given {
  const quoteDate = given.sets.get('quote_date') ?? today;
  const day = readIsoDate(quoteDate);
  const dates = day.kind === 'day' ? [['start_date', writeIsoDate(day.day + daysToStart)] as const] : [];
  return { ...given, sets: new Map([['quote_date', quoteDate], ...dates, ...given.sets]) };
}
