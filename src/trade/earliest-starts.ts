import { type ClockHour, clockHour, type Hours, hoursBetween, later } from '../units/hours.ts';

/** What lies between two tasks, named by their place in the list. */
export interface Lag {
  readonly before: number;
  readonly after: number;
  /** From the finish of the one to the start of the other, at least. */
  readonly least: Hours;
  /** And at most. Left out: no end to it. */
  readonly most?: Hours;
}

export type StartsResult =
  | { readonly kind: 'starts'; readonly starts: readonly ClockHour[] }
  /** No times hold every lag. `starts` are those that keep each `least`; they miss the `most` of `lag` by `over`. */
  | { readonly kind: 'missed'; readonly lag: Lag; readonly over: Hours; readonly starts: readonly ClockHour[] };

/** Sums of the same hours in another order differ by less than this, a few millionths of a second. */
export const sameHour = 1e-9;

interface Push {
  readonly from: number;
  readonly to: number;
  /** `to` starts no sooner than this long after the start of `from`. */
  readonly by: number;
}

/**
 * The earliest start of each task: not before `from`, at least `least` after what comes before it, and late enough that
 * what comes after it still keeps its `most`. Lags must lead from earlier to later tasks of the list.
 * Example: 3 h, then 1 h at 0.5 to 2 h later, from 07:00: starts 07:00 and 10:30.
 */
export function earliestStarts(lengths: readonly Hours[], lags: readonly Lag[], from: ClockHour): StartsResult {
  const forward = lags.map((lag): Push => {
    const { before, after, least } = lag;
    if (before >= after) throw new RangeError(`A lag leads from ${before} to ${after}, which is not later in the list`);
    return { from: before, to: after, by: at(lengths, before) + least };
  });
  // Sorted by where it leads, one round settles all that only leads forward.
  forward.sort((left, right) => left.to - right.to);
  const back = lags.flatMap(({ before, after, most }): Push[] =>
    most === undefined ? [] : [{ from: after, to: before, by: -at(lengths, before) - most }],
  );
  const starts = lengths.map(() => from);
  pushAll(forward, starts);
  const withoutWindows = [...starts];
  // A round settles one more step back of the longest chain, and no chain has more than there are tasks.
  for (let round = 0; round <= lengths.length; round += 1) {
    if (!pushAll(back, starts)) return { kind: 'starts', starts };
    pushAll(forward, starts);
  }
  return firstMissed(lengths, lags, withoutWindows);
}

/** Moves starts to the later; whether any moved. */
function pushAll(pushes: readonly Push[], starts: ClockHour[]): boolean {
  let moved = false;
  for (const { from, to, by } of pushes) {
    const soonest = at(starts, from) + by;
    if (soonest <= at(starts, to) + sameHour) continue;
    starts[to] = clockHour(soonest);
    moved = true;
  }
  return moved;
}

function firstMissed(lengths: readonly Hours[], lags: readonly Lag[], starts: readonly ClockHour[]): StartsResult {
  for (const lag of [...lags].sort((left, right) => left.after - right.after)) {
    if (lag.most === undefined) continue;
    const closes = later(later(at(starts, lag.before), at(lengths, lag.before)), lag.most);
    const over = hoursBetween(closes, at(starts, lag.after));
    if (over > sameHour / 2) return { kind: 'missed', lag, over, starts };
  }
  throw new Error('The starts never settle, though each keeps its lags');
}

function at<Item>(list: readonly Item[], place: number): Item {
  const item = list[place];
  if (item === undefined) throw new RangeError(`There is no task ${place}`);
  return item;
}
