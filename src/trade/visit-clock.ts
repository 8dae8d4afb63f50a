import { add, compareNumbers, subtract } from '../units/cell-arithmetic.ts';
import { isLaidAbove, layerOf } from './coats-laid.ts';
import { type Given, isOne, isZero, known, quotient, worked } from './given.ts';
import { byTheClock, type TaskInRun } from './runs-of-work.ts';
import type { Coat, Day, Task } from './task.ts';

/** A task on the clock of its visit as planned, as if a day had no end: what a price is made from moves with the work only. */
export interface OnVisitClock {
  /** The visit it belongs to as planned; what stands below a later visit's task belongs to that. */
  readonly planned: Given;
  readonly likelyHours: Given;
  readonly onClock: Given;
  readonly paidWait: Given;
  readonly fills: Given;
  /** From its start to the end of its run, waits aside, loading out too. */
  readonly left: Given;
}

interface Clocked extends Pick<OnVisitClock, 'planned' | 'onClock' | 'paidWait' | 'fills'> {
  readonly task: Task;
  readonly in: TaskInRun;
  readonly takes: Given;
  /** Of the task beside which it and those above it run, else its own. */
  readonly leadTakes: Given;
  /** From the start of that one to its own end. */
  readonly besideUntil: Given;
  /** From the start of that one until all so far are done. */
  readonly groupTakes: Given;
  /** From the start of the visit to its end, with waits, and without. */
  readonly clockAt: Given;
  readonly workAt: Given;
  readonly filled: Given;
  /** Until then, from the start of the visit, what must rest rests. */
  readonly restUntil: Given;
  /** From the start of the one it runs beside, else of itself. */
  readonly startBeside: Given;
}

export function visitClock(tasks: readonly Task[], runs: readonly TaskInRun[], coats: readonly Coat[], day: Day) {
  const clocked: Clocked[] = [];
  for (const [at, task] of tasks.entries()) {
    const run = runs[at];
    if (run !== undefined) clocked.push(clockedOf(task, run, clocked, coats, day));
  }
  const totals = totalsOf(clocked);
  return clocked.map((each, at): OnVisitClock => {
    const { task, planned, onClock, paidWait, fills } = each;
    const left = worked(at, 'finish', () => leftFrom(clocked, at, day, totals));
    const late = worked(at, 'likelyHours', () => likelyLate(each, left, clocked.slice(0, at), coats, day));
    const abrading = worked(
      at,
      'likelyHours',
      () => workOf(task) * Math.max(0, subtract(known(late), known(task.factor))),
    );
    const more = worked(at, 'onClock', () =>
      isZero(abrading) ? 0 : quotient(known(abrading), known(each.in.peopleAtIt)),
    );
    return {
      planned,
      paidWait,
      left,
      likelyHours: worked(at, 'likelyHours', () => add(workOf(task) * known(task.factor), known(abrading))),
      onClock: worked(at, 'onClock', () => add(known(onClock), known(more))),
      fills: worked(at, 'fills', () => add(known(fills), known(more))),
    };
  });
}

