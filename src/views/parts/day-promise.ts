import { KeptByCells } from '../../quote/kept-by-cells.ts';
import { cellOfLine, lineValue, type OptionResults } from '../../quote/option-results.ts';
import { hours, toldWait, waitText } from '../../units/hours.ts';
import { momentWords } from './date-words.ts';
import { shownLine } from './line-words.ts';

/** What a customer is told of days, in their words. */
export interface DayPromise {
  /** `one day on site`, `4 days on site over 6 days`. */
  readonly days: string;
  /** `24 hours after the last coat`, `3½ days after the last coat`; a date and an hour once a start is chosen. */
  readonly walk: PromisedTime;
  readonly furniture: PromisedTime;
  /** Undefined where no cars park. */
  readonly drive: PromisedTime | undefined;
}

export interface PromisedTime {
  readonly words: string;
  /** Hours, from the last coat or, once a start is chosen, from midnight of the first day; to tell options apart by. */
  readonly hours: number;
}

/** Lines in which a sheet says the same to a customer. */
export const saidInDays: readonly string[] = [
  ...['work_days', 'walk_hours', 'furnish_hours', 'drive_hours'],
  ...['use_hours', 'use_dates', 'use_hours_no_cars', 'use_dates_no_cars'],
];

const clockLines = [
  ...['work_days', 'calendar_days', 'start_chosen', 'start_date'],
  ...['last_coat_done', 'walk_at', 'furniture_at', 'drive_at'],
];

const keptPromises = new KeptByCells<DayPromise | 'incomplete' | undefined>();
const keptWords = new KeptByCells<string>();

/** Undefined where the quote's templates tell no times; `incomplete` where they cannot be worked out. */
export function dayPromise(results: OptionResults): DayPromise | 'incomplete' | undefined {
  return keptPromises.of(results, 'promise', [], () => promiseOf(results));
}

function promiseOf(results: OptionResults): DayPromise | 'incomplete' | undefined {
  if (clockLines.some((name) => cellOfLine(results, name) === undefined)) return undefined;
  const read = (name: string): number | undefined => {
    const cell = cellOfLine(results, name);
    const value = cell === undefined ? undefined : results.read(cell);
    return typeof value === 'number' ? value : undefined;
  };
  const values = clockLines.map(read);
  if (!values.every((value) => value !== undefined)) return 'incomplete';
  const [workDays = 0, calendarDays = 0, chosen = 0, startDate = 0, lastCoat = 0, walk = 0, furniture = 0, drive = 0] =
    values;
  const time = (at: number): PromisedTime =>
    chosen === 1
      ? { words: momentWords(startDate, at), hours: at }
      : { words: `${waitText(hours(at - lastCoat))} after the last coat`, hours: toldWait(hours(at - lastCoat)) };
  const days = daysWords(workDays, calendarDays);
  return { days, walk: time(walk), furniture: time(furniture), drive: carsPark(results) ? time(drive) : undefined };
}

/** Unless the floor says that none do. */
function carsPark(results: OptionResults): boolean {
  const cell = cellOfLine(results, 'cars_park');
  return cell === undefined || results.read(cell) !== 0;
}

/**
 * The promise in one sentence, of furniture where no cars park; of templates without a clock, what their system states.
 * Example: 'one day on site · walk on it no sooner than 6 hours after the last coat, drive no sooner than 3 days'.
 */
export function promiseWords(results: OptionResults): string {
  return keptWords.of(results, 'words', [], () => wordsOf(results));
}

function wordsOf(results: OptionResults): string {
  const promise = dayPromise(results);
  if (promise === undefined) return statedWords(results);
  if (promise === 'incomplete') return 'The days cannot be worked out.';
  const { days, walk, furniture, drive } = promise;
  const words = (time: PromisedTime): string => time.words.replace(' after the last coat', '');
  const then =
    drive === undefined ? `furniture no sooner than ${words(furniture)}` : `drive no sooner than ${words(drive)}`;
  return `${days} · walk on it no sooner than ${walk.words}, ${then}`;
}

function statedWords(results: OptionResults): string {
  const visits = shownLine(results, 'visits');
  const wait = (name: string): string => {
    const value = lineValue(results, name);
    return typeof value === 'number' ? waitText(hours(value)) : '–';
  };
  const then = carsPark(results)
    ? `drive no sooner than ${wait('drive_hours')}`
    : `furniture no sooner than ${wait('furnish_hours')}`;
  return `${visits} · walk on it no sooner than ${wait('walk_hours')} after the last coat, ${then}`;
}

/**
 * Days with the crew there, not visits: a visit is work between two cures, and may take several days. Nights and days in
 * which a coat cures are told where there are any.
 */
function daysWords(onSite: number, fromFirstToLast: number): string {
  const words = onSite === 1 ? 'one day on site' : `${onSite} days on site`;
  return fromFirstToLast > onSite ? `${words} over ${fromFirstToLast} days` : words;
}
