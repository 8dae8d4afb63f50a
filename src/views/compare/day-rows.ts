import { hours, waitText } from '../../units/hours.ts';
import { type DayPromise, dayPromise, type PromisedTime } from '../parts/day-promise.ts';
import type { NamedResults } from '../parts/named-results.ts';
import type { CompareRow } from './compare-row.ts';

const noTime: PromisedTime = { words: 'incomplete', hours: Number.NaN };
const incomplete: DayPromise = { days: 'incomplete', walk: noTime, furniture: noTime, drive: noTime };

/** Days, walking, furniture and, where cars park, driving in the customer's words; undefined unless the clock of every option tells them. */
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
    ...driveRow(promises.map(({ drive }) => drive)),
  ];
}

/** Nothing where no cars park: the floor is one for all options. */
function driveRow(times: readonly (PromisedTime | undefined)[]): CompareRow[] {
  const told = times.flatMap((time) => time ?? []);
  return told.length < times.length ? [] : [timeRow('drive', 'Drive on it, no sooner than', told)];
}

function wordsRow(words: readonly string[]): CompareRow {
  const cells = words.map((text) => ({ text, difference: '' }));
  return { name: 'days', label: 'Work', cells, differs: words.some((text) => text !== words[0]) };
}

function timeRow(name: string, label: string, times: readonly PromisedTime[]): CompareRow {
  const reference = times[0]?.hours ?? 0;
  const cells = times.map((time) => ({ text: time.words, difference: laterWords(time.hours - reference) }));
  return { name, label, cells, differs: cells.some(({ text }) => text !== cells[0]?.text) };
}

/** `3 days sooner`, `18 hours later`, between what is told; under half an hour it is the same. */
function laterWords(apart: number): string {
  const size = Math.round(Math.abs(apart));
  return size > 0 ? `${waitText(hours(size))} ${apart > 0 ? 'later' : 'sooner'}` : '';
}