function clockedOf(task: Task, run: TaskInRun, above: readonly Clocked[], coats: readonly Coat[], day: Day): Clocked {
  const [at, before] = [above.length, above.at(-1)];
  const { joined } = run;
  const beside = (): Clocked | undefined => (before !== undefined && isOne(joined) ? before : undefined);
  const planned = worked(at, 'planned', () => plannedVisit(task, before));
  /** The task above, if it belongs to the same visit. */
  const same = (): Clocked | undefined =>
    before !== undefined && compareNumbers(known(planned), known(before.planned)) === 0 ? before : undefined;
  const starts = worked(at, 'onClock', () => startBeside(beside()));
  const takes = worked(at, 'onClock', () => takesOf(task, run, beside(), known(starts)));
  const besideUntil = worked(at, 'onClock', () => add(known(starts), beside() ? known(takes) : 0));
  const groupTakes = worked(at, 'onClock', () => groupOf(beside(), known(takes), besideUntil));
  const onClock = worked(at, 'onClock', () => subtract(known(groupTakes), known(beside()?.groupTakes ?? 0)));
  const paidWait = worked(at, 'paidWait', () => waitOf(task, joined, same(), above, coats));
  const workAt = worked(at, 'fills', () => add(known(same()?.workAt ?? 0), known(onClock)));
  const filled = worked(at, 'fills', () => filledBy(task, workAt, onClock, same(), day));
  const clockAt = worked(at, 'paidWait', () => add(add(known(same()?.clockAt ?? 0), known(paidWait)), known(onClock)));
  const ownEnd = (): number => add(subtract(known(clockAt), known(groupTakes)), known(beside() ? besideUntil : takes));
  return {
    task,
    in: run,
    startBeside: starts,
    restUntil: worked(at, 'paidWait', () => restsUntil(task, same(), ownEnd)),
    planned,
    takes,
    besideUntil,
    groupTakes,
    onClock,
    paidWait,
    workAt,
    filled,
    leadTakes: worked(at, 'onClock', () => known(beside()?.leadTakes ?? takes)),
    clockAt,
    fills: worked(at, 'fills', () => subtract(known(filled), known(same()?.filled ?? 0))),
  };
}

function workOf(task: Task): number {
  return known(task.include) * known(task.byRate);
}

function plannedVisit(task: Task, before: Clocked | undefined): number {
  if (before === undefined) return known(task.visit);
  return Math.max(known(before.planned), known(task.include) * known(task.visit));
}

/** When a task that runs beside another begins, from the start of that one: after what is above it there, and what must rest. */
function startBeside(beside: Clocked | undefined): number {
  if (beside === undefined) return 0;
  const above = isOne(beside.in.joined) ? known(beside.besideUntil) : 0;
  const groupBegan = subtract(known(beside.clockAt), known(beside.groupTakes));
  return Math.max(above, subtract(known(beside.restUntil), groupBegan));
}

function takesOf(task: Task, run: TaskInRun, beside: Clocked | undefined, starts: number): number {
  const hours = workOf(task) * known(task.factor);
  const alone = beside === undefined ? 0 : Math.max(0, subtract(known(beside.leadTakes), starts));
  return byTheClock(task, run, hours, alone);
}

function groupOf(beside: Clocked | undefined, takes: number, besideUntil: Given): number {
  return beside === undefined ? takes : Math.max(known(beside.groupTakes), known(besideUntil));
}

/** For what rests above it, and for the coat it is done to, where that was laid on the same visit. */
function waitOf(
  task: Task,
  joined: Given,
  same: Clocked | undefined,
  above: readonly Clocked[],
  coats: readonly Coat[],
): number {
  const [beside, left] = [isOne(joined), isZero(task.include)];
  if (same === undefined || beside || left) return 0;
  const rest = subtract(known(same.restUntil), known(same.clockAt));
  const laid = layerOf(task.over, above);
  if (task.over === 'none' || laid === undefined || !isLaidAbove(task.over, above)) return Math.max(0, rest);
  if (compareNumbers(known(laid.planned), known(same.planned)) < 0) return Math.max(0, rest);
  const cure = known(coats.find(({ name }) => name === task.over)?.recoatFrom ?? 0);
  return Math.max(0, rest, subtract(add(known(laid.clockAt), cure), known(same.clockAt)));
}

function restsUntil(task: Task, same: Clocked | undefined, ownEnd: () => number): number {
  const wait = known(task.include) * known(task.wait);
  return Math.max(known(same?.restUntil ?? 0), compareNumbers(wait, 0) > 0 ? add(ownEnd(), wait) : 0);
}

function filledBy(task: Task, workAt: Given, onClock: Given, same: Clocked | undefined, day: Day): number {
  const before = known(same?.filled ?? 0);
  const lays = isOne(task.include) && task.lays !== 'none';
  const inTime = lays ? add(subtract(known(workAt), known(onClock)), known(day.coatMargin)) : 0;
  return Math.max(before, known(workAt), inTime);
}

