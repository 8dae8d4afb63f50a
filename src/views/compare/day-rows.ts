import { type DayPromise, dayPromise, type PromisedTime } from '../parts/day-promise.ts';
import type { NamedResults } from '../parts/named-results.ts';
import type { CompareRow } from './compare-row.ts';

const hoursPerDay = 24;
const noTime: PromisedTime = { words: 'incomplete', hours: Number.NaN };
const incomplete: DayPromise = { days: 'incomplete', walk: noTime, furniture: noTime, drive: noTime };

/** Days, walking, furniture and driving in the customer's words; undefined unless the clock of every option tells them. */
export function dayRows(options: readonly NamedResults[]): CompareRow[] | undefined {
  const found = options.map(({ results }) => dayPromise(results));
  if (found.length === 0 || found.includes(undefined)) return undefined;
  const promises = found.map((promise) => (promise === undefined || promise === 'incomplete' ? incomplete : promise));
  return [
    wordsRow(promises.map(({ days }) => days)),
    timeRow(
      'walk',
      'Walk on it, no sooner than',
      promises.map(({ walk }) => walk),
    ),
    timeRow(
      'furniture',
      'Furniture on it, no sooner than',
      promises.map(({ furniture }) => furniture),
    ),
    timeRow(
      'drive',
      'Drive on it, no sooner than',
      promises.map(({ drive }) => drive),
    ),
  ];
}

function wordsRow(words: readonly string[]): CompareRow {
  const cells = words.map((text) => ({ text, difference: '' }));
  return { name: 'days', label: 'Work', cells, differs: words.some((text) => text !== words[0]) };
}

function timeRow(name: string, label: string, times: readonly PromisedTime[]): CompareRow {
  const reference = times[0]?.hours ?? 0;
  const cells = times.map(({ words, hours }) => ({ text: words, difference: laterWords(hours - reference) }));
  return { name, label, cells, differs: cells.some(({ text }) => text !== cells[0]?.text) };
}

/** `2 days sooner`, `18 hours later`; under a full hour it is the same. */
function laterWords(hours: number): string {
  const size = Math.round(Math.abs(hours));
  if (!(size > 0)) return '';
  const days = size / hoursPerDay;
  const words = Number.isInteger(days) ? counted(days, 'day') : counted(size, 'hour');
  return `${words} ${hours > 0 ? 'later' : 'sooner'}`;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
