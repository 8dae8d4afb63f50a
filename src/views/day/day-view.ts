import { type ClockDay, type ClockTask, type ClockVisit, readClock } from '../../quote/clock.ts';
import { lineValue, type OptionResults } from '../../quote/option-results.ts';
import { taskReason } from '../../quote/task-reason.ts';
import { type DaySpan, type SpanKind, type WorkDay, workDays } from '../../quote/work-days.ts';
import { hoursBetween, timeOfDayText } from '../../units/hours.ts';
import type { Measures } from '../../units/measures.ts';
import { dateWords } from '../parts/date-words.ts';
import { lineLabel, shownLine } from '../parts/line-words.ts';
import { lengthWords, peopleWords } from './clock-words.ts';
import { midnightBefore, type StripDay, type StripSpan, type StripTone } from './strip/strip-geometry.ts';

/** An option's days as the Day face shows them. */
export type DayView =
  | {
      readonly kind: 'days';
      readonly strip: readonly StripDay[];
      readonly days: readonly DayTable[];
      readonly visits: readonly VisitRow[];
      /** Over all visits, by the sheet's own lines. */
      readonly totals: readonly { readonly label: string; readonly value: string }[];
    }
  /** Why there is nothing to show. */
  | { readonly kind: 'nothing'; readonly words: string };

export interface DayTable {
  readonly title: string;
  readonly rows: readonly DayRow[];
}

export interface DayRow {
  /** What it has in common with its piece of the picture. */
  readonly key: string;
  /** Its number in the picture; empty for what is no task. */
  readonly mark: string;
  readonly words: string;
  /** Why it begins when it does; empty where it follows the one above. */
  readonly why: string;
  readonly start: string;
  readonly finish: string;
  /** Who is at it; empty while nobody works. */
  readonly people: string;
  readonly hours: string;
  readonly quiet: boolean;
}

export interface VisitRow {
  readonly title: string;
  readonly crew: string;
  readonly worked: string;
  readonly idle: string;
  readonly paid: string;
  readonly crewDays: string;
}

const totalLines = ['person_hours', 'idle_hours', 'paid_hours', 'crew_days', 'round_trips'];

export function dayView(results: OptionResults, measures: Measures): DayView {
  const reading = readClock(results);
  switch (reading.kind) {
    case 'absent':
      return {
        kind: 'nothing',
        words: 'This quote was made with sheets that tell hours but no times of day. A new quote tells them.',
      };
    case 'failed':
      return { kind: 'nothing', words: `The times cannot be told. ${reading.reason}` };
    case 'clock': {
      const { clock } = reading;
      if (clock.tasks.length === 0) return { kind: 'nothing', words: 'No task is included, so no day begins.' };
      const days = workDays(clock);
      const marks = new Map(clock.tasks.map(({ row }, at) => [row, `${at + 1}`]));
      const start = startOf(results);
      return {
        kind: 'days',
        strip: days.map((day) => stripDay(day, titleOf(day, start), marks)),
        days: days.map((day) => dayTable(day, titleOf(day, start), marks, clock.day)),
        visits: clock.visits.map(visitRow),
        totals: totalLines.flatMap((line) => totalOf(results, line, measures)),
      };
    }
    default:
      return reading satisfies never;
  }
}

/** Serial day of the start, once one is chosen. */
function startOf(results: OptionResults): number | undefined {
  const known = ['start_chosen', 'start_date'].every((line) => results.stack.lines.has(line));
  if (!known || lineValue(results, 'start_chosen') !== 1) return undefined;
  const start = lineValue(results, 'start_date');
  return typeof start === 'number' ? start : undefined;
}

function titleOf({ day, visit }: WorkDay, start: number | undefined): string {
  const date = start === undefined ? '' : ` · ${dateWords(start + day - 1)}`;
  return `Day ${day}${date} · visit ${visit}`;
}

const tones: Readonly<Record<SpanKind, StripTone>> = {
  shop: 'light',
  drive: 'light',
  'set up': 'light',
  'load out': 'light',
  idle: 'light',
  task: 'work',
  coat: 'coat',
  wait: 'wait',
};

