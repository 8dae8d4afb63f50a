import { along, grindersFor } from './grinding.ts';
import { measured } from './material-needs.ts';
import { numberIn, type PrintedQuote } from './printed-quote.ts';

/** The crew's day on this floor. Times are hours after midnight. */
export interface CrewDay {
  readonly arrives: number;
  /** Usually. */
  readonly leaves: number;
  /** Where that is cheaper than another trip. */
  readonly staysUntil: number;
  readonly usual: number;
  readonly longest: number;
  /** No coat is begun later. */
  readonly coatsUntil: number;
  /** Hours are known to within a share of the day: from so much under its end to so much over it, another day is likelier. */
  readonly unsure: number;
  /** Loading, restocking and driving, each trip. */
  readonly away: number;
  readonly firstSetUp: number;
  readonly laterSetUp: number;
  readonly loadOut: number;
}

export function crewDay(quote: PrintedQuote): CrewDay {
  const share = fixedShare(measured(quote).area);
  const [begins, drive] = [quote.entry('day_begins'), quote.entry('drive_time')];
  const loading = share * quote.entry('shop_time');
  const away = loading + 2 * drive;
  const [length, most] = [quote.entry('day_length'), dayWorth(quote, away)];
  const staysUntil = begins + most - drive;
  return {
    arrives: begins + loading + drive,
    leaves: begins + length - drive,
    staysUntil,
    usual: length - away,
    longest: most - away,
    coatsUntil: Math.min(staysUntil, quote.entry('latest_coat_start') + quote.entry('coat_start_stretch')),
    unsure: Math.min((length - away) / 2, (most - away) * quote.entry('hours_known_within')),
    away,
    firstSetUp: quote.entry('set_up_first') * handsShare(quote, share),
    laterSetUp: share * quote.entry('set_up_first') * quote.entry('set_up_share_later'),
    loadOut: share * quote.entry('load_out'),
  };
}

export function roundTrip(quote: PrintedQuote): number {
  return 2 * quote.entry('miles_one_way') * quote.entry('truck_rate') + quote.entry('tolls_and_parking');
}

/** Shop to shop: staying is worth it until its overtime costs as much as another trip, and never past the longest day. */
function dayWorth(quote: PrintedQuote, away: number): number {
  const crew = quote.entry('usual_crew') + quote.entry('crew_extra');
  const [usual, longest] = [quote.entry('day_length'), quote.entry('longest_day') + quote.entry('day_stretch')];
  const wages = crew * quote.entry('labour_rate');
  const onTheWay = away * (wages + crew * quote.entry('overhead_rate'));
  const halfDay = quote.entry('half_day') * (quote.entry('equipment_day') + grindersFor(quote).dayCost);
  const extra = wages * (quote.entry('overtime_factor') - 1);
  const worth =
    extra > 0
      ? quote.entry('overtime_after_day') + (onTheWay + roundTrip(quote) + halfDay) / extra
      : Number.POSITIVE_INFINITY;
  return Math.max(usual, Math.min(longest, worth));
}

/**
 * Setting up, loading and loading out take two thirds of the usual up to 250 ft2, all of it from 500 ft2, and between them in
 * proportion: the least of each range is 0.5 h of a usual 0.75 h.
 */
function fixedShare(area: number): number {
  return 0.67 + 0.33 * along(area, 250, 500);
}

/** More people than usual mask and set up sooner, to two thirds of the usual. */
function handsShare(quote: PrintedQuote, share: number): number {
  const usual = quote.entry('usual_crew');
  const hands = share * Math.min(1, usual / peopleOn(1, quote));
  return Math.min(share, Math.max(0.67, hands));
}

/** People on a visit. One comes alone to the later visits of a small floor, and on a larger one the others for a part. */
export function peopleOn(visit: number, quote: PrintedQuote): number {
  const crew = quote.entry('usual_crew') + quote.entry('crew_extra');
  const more = numberIn(quote.rows('trips')[visit - 1] ?? {}, 'people_more');
  const small = quote.entry('alone_under');
  const alone =
    visit > 1 && small > 0 ? 1 - along(measured(quote).area, small, small * quote.entry('crew_from_times')) : 0;
  return more + crew - Math.max(0, crew - 1) * alone;
}
