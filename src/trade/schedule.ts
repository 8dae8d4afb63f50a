import { add, compareNumbers, subtract } from '../units/cell-arithmetic.ts';
import { roundUpTo, wholePart } from '../units/decimal-rounding.ts';
import { isLaidAbove, layerOf } from './coats-laid.ts';
import { fails, type Given, isOne, isZero, known, quotient, told, worked } from './given.ts';
import { byTheClock, runsOfWork, type TaskInRun } from './runs-of-work.ts';
import type { Because, Coat, Day, Task, TaskTimes } from './task.ts';
import { type OnVisitClock, visitClock } from './visit-clock.ts';

/**
 * The crew's day: when each task of a job is done, in the order of the work. One pass over the tasks: each begins when what is
 * above it is done and its coat takes it, in the morning after or on another visit where the day would not hold it. The crew goes
 * home at the usual time, and stays longer for what is left of the work where that is cheaper than another trip. Hours; times
 * are hours after midnight of the first day. A number that failed fails what is worked out from it, and nothing else.
 * As columns of formulas the same stands in templates/parts/hours/clock-columns.json.
 */
export function schedule(tasks: readonly Task[], coats: readonly Coat[], day: Day): TaskTimes[] {
  const runs = runsOfWork(tasks, day);
  const clock = visitClock(tasks, runs, coats, day);
  const done: Row[] = [];
  for (const [at, task] of tasks.entries()) {
    const [run, visit] = [runs[at], clock[at]];
    if (run && visit) done.push(timesOf({ task, run, visit, above: done, before: done.at(-1), coats, day }));
  }
  return done;
}

/** A task with what the tasks below it ask. */
interface Row extends TaskTimes {
  readonly task: Task;
  readonly loadedSoFar: Given;
  readonly leadFree: Given;
  readonly freeAt: Given;
}

/** Where the pass stands: a task, and what is above it. */
interface Here {
  readonly task: Task;
  readonly run: TaskInRun;
  readonly visit: OnVisitClock;
  readonly above: readonly Row[];
  readonly before: Row | undefined;
  readonly coats: readonly Coat[];
  readonly day: Day;
}

function timesOf(here: Here): Row {
  const { task, run, visit, above, before, day } = here;
  const at = (result: keyof TaskTimes, work: () => number): Given => worked(above.length, result, work);
  const ready = at('ready', () => readyAt(here));
  const visitUsed = at('visitUsed', () => visitOf(here, ready));
  const start = at('start', () => startOf(here, ready, visitUsed));
  const windowPassed = at('windowPassed', () => windowPassedAt(here, start));
  const hours = at('hours', () => labourOf(task, windowPassed));
  const unhelpedFor = at('elapsed', () => unhelpedHours(here, start));
  const elapsed = at('elapsed', () => byTheClock(task, run, hours, unhelpedFor));
  const finish = at('finish', () => finishOf(here, start, elapsed));
  return {
    task,
    joined: run.joined,
    peopleAtIt: run.peopleAtIt,
    leadPeople: run.leadPeople,
    ready,
    visitUsed,
    start,
    windowPassed,
    hours,
    elapsed,
    finish,
    planned: visit.planned,
    likelyHours: visit.likelyHours,
    onClock: visit.onClock,
    paidWait: visit.paidWait,
    fills: visit.fills,
    dayNo: at('dayNo', () => add(dayOf(known(start), day), 1)),
    clockAdded: at('clockAdded', () => addedToClock(here, start, finish)),
    loadedSoFar: at('visitUsed', () => loadedSoFar(here, visitUsed, elapsed)),
    leadFree: at('finish', () => known(before !== undefined && isOne(run.joined) ? before.leadFree : finish)),
    freeAt: at('finish', () => (before ? Math.max(known(before.freeAt), known(finish)) : known(finish))),
    because: told(above.length, 'because', () => becauseOf(here, visitUsed, start)),
  };
}

/** What is waited for is done, and the coat takes the next step. */
function readyAt({ task, run, above, before, coats, day }: Here): number {
  if (before === undefined) return add(known(day.siteFrom), known(day.firstSetUp));
  return Math.max(
    known(before.ready),
    isOne(run.joined) ? 0 : add(known(before.finish), known(before.task.include) * known(before.task.wait)),
    task.after === 'above' ? 0 : known((above.find((row) => row.task.name === task.after) ?? nowhere()).finish),
    isDoneToCoat(task) && isLaidAbove(task.over, above)
      ? add(downAt(task, above), known(coatOf(task, coats).recoatFrom))
      : 0,
  );
}

