import { cellOfLine, type OptionResults } from '../../quote/option-results.ts';
import { momentWords } from './date-words.ts';
import { shownLine } from './shown-line.ts';

/** What a customer is told of days, in their words. */
export interface DayPromise {
  /** `one day`, `2 visits`. */
  readonly days: string;
  /** `24 hours after the last coat`; a date and an hour once a start is chosen. */
  readonly walk: PromisedTime;
  readonly furniture: PromisedTime;
  readonly drive: PromisedTime;
}

export interface PromisedTime {
  readonly words: string;
  /** Hours, from the last coat or, once a start is chosen, from midnight of the first day; to tell options apart by. */
  readonly hours: number;
}

/** Lines in which a sheet says the same to a customer. */
export const saidInDays: readonly string[] = ['walk_hours', 'furnish_hours', 'drive_hours', 'use_hours', 'use_dates'];

const clockLines = [
  ...['visits', 'calendar_days', 'start_chosen', 'start_date'],
  ...['last_coat_done', 'walk_at', 'furniture_at', 'drive_at'],
];
const noTime = 1e-6;

/** Undefined where the quote's templates tell no times; `incomplete` where they cannot be worked out. */
export function dayPromise(results: OptionResults): DayPromise | 'incomplete' | undefined {
  if (clockLines.some((name) => cellOfLine(results, name) === undefined)) return undefined;
  const read = (name: string): number | undefined => {
    const cell = cellOfLine(results, name);
    const value = cell === undefined ? undefined : results.read(cell);
    return typeof value === 'number' ? value : undefined;
  };
  const values = clockLines.map(read);
  if (!values.every((value) => value !== undefined)) return 'incomplete';
  const [visits = 0, calendarDays = 0, chosen = 0, startDate = 0, lastCoat = 0, walk = 0, furniture = 0, drive = 0] =
    values;
  const time = (at: number): PromisedTime =>
    chosen === 1
      ? { words: momentWords(startDate, at), hours: at }
      : { words: `${hoursWords(at - lastCoat)} after the last coat`, hours: wholeHours(at - lastCoat) };
  const days = daysWords(visits, calendarDays);
  return { days, walk: time(walk), furniture: time(furniture), drive: time(drive) };
}

/**
 * The promise in one sentence; of templates without a clock, what their system states.
 * Example: 'one day · walk on it no sooner than 6 hours after the last coat, drive no sooner than 72 hours'.
 */
export function promiseWords(results: OptionResults): string {
  const promise = dayPromise(results);
  if (promise === undefined) return statedWords(results);
  if (promise === 'incomplete') return 'The days cannot be worked out.';
  const { days, walk, drive } = promise;
  return `${days} · walk on it no sooner than ${walk.words}, drive no sooner than ${drive.words.replace(' after the last coat', '')}`;
}

function statedWords(results: OptionResults): string {
  const visits = shownLine(results, 'visits');
  const walk = shownLine(results, 'walk_hours');
  const drive = shownLine(results, 'drive_hours');
  return `${visits} · walk on it no sooner than ${walk} after the last coat, drive no sooner than ${drive}`;
}

function daysWords(visits: number, days: number): string {
  if (visits > 1) return `${visits} visits`;
  return days > 1 ? `one visit of ${days} days` : 'one day';
}

function wholeHours(hours: number): number {
  return Math.max(0, Math.ceil(hours - noTime));
}

function hoursWords(hours: number): string {
  const whole = wholeHours(hours);
  return whole === 1 ? 'an hour' : `${whole} hours`;
}