/** Of a task beside another: what is left from the start of that one, less what is past when it begins itself. */
function leftFrom(clocked: readonly Clocked[], at: number, day: Day, totals: Totals | undefined): number {
  let lead = at;
  while (lead > 0 && isOne(clocked[lead]?.in.joined ?? 0)) lead -= 1;
  const left = leftOfRun(clocked, lead, day, totals);
  return lead === at ? left : subtract(left, known(clocked[at]?.startBeside ?? 0));
}

type Totals = ReadonlyMap<number, { clock: number; loaded: number }>;

/** What runs come to on the clock, summed once for all their tasks; undefined where something failed. */
function totalsOf(clocked: readonly Clocked[]): Totals | undefined {
  const totals = new Map<number, { clock: number; loaded: number }>();
  for (const { in: inRun, onClock, takes, task } of clocked) {
    const { run } = inRun;
    if (typeof run === 'object' || typeof onClock === 'object' || typeof takes === 'object') return undefined;
    if (typeof task.loadsOut === 'object') return undefined;
    const total = totals.get(run) ?? { clock: 0, loaded: 0 };
    total.clock = add(total.clock, onClock);
    if (isOne(task.loadsOut)) total.loaded = add(total.loaded, takes);
    totals.set(run, total);
  }
  return totals;
}

function leftOfRun(clocked: readonly Clocked[], at: number, day: Day, totals: Totals | undefined): number {
  const run = known(clocked[at]?.in.run ?? 0);
  const total = totals?.get(run);
  const own = (each: Clocked): boolean => compareNumbers(known(each.in.run), run) === 0;
  const clock = (to: number): number => {
    let hours = 0;
    for (let row = 0; row < to; row += 1) {
      const each = clocked[row];
      if (each !== undefined && own(each)) hours = add(hours, known(each.onClock));
    }
    return hours;
  };
  const all = total?.clock ?? clock(clocked.length);
  const left = at === 0 ? all : subtract(all, clock(at));
  const loaded =
    total?.loaded ??
    clocked.reduce(
      (hours, each) => (own(each) && isOne(each.task.loadsOut) ? add(hours, known(each.takes)) : hours),
      0,
    );
  return add(left, Math.max(0, subtract(known(day.loadOut), loaded)));
}

/**
 * How likely the window of the coat that a task abrades is missed, from 0 to 1: by the time since it was laid, with the night
 * between where the visit's day may not hold the rest of the run, against the window, each known to within a share.
 */
function likelyLate(here: Clocked, left: Given, above: readonly Clocked[], coats: readonly Coat[], day: Day): number {
  const { task } = here;
  const [goesOn, left0] = [isZero(task.abrades), isZero(task.include)];
  const laid = layerOf(task.over, above);
  if (goesOn || left0 || laid === undefined || !isLaidAbove(task.over, above)) return 0;
  const coat = coats.find(({ name }) => name === task.over);
  if (coat === undefined || isOne(coat.toRefusal)) return 0;
  const begins = subtract(known(here.clockAt), known(here.onClock));
  const setUp = compareNumbers(known(here.planned), 1) === 0 ? known(day.firstSetUp) : known(day.laterSetUp);
  const over = subtract(
    add(add(setUp, begins), known(left)),
    subtract(known(day.longestOnSite), known(day.nearlyFull)),
  );
  const night = known(day.night) * Math.min(1, Math.max(0, quotient(over, 2 * known(day.nearlyFull))));
  const sameVisit = compareNumbers(known(laid.planned), known(here.planned)) === 0;
  const since = sameVisit
    ? subtract(begins, known(laid.clockAt))
    : add(add(add(known(day.night), known(day.loadOut)), setUp), begins);
  const within = known(day.knownWithin) * known(coat.recoatUntil);
  const passed = add(subtract(add(since, night), known(coat.recoatUntil)), within);
  return Math.min(1, Math.max(0, quotient(passed, within)));
}
