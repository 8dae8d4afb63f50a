import { lineValue, type OptionResults } from '../../../quote/option-results.ts';
import { formatNumber } from '../../../units/format.ts';
import { wholeDollars } from '../../parts/line-words.ts';

/** What two options are worth to the firm with its calendar full and with it empty. */
export type Worth =
  | {
      readonly kind: 'worth';
      readonly rows: readonly WorthRow[];
      /** Which earns more and why: full first, then empty. */
      readonly full: string;
      readonly empty: string;
    }
  | { readonly kind: 'incomplete'; readonly words: string };

export interface WorthRow {
  readonly label: string;
  readonly first: string;
  readonly second: string;
}

export interface NamedOption {
  readonly title: string;
  readonly results: OptionResults;
}

interface Figures {
  readonly title: string;
  readonly price: number;
  readonly contribution: number;
  readonly crewDays: number;
  readonly paidHours: number;
  readonly aDay: number;
}

/**
 * Compares two options as an owner does. With the calendar full a crew-day is what runs short, so the contribution a
 * crew-day counts; with it empty a job is, so the contribution of the job does. All figures are the sheets' own results.
 */
export function worth(first: NamedOption, second: NamedOption): Worth {
  const [one, other] = [figuresOf(first), figuresOf(second)];
  if (one === undefined || other === undefined)
    return { kind: 'incomplete', words: 'What they are worth cannot be told: one of them cannot be worked out.' };
  return {
    kind: 'worth',
    rows: rowsOf(one, other),
    full: fullWords(one, other),
    empty: emptyWords(one, other),
  };
}

function figuresOf({ title, results }: NamedOption): Figures | undefined {
  const read = (name: string): number => Number(lineValue(results, name));
  const figures = {
    price: read('price'),
    contribution: read('contribution'),
    crewDays: read('crew_days'),
    paidHours: read('paid_hours'),
    aDay: read('contribution_per_crew_day'),
  };
  return Object.values(figures).every(Number.isFinite) ? { title, ...figures } : undefined;
}

function rowsOf(one: Figures, other: Figures): WorthRow[] {
  const row = (label: string, text: (figures: Figures) => string): WorthRow => ({
    label,
    first: text(one),
    second: text(other),
  });
  return [
    row('Price', ({ price }) => wholeDollars(price)),
    row('Crew-days', ({ crewDays }) => formatNumber(crewDays)),
    row('Paid hours', ({ paidHours }) => hoursWords(paidHours)),
    row('Calendar full: contribution a crew-day, before overhead', ({ aDay }) => dollars(aDay)),
    row('Calendar empty: contribution of the job, before overhead', ({ contribution }) => dollars(contribution)),
  ];
}

function fullWords(one: Figures, other: Figures): string {
  const [more, less] = one.aDay >= other.aDay ? [one, other] : [other, one];
  const gap = Math.round(more.aDay - less.aDay);
  if (gap === 0) return 'With the calendar full they earn the same a crew-day.';
  const days =
    more.crewDays === less.crewDays
      ? `Both take ${daysWords(more.crewDays)}`
      : `It takes ${daysWords(more.crewDays)} against ${daysWords(less.crewDays)}`;
  const leaves = againstWords('leaves', more.contribution, less.contribution);
  return `With the calendar full, ${more.title} earns ${dollars(gap)} more a crew-day. ${days}, and as a job it ${leaves}.`;
}

function emptyWords(one: Figures, other: Figures): string {
  const [more, less] = one.contribution >= other.contribution ? [one, other] : [other, one];
  const gap = Math.round(more.contribution - less.contribution);
  if (gap === 0) return 'With the calendar empty they earn the same a job.';
  const [own, others] = [hoursWords(more.paidHours), hoursWords(less.paidHours)];
  const paid = own === others ? `pays the same ${own}` : `pays ${own} against ${others}`;
  const price = againstWords('is priced', more.price, less.price);
  return `With the calendar empty, ${more.title} earns ${dollars(gap)} more a job. It ${price}, and ${paid}.`;
}

function againstWords(verb: string, own: number, others: number): string {
  const gap = Math.round(own - others);
  return gap === 0 ? `${verb} the same` : `${verb} ${dollars(Math.abs(gap))} ${gap > 0 ? 'more' : 'less'}`;
}

function daysWords(days: number): string {
  return days === 1 ? 'one crew-day' : `${formatNumber(days)} crew-days`;
}

function hoursWords(hours: number): string {
  return `${formatNumber(Math.round(hours * 10) / 10)} h`;
}

function dollars(amount: number): string {
  return wholeDollars(Math.round(amount)).replace('$−', '−$');
}