/** As planned, and one later for each wait after which the day would not hold the rest of the run, and loading out. */
function visitOf(here: Here, ready: Given): number {
  const { task, run, before, day } = here;
  if (before === undefined) return 1;
  const visit = known(before.visitUsed);
  if (isZero(task.include)) return visit;
  if (isMore(known(task.visit), known(before.planned))) return add(visit, 1);
  const [joined, noWait] = [isOne(run.joined), !isMore(known(ready), known(before.freeAt))];
  if (joined || noWait) return visit;
  const midnight = known(day.clockDay) * dayOf(known(before.freeAt), day);
  const coatAt = add(known(ready), task.over === 'none' ? 0 : known(run.coatIn));
  const coatTooLate = isMore(coatAt, add(midnight, known(day.coatStartUntil)));
  const done = add(add(known(ready), known(run.runLeft)), loadingLeft(before, day));
  const dayTooShort = isMore(done, dayEnds(midnight, day));
  return coatTooLate || (isOfCoats(task) && dayTooShort) ? add(visit, 1) : visit;
}

function startOf(here: Here, ready: Given, visitUsed: Given): number {
  const { task, run, before, day } = here;
  if (before === undefined) return known(ready);
  if (isMore(known(visitUsed), known(before.visitUsed)))
    return Math.max(known(ready), comesAgainAt(known(ready), before, day));
  if (isOne(run.joined)) return Math.max(known(isOne(before.joined) ? before.finish : before.start), known(ready));
  if (isZero(task.include)) return known(before.freeAt);
  if (!isOfCoats(task)) return Math.max(known(before.freeAt), known(ready));
  const free = known(before.freeAt);
  const midnight = known(day.clockDay) * dayOf(free, day);
  const tooLate = isMore(free, add(midnight, known(day.coatStartUntil)));
  const dayTooShort = isMore(add(free, hoursWanted(here, before)), dayEnds(midnight, day));
  if (tooLate || dayTooShort) return add(add(midnight, known(day.clockDay)), known(day.siteFrom));
  return Math.max(free, known(ready));
}

function becauseOf(here: Here, visitUsed: Given, start: Given): Because {
  const { task, run, above, before, coats, day } = here;
  if (isZero(task.include)) return 'left_out';
  if (before === undefined) return 'set_up';
  if (isMore(known(visitUsed), known(before.visitUsed)))
    return isMore(known(task.visit), known(before.planned)) ? 'planned' : 'wait_too_long';
  if (isOne(run.joined)) return 'beside';
  const free = known(before.freeAt);
  if (isMore(dayOf(known(start), day), dayOf(free, day))) {
    const latest = add(known(day.clockDay) * dayOf(free, day), known(day.coatStartUntil));
    return isMore(free, latest) ? 'too_late' : 'day_too_short';
  }
  if (!isMore(known(start), free)) return 'follows';
  const cured = isDoneToCoat(task) && isLaidAbove(task.over, above);
  const takes = cured ? add(downAt(task, above), known(coatOf(task, coats).recoatFrom)) : 0;
  return isMore(known(start), takes) ? 'rests' : 'coat_ready';
}

/** On the next day, or on the one in whose first half the coat takes the next step. */
function comesAgainAt(ready: number, before: Row, day: Day): number {
  const nextDay = add(dayOf(known(before.freeAt), day), 1);
  const coatsDay = roundUpTo(quotient(subtract(ready, known(day.visitBeginUntil)), known(day.clockDay)), 0);
  return add(add(known(day.clockDay) * Math.max(nextDay, coatsDay), known(day.siteFrom)), known(day.laterSetUp));
}

/** What the day must still hold for a task to be begun: of a coat, its run and loading out; of what is done to one, itself. */
function hoursWanted({ task, run, day }: Here, before: Row): number {
  if (task.lays === 'none') return Math.min(quotient(known(task.byRate), known(run.peopleAtIt)), known(day.onSite));
  return add(known(run.runLeft), loadingLeft(before, day));
}

