import { numberIn, type PrintedQuote } from './printed-quote.ts';

/** What is asked for beside the coats, by the trade's own reckoning. Common practice, no source, and guesses that say so. */
export interface ExtraWork {
  /** Labour hours by task; undefined where the extra is not ordered. */
  readonly hours: Readonly<Record<string, number | undefined>>;
  readonly coveFeet: number;
  /** A trip by one person to read moisture tests, which no crew makes. */
  readonly testTrips: number;
  readonly testHoursOnSite: number;
  readonly testHoursPaid: number;
  readonly consumables: number;
  readonly equipment: number;
}

export function extraWork(quote: PrintedQuote, edge: number): ExtraWork {
  const strip = quote.row('extras', 'extra', 'door_strip');
  const strips = numberIn(strip, 'include') * numberIn(strip, 'pieces');
  const coveFeet = quote.entry('cove_wanted') === 1 ? quote.entry('cove_typed') || edge : 0;
  const tested = quote.entry('moisture_test_wanted') === 1;
  const testTrips = tested ? 1 : 0;
  const onSite = testTrips * 0.5;
  const heated = quote.entry('heating_days');
  return {
    hours: {
      move_furniture: ordered(quote.entry('furniture_hours')),
      mask_more: ordered(quote.entry('masking_hours')),
      door_seal: quote.entry('door_seal_off') === 1 ? 0.3 : undefined,
      fit_strips: ordered(strips * 0.25),
      lay_cove: coveFeet > 0 ? coveFeet / 20 : undefined,
      pilot_lights: ordered(quote.entry('pilot_lights') * 0.5),
    },
    coveFeet,
    testTrips,
    testHoursOnSite: onSite,
    testHoursPaid: onSite + testTrips * 2 * quote.entry('drive_time'),
    consumables:
      heated * 40 +
      (tested ? quote.entry('moisture_test_count') * 25 : 0) +
      quote.entry('dump_fee') +
      quote.entry('oil_spots') * 5,
    equipment: heated * 115,
  };
}

/** A quarter of an hour of one person for each oil spot, beside the grinder. */
export function oilHours(quote: PrintedQuote): number {
  return quote.entry('oil_spots') / 4;
}

function ordered(hours: number): number | undefined {
  return hours > 0 ? hours : undefined;
}

/** Cubic inches of fill in a concave cove: a square of its radius less a quarter of its circle, along its length. */
export function coveFill(feet: number, radius: number): number {
  return feet * 12 * (radius * radius - (Math.PI * radius * radius) / 4);
}
