import { earliestStarts, type Lag, sameHour } from '../../../src/trade/earliest-starts.ts';
import { type ClockHour, clockHour, type Hours, hours, hoursBetween, later } from '../../../src/units/hours.ts';

/** A task of a job and what it waits for. A length of 0 makes it a moment, such as "takes feet". */
export interface Task {
  readonly name: string;
  readonly length: Hours;
  readonly after: readonly Wait[];
}

export interface Wait {
  readonly task: string;
  /** From that task's finish to the start of this one, at least: a cure without crew. */
  readonly least: Hours;
  /** And at most: a recoat window. Left out: no end to it. */
  readonly most?: Hours;
}

export interface TimedTask {
  readonly name: string;
  readonly starts: ClockHour;
  readonly finishes: ClockHour;
  readonly latestStart: ClockHour;
  /** How much later it may start without a later end or a missed window. */
  readonly totalFloat: Hours;
  /** How much later it may start without moving any other task. */
  readonly freeFloat: Hours;
  readonly critical: boolean;
}

export type PathResult =
  | { readonly kind: 'path'; readonly tasks: readonly TimedTask[]; readonly ends: ClockHour }
  | { readonly kind: 'unknown'; readonly task: string; readonly wanted: string }
  | { readonly kind: 'twice'; readonly task: string }
  /** A length or a wait that is no number from 0 up. */
  | { readonly kind: 'bad_hours'; readonly task: string }
  /** Each waits for the next, and the last for the first. */
  | { readonly kind: 'circle'; readonly tasks: readonly string[] }
  /** No times keep every window; started as early as may be, `task` comes `over` too late after `before`. */
  | { readonly kind: 'missed'; readonly task: string; readonly before: string; readonly over: Hours };

interface Network {
  /** Each after all that it waits for. */
  readonly tasks: readonly Task[];
  readonly lags: readonly Lag[];
  readonly lengths: readonly Hours[];
}

/**
 * Start, finish and float of each task, which starts as early as its waits and the windows after it let it; in the
 * order given. The formulas of the critical path method, activity on node: start = latest finish before it + wait.
 * Example: grind 3 h, fill 1 h after it, vacuum 0.5 h at 0.5 h after that, from 07:00 → starts 07:00, 10:00, 11:30.
 */
export function criticalPath(tasks: readonly Task[], from: ClockHour): PathResult {
  const network = networkOf(tasks);
  if (network.kind !== 'network') return network;
  const found = earliestStarts(network.lengths, network.lags, from);
  if (found.kind === 'missed') {
    const { after, before } = found.lag;
    return { kind: 'missed', task: nameAt(network, after), before: nameAt(network, before), over: found.over };
  }
  const finishes = found.starts.map((start, at) => later(start, network.lengths[at] ?? hours(0)));
  const ends = clockHour(Math.max(from, ...finishes));
  const latest = latestStarts(network, ends);
  const timed = network.tasks.map((task, at): TimedTask => {
    const starts = found.starts[at] ?? from;
    const latestStart = latest[at] ?? starts;
    const totalFloat = hoursBetween(starts, latestStart);
    const freeFloat = freeFloatOf(at, network, found.starts, ends);
    const finish = later(starts, task.length);
    return {
      name: task.name,
      starts,
      finishes: finish,
      latestStart,
      totalFloat,
      freeFloat,
      critical: totalFloat < sameHour,
    };
  });
  const inOrder = tasks.flatMap(({ name }) => timed.find((task) => task.name === name) ?? []);
  return { kind: 'path', tasks: inOrder, ends };
}

/** The earliest starts of the network turned round, counted back from the end. */
function latestStarts({ lengths, lags }: Network, ends: ClockHour): ClockHour[] {
  const last = lengths.length - 1;
  const turned = lags.map(
    ({ before, after, ...limits }): Lag => ({ before: last - after, after: last - before, ...limits }),
  );
  const found = earliestStarts([...lengths].reverse(), turned, clockHour(0));
  if (found.kind === 'missed') throw new Error('A network that has times has none when it is turned round');
  const reversed = [...found.starts].reverse();
  return lengths.map((length, at) => clockHour(ends - (reversed[at] ?? 0) - length));
}

function freeFloatOf(at: number, { lags, lengths }: Network, starts: readonly ClockHour[], ends: ClockHour): Hours {
  const start = (place: number): number => starts[place] ?? 0;
  const finish = (place: number): number => start(place) + (lengths[place] ?? 0);
  const room = lags.flatMap(({ before, after, least, most }) => {
    if (before === at) return [start(after) - least - finish(before)];
    return after === at && most !== undefined ? [finish(before) + most - start(after)] : [];
  });
  return hours(Math.min(ends - finish(at), ...room));
}

type NetworkResult = ({ readonly kind: 'network' } & Network) | Exclude<PathResult, { kind: 'path' | 'missed' }>;

function networkOf(tasks: readonly Task[]): NetworkResult {
  const byName = new Map(tasks.map((task) => [task.name, task]));
  const twice = tasks.find((task) => byName.get(task.name) !== task);
  if (twice !== undefined) return { kind: 'twice', task: twice.name };
  for (const { name, length, after } of tasks) {
    const stranger = after.find(({ task }) => !byName.has(task));
    if (stranger !== undefined) return { kind: 'unknown', task: name, wanted: stranger.task };
    const given = [length, ...after.flatMap(({ least, most }) => (most === undefined ? [least] : [least, most]))];
    if (!given.every((value) => value >= 0 && value < Number.POSITIVE_INFINITY))
      return { kind: 'bad_hours', task: name };
  }
  const sorted: Task[] = [];
  for (const task of tasks) {
    const circle = visit(task, byName, sorted, []);
    if (circle !== undefined) return { kind: 'circle', tasks: circle };
  }
  const placeOf = new Map(sorted.map(({ name }, place) => [name, place]));
  const lags = sorted.flatMap(({ after }, place) =>
    after.map(({ task, ...limits }): Lag => ({ before: placeOf.get(task) ?? -1, after: place, ...limits })),
  );
  return { kind: 'network', tasks: sorted, lags, lengths: sorted.map(({ length }) => length) };
}

/** Puts the task after all that it waits for; a circle that it is part of, if there is one. */
function visit(
  task: Task,
  byName: ReadonlyMap<string, Task>,
  sorted: Task[],
  path: readonly string[],
): string[] | undefined {
  if (sorted.includes(task)) return undefined;
  if (path.includes(task.name)) return path.slice(path.indexOf(task.name));
  for (const wait of task.after) {
    const before = byName.get(wait.task);
    const circle = before && visit(before, byName, sorted, [...path, task.name]);
    if (circle !== undefined) return circle;
  }
  sorted.push(task);
  return undefined;
}

function nameAt({ tasks }: Network, place: number): string {
  return tasks[place]?.name ?? '';
}