/** What is broadcast to refusal holds the next coat by its texture. */
function windowPassedAt({ task, above, before, coats }: Here, start: Given): number {
  if (before === undefined) return 0;
  const [apart, left] = [task.over === 'none', isZero(task.include)];
  if (apart || left) return 0;
  const [notLaid, toRefusal] = [!isLaidAbove(task.over, above), isOne(coatOf(task, coats).toRefusal)];
  if (notLaid || toRefusal) return 0;
  return isMore(known(start), add(downAt(task, above), known(coatOf(task, coats).recoatUntil))) ? 1 : 0;
}

function labourOf(task: Task, windowPassed: Given): number {
  const work = known(task.include) * known(task.byRate);
  return work * (isOne(task.abrades) ? Math.max(known(task.factor), known(windowPassed)) : known(task.factor));
}

/** Until the first, beside which it runs, is free to help. */
function unhelpedHours({ run, before, day }: Here, start: Given): number {
  if (before === undefined || !isOne(run.joined)) return 0;
  const nights = subtract(dayOf(known(before.leadFree), day), dayOf(known(start), day));
  return Math.max(0, subtract(subtract(known(before.leadFree), known(start)), known(day.night) * nights));
}

/** What is not done by the end of the day goes on in the morning; a day that ends the run may be longer. */
function finishOf({ visit, day }: Here, start: Given, elapsed: Given): number {
  const end = add(known(start), known(elapsed));
  const midnight = known(day.clockDay) * dayOf(known(start), day);
  const over = subtract(subtract(subtract(end, midnight), known(day.siteUntil)), known(day.grace));
  const nights = Math.max(0, roundUpTo(quotient(over, known(day.onSite)), 0));
  const left = Math.max(known(visit.left), known(elapsed));
  const overLong = subtract(
    subtract(subtract(add(known(start), left), midnight), known(day.staysUntil)),
    known(day.grace),
  );
  const nightsOfRun = Math.max(0, roundUpTo(quotient(overLong, known(day.onSite)), 0));
  return add(end, known(day.night) * Math.min(nights, nightsOfRun));
}

/** With what is waited before it in the same visit; nights, and what comes after the last task of a visit, are not paid. */
function addedToClock({ before, day }: Here, start: Given, finish: Given): number {
  const since = (time: number): number => {
    const nights = subtract(dayOf(known(finish), day), dayOf(time, day));
    return subtract(subtract(known(finish), time), known(day.night) * nights);
  };
  if (before === undefined) return since(known(start));
  if (isMore(dayOf(known(start), day), dayOf(known(before.freeAt), day))) return since(known(start));
  return isMore(known(finish), known(before.freeAt)) ? since(known(before.freeAt)) : 0;
}

/** Loading out that tasks of its visit have done so far. */
function loadedSoFar({ task, before }: Here, visitUsed: Given, elapsed: Given): number {
  const loaded = (): number => known(task.loadsOut) * known(elapsed);
  if (before === undefined) return loaded();
  return add(isMore(known(visitUsed), known(before.visitUsed)) ? 0 : known(before.loadedSoFar), loaded());
}

function loadingLeft(before: Row, day: Day): number {
  return Math.max(0, subtract(known(day.loadOut), known(before.loadedSoFar)));
}

/** The latest end of a day that is worth staying for. */
function dayEnds(midnight: number, day: Day): number {
  return add(add(midnight, known(day.staysUntil)), known(day.grace));
}

function dayOf(time: number, day: Day): number {
  return wholePart(quotient(time, known(day.clockDay)));
}

function isOfCoats({ lays, over }: Task): boolean {
  return lays !== 'none' || over !== 'none';
}

function isDoneToCoat(task: Task): boolean {
  const [apart, left] = [task.over === 'none', isZero(task.include)];
  return !apart && !left;
}

/** When the coat that a task is done to was down. */
function downAt(task: Task, above: readonly Row[]): number {
  return known((layerOf(task.over, above) ?? nowhere()).finish);
}

function coatOf(task: Task, coats: readonly Coat[]): Coat {
  return coats.find(({ name }) => name === task.over) ?? nowhere();
}

function nowhere(): never {
  return fails('notFound');
}

function isMore(one: number, other: number): boolean {
  return compareNumbers(one, other) > 0;
}
