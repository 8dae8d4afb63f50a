import { type ClockHour, clockHour, type Hours, hours, hoursBetween, later } from '../units/hours.ts';
import type { Clock, ClockTask, ClockVisit } from './clock.ts';

/** A day of a job, from the shop and back, without gaps. */
export interface WorkDay {
  /** 1 for the first day. */
  readonly day: number;
  readonly visit: number;
  /** What the crew does one after the other. */
  readonly lead: readonly DaySpan[];
  /** What runs beside it. */
  readonly beside: readonly DaySpan[];
}

export interface DaySpan {
  readonly kind: SpanKind;
  readonly from: ClockHour;
  readonly to: ClockHour;
  /** Of a task or coat. */
  readonly task?: ClockTask;
}

/** `wait`: for a coat to cure. `idle`: nothing holds the crew but the clock. */
export type SpanKind = 'shop' | 'drive' | 'set up' | 'task' | 'coat' | 'wait' | 'idle' | 'load out';

const hoursPerDay = 24;
/** Shorter than four seconds: a difference of sums, no time. */
const noTime = 0.001;

/** The days on which an option's tasks are done, each with what the crew does from hour to hour. */
export function workDays(clock: Clock): WorkDay[] {
  const pieces = clock.tasks.flatMap((task) => piecesOf(task, clock));
  const days = [...new Set(pieces.map(({ day }) => day))].sort((a, b) => a - b);
  return days.map((day, at) => {
    const own = pieces.filter((piece) => piece.day === day);
    const visit = own[0]?.span.task?.visit ?? 0;
    const isOther = (beside: number | undefined): boolean =>
      pieces.find((piece) => piece.day === beside)?.span.task?.visit !== visit;
    const lead = own.flatMap(({ span }) => (span.task?.beside ? [] : [span]));
    const ends = latest(own.map(({ span }) => span.to));
    const edges = { day, opens: isOther(days[at - 1]), closes: isOther(days[at + 1]) };
    return {
      day,
      visit,
      lead: filled(lead, ends, { ...edges, visit: clock.visits.find((each) => each.visit === visit) }, clock),
      beside: own.flatMap(({ span }) => (span.task?.beside ? [span] : [])),
    };
  });
}

interface Piece {
  readonly day: number;
  readonly span: DaySpan;
}

/** A task that is not done when the crew leaves goes on the next morning. */
function piecesOf(task: ClockTask, { day: { begins, loading, drive, leaves } }: Clock): Piece[] {
  const kind = task.lays === undefined ? 'task' : 'coat';
  const pieces: Piece[] = [];
  let from = task.start;
  let { day } = task;
  const midnightOf = (day: number): ClockHour => clockHour(hoursFromDays(day - 1));
  const midnight = (): Hours => hoursFromDays(day - 1);
  while (hoursBetween(later(midnightOf(day), hours(hoursPerDay)), task.finish) > noTime) {
    const to = later(leaves, midnight());
    if (hoursBetween(from, to) > noTime) pieces.push({ day, span: { kind, from, to, task } });
    day += 1;
    from = later(later(later(begins, midnight()), loading), drive);
    // A clock that leaves no time on site never comes to an end.
    if (hoursBetween(from, later(leaves, midnight())) <= noTime) break;
  }
  pieces.push({ day, span: { kind, from, to: task.finish, task } });
  return pieces;
}

interface DayEdges {
  readonly day: number;
  readonly visit: ClockVisit | undefined;
  /** The first or last day of its visit. */
  readonly opens: boolean;
  readonly closes: boolean;
}

/** The lead chain with the way there and back, and what lies between tasks. */
function filled(tasks: readonly DaySpan[], ends: ClockHour, edges: DayEdges, { day: usual }: Clock): DaySpan[] {
  const ways = hours(usual.loading + usual.drive);
  const usualArrival = later(later(usual.begins, hoursFromDays(edges.day - 1)), ways);
  const arrives = edges.opens && edges.visit !== undefined ? edges.visit.arrives : usualArrival;
  const spans: DaySpan[] = [];
  let now = later(arrives, hours(-ways));
  const until = (kind: SpanKind, to: ClockHour): void => {
    if (hoursBetween(now, to) <= noTime) return;
    spans.push({ kind, from: now, to });
    now = to;
  };
  until('shop', later(now, usual.loading));
  until('drive', later(now, usual.drive));
  const [first] = tasks;
  if (edges.opens && edges.visit !== undefined && first !== undefined)
    until('set up', earlier(later(now, edges.visit.setUp), first.from));
  for (const span of tasks) {
    until(span.task?.over === undefined ? 'idle' : 'wait', span.from);
    spans.push(span);
    now = latest([now, span.to]);
  }
  // What runs beside may take longer than the lead.
  until('idle', ends);
  if (edges.closes && edges.visit !== undefined) until('load out', later(now, edges.visit.loadOut));
  until('drive', later(now, usual.drive));
  return spans;
}

function hoursFromDays(days: number): Hours {
  return hours(days * hoursPerDay);
}

function earlier(one: ClockHour, other: ClockHour): ClockHour {
  return one < other ? one : other;
}

function latest(times: readonly ClockHour[]): ClockHour {
  return clockHour(Math.max(...times));
}