const spanWords: Readonly<Record<SpanKind, string>> = {
  shop: 'Load at the shop',
  drive: 'Drive',
  'set up': 'Set up',
  'load out': 'Load out',
  idle: 'Standing',
  task: 'Task',
  coat: 'Coat',
  wait: 'Wait for the cure',
};

const shortWords: Partial<Readonly<Record<SpanKind, string>>> = { shop: 'Shop', wait: 'Cure', idle: 'Idle' };

function stripDay({ day, lead, beside }: WorkDay, title: string, marks: Marks): StripDay {
  const lanes = [{ name: 'The crew, one thing after the other', spans: lead.map((span) => stripSpan(span, marks)) }];
  if (beside.length > 0) lanes.push({ name: 'Beside it', spans: beside.map((span) => stripSpan(span, marks)) });
  return { title, midnight: midnightBefore(day), lanes };
}

type Marks = ReadonlyMap<string, string>;

function stripSpan(span: DaySpan, marks: Marks): StripSpan {
  const { kind, from, to, task } = span;
  const drawn = { tone: tones[kind], from, to, key: keyOf(span) };
  const times = `${timeOfDayText(from)} to ${timeOfDayText(to)}`;
  if (task === undefined) {
    const words = shortWords[kind] ?? spanWords[kind];
    return { ...drawn, words, said: `${words}, ${times}` };
  }
  const mark = marks.get(task.row) ?? '';
  return { ...drawn, words: shortLabel(task), mark, said: `${mark} ${task.label}, ${times}` };
}

/** A task's pieces, should it go over two days, are one; of what is no task each piece is its own. */
function keyOf({ kind, from, task }: DaySpan): string {
  return task === undefined ? `${kind} ${from}` : `task ${task.row}`;
}

/** `Scrape, sweep, blow edges, vacuum` → `Scrape`: what it is called at a glance. */
function shortLabel({ label }: ClockTask): string {
  return label.split(/[,:;(]/)[0]?.trim() ?? label;
}

function dayTable({ lead, beside }: WorkDay, title: string, marks: Marks, usual: ClockDay): DayTable {
  const spans = [...lead, ...beside].sort((a, b) => a.from - b.from);
  const hasBeside = (span: DaySpan): boolean => beside.some(({ from, to }) => from < span.to && to > span.from);
  const rows = spans.map((span) => dayRow(span, marks, usual));
  return {
    title,
    rows: rows.map((row, at) => {
      const span = spans[at];
      return span?.kind === 'idle' && hasBeside(span) ? { ...row, words: 'Until the work beside is done' } : row;
    }),
  };
}

function dayRow(span: DaySpan, marks: Marks, usual: ClockDay): DayRow {
  const { kind, from, to, task } = span;
  const words = task === undefined ? spanWords[kind] : task.label;
  return {
    key: keyOf(span),
    mark: task === undefined ? '' : (marks.get(task.row) ?? ''),
    words: task?.beside ? `${words}, beside` : words,
    // Of a task that goes on in the morning the first piece says it.
    why: task === undefined || from !== task.start ? '' : taskReason(task, usual),
    start: timeOfDayText(from),
    finish: timeOfDayText(to),
    people: task === undefined ? '' : peopleWords(task.people),
    hours: lengthWords(hoursBetween(from, to)),
    quiet: task === undefined,
  };
}

function visitRow({ visit, crew, worked, paid, crewDays }: ClockVisit): VisitRow {
  return {
    title: `Visit ${visit}`,
    crew: peopleWords(crew),
    worked: lengthWords(worked),
    idle: lengthWords(paid - worked),
    paid: lengthWords(paid),
    crewDays: `${crewDays}`,
  };
}

function totalOf(results: OptionResults, line: string, measures: Measures): { label: string; value: string }[] {
  if (!results.stack.lines.has(line)) return [];
  return [{ label: lineLabel(results, line, measures), value: shownLine(results, line, measures) }];
}
