import { messages } from './messages.ts';

/** The day that stands for no date at all: nobody coats a floor on 1899-12-30. */
const noDate = 0;

/** A date as the number of days since 1899-12-30, as spreadsheets count. */
export type DayResult =
  | { readonly kind: 'day'; readonly day: number }
  | { readonly kind: 'fault'; readonly reason: string };

const millisecondsPerDay = 86_400_000;
const epoch = Date.UTC(1899, 11, 30);
/** 9999-12-31, the last date with a year of four digits. */
const lastDay = (Date.UTC(9999, 11, 31) - epoch) / millisecondsPerDay;

/**
 * Reads an ISO 8601 date, `YYYY-MM-DD`, that really exists. Example: `readIsoDate('2026-03-09')` → day 46090.
 * Faults: another form, a day that is not in the calendar, before 1899-12-30.
 */
export function readIsoDate(text: string): DayResult {
  const trimmed = text.trim();
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(trimmed);
  if (match === null) return { kind: 'fault', reason: messages.dateWanted };
  const [year, month, date] = match.slice(1).map(Number);
  const day = (Date.UTC(year ?? 0, (month ?? 0) - 1, date ?? 0) - epoch) / millisecondsPerDay;
  if ((year ?? 0) < 1899) return { kind: 'fault', reason: messages.dateTooEarly };
  if (new Date(epoch + day * millisecondsPerDay).toISOString().slice(0, 10) !== trimmed) {
    return { kind: 'fault', reason: messages.noSuchDay(trimmed) };
  }
  return isSerialDay(day) ? { kind: 'day', day } : { kind: 'fault', reason: messages.dateTooEarly };
}

/** The serial day of an ISO date; undefined for any other text. Example: `serialDay('2026-03-09')` → 46090. */
export function serialDay(text: string): number | undefined {
  const read = readIsoDate(text);
  return read.kind === 'day' ? read.day : undefined;
}

/**
 * Writes a serial day as `YYYY-MM-DD`; an hour of the day (a fraction) is left out.
 * Throws outside 1899-12-30 to 9999-12-31: ask `isSerialDay` first. Example: `writeIsoDate(46090)` → '2026-03-09'.
 */
export function writeIsoDate(day: number): string {
  if (!isSerialDay(day)) throw new RangeError(`${day} is not a serial day`);
  return new Date(epoch + Math.floor(day) * millisecondsPerDay).toISOString().slice(0, 10);
}

/** A serial day to read: '2026-03-09', 'no date' for day 0, 'not a date' for what is none. */
export function dateText(day: number): string {
  if (day === noDate) return 'no date';
  return isSerialDay(day) ? writeIsoDate(day) : 'not a date';
}

const inWords = new Intl.DateTimeFormat('en-US', { dateStyle: 'medium', timeZone: 'UTC' });

/** A serial day as people say it: 46090 → 'Mar 9, 2026'; 'no date' for day 0, 'not a date' for what is none. */
export function spokenDate(day: number): string {
  if (!isDated(day)) return dateText(day);
  return inWords.format(epoch + Math.floor(day) * millisecondsPerDay);
}

/** Whether a number is a day that somebody chose: neither no date nor none that can be written. */
export function isDated(day: number): boolean {
  return day !== noDate && isSerialDay(day);
}

/** Whether a number is a day that `writeIsoDate` can write. */
export function isSerialDay(day: number): boolean {
  return day >= 0 && day < lastDay + 1;
}
