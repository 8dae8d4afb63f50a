import { add, compareNumbers, subtract } from '../units/cell-arithmetic.ts';
import { type Given, isOne, isZero, known, quotient, worked } from './given.ts';
import type { Day, Task } from './task.ts';

/** What is known of a task before any time is: who is at it, and what of its run is still to come. */
export interface TaskInRun {
  readonly joined: Given;
  readonly peopleAtIt: Given;
  /** People at the task it runs beside, else at itself. */
  readonly leadPeople: Given;
  /** Its run, counted from 1. */
  readonly run: Given;
  /** By the clock, from its start to the end of its run; a day on site at most. */
  readonly runLeft: Given;
  /** By the clock, from its start to that of the run's coat. */
  readonly coatIn: Given;
}

interface Member extends Pick<TaskInRun, 'joined' | 'peopleAtIt' | 'leadPeople' | 'run'> {
  readonly task: Task;
  readonly coatBegun: Given;
  readonly hours: Given;
}

/**
 * Tasks in their runs: scraping or abrading a coat, the coat on it, what is thrown into that and washing up are one run, which
 * is not begun where its coat would not be down and washed up that day.
 */
export function runsOfWork(tasks: readonly Task[], day: Day): TaskInRun[] {
  const members: Member[] = [];
  for (const task of tasks) members.push(memberOf(task, members, day));
  const totals = totalsOf(members);
  return members.map((member, at) => {
    const { joined, peopleAtIt, leadPeople, run } = member;
    const total = totals?.get(Number(run));
    const runLeft = worked(at, 'start', () =>
      Math.min(known(day.onSite), hoursLeft(members, at, everyHour, total?.hours)),
    );
    return {
      joined,
      peopleAtIt,
      leadPeople,
      run,
      runLeft,
      coatIn: worked(at, 'start', () => coatIn(members, at, total)),
    };
  });
}

function memberOf(task: Task, above: readonly Member[], day: Day): Member {
  const [at, before] = [above.length, above.at(-1)];
  const joined = worked(at, 'joined', () => (before === undefined ? 0 : joins(task, before)));
  const leadPeople = worked(at, 'leadPeople', () =>
    known(before !== undefined && isOne(joined) ? before.leadPeople : task.people),
  );
  const peopleAtIt = worked(at, 'peopleAtIt', () => peopleAt(task, joined, leadPeople, day));
  const run = worked(at, 'start', () => (before === undefined ? 1 : runAfter(before, task, above)));
  return {
    task,
    joined,
    leadPeople,
    peopleAtIt,
    run,
    coatBegun: worked(at, 'start', () => coatBegun(task, run, before)),
    hours: worked(at, 'start', () => runHours(task, joined, peopleAtIt)),
  };
}

/** Only where somebody is free beside those at the task above, and nothing is waited for. */
function joins(task: Task, before: Member): number {
  const sameVisit = compareNumbers(known(task.visit), known(before.task.visit)) === 0;
  const noWait = isZero(known(before.task.include) * known(before.task.wait));
  const anybodyFree = compareNumbers(known(task.crewHere), known(before.leadPeople)) > 0;
  return task.beside && sameVisit && noWait && anybodyFree ? 1 : 0;
}

/** Whoever has nothing to do beside helps: with all tasks where the sheet says so, else where the task allows it. */
function peopleAt(task: Task, joined: Given, leadPeople: Given, day: Day): number {
  const [beside, anyTask, thisTask] = [isOne(joined), isOne(day.allBeside), isOne(task.helped)];
  if (!beside || !(anyTask || thisTask)) return known(task.people);
  return Math.max(known(task.people), subtract(known(task.crewHere), known(leadPeople)));
}

/** By the clock: alone until those at the task beside are free, `unhelpedFor`; then with them, where the task is helped. */
export function byTheClock(task: Task, run: TaskInRun, hours: Given, unhelpedFor: Given): number {
  const people = known(run.peopleAtIt);
  const doneAlone = (): number => people * known(unhelpedFor);
  const [unhelped, doneBefore] = [isZero(task.helped), compareNumbers(known(hours), doneAlone()) <= 0];
  if (unhelped || doneBefore) return quotient(known(hours), people);
  const together = add(people, isOne(run.joined) ? known(run.leadPeople) : 0);
  return add(known(unhelpedFor), quotient(subtract(known(hours), doneAlone()), together));
}

/** A run is opened by the first task that is done to a coat. */
function runAfter(before: Member, task: Task, above: readonly Member[]): number {
  const opens =
    !isZero(known(task.include)) &&
    task.over !== 'none' &&
    !above.some((each) => each.task.over === task.over && isOne(each.task.include));
  return add(known(before.run), opens ? 1 : 0);
}

function coatBegun(task: Task, run: Given, before: Member | undefined): number {
  if (isOne(task.include) && task.lays !== 'none') return 1;
  if (before === undefined || compareNumbers(known(run), known(before.run)) > 0) return 0;
  return known(before.coatBegun);
}

/** What runs beside another adds none; nor does abrading where a window is over, since it is not over on the day. */
function runHours(task: Task, joined: Given, peopleAtIt: Given): number {
  const [left, nobody] = [isZero(known(task.include)), isZero(known(peopleAtIt))];
  if (left || nobody) return 0;
  const aside = add(add(add(known(joined), known(task.loadsOut)), known(task.anotherDay)), known(task.abrades));
  return compareNumbers(aside, 0) > 0 ? 0 : known(task.byRate) / known(peopleAtIt);
}

type Counts = (member: Member) => boolean;
const everyHour: Counts = () => true;
const beforeItsCoat: Counts = ({ coatBegun: begun }) => isZero(known(begun));

interface RunTotals {
  hours: number;
  beforeCoat: number;
  coats: number;
}

/** What runs come to, summed once for all their tasks; undefined where something failed, which each task then meets itself. */
function totalsOf(members: readonly Member[]): ReadonlyMap<number, RunTotals> | undefined {
  const totals = new Map<number, RunTotals>();
  for (const { run, hours, coatBegun: begun } of members) {
    if (typeof run === 'object' || typeof hours === 'object' || typeof begun === 'object') return undefined;
    const total = totals.get(run) ?? { hours: 0, beforeCoat: 0, coats: 0 };
    total.hours = add(total.hours, hours);
    if (isZero(begun)) total.beforeCoat = add(total.beforeCoat, hours);
    total.coats = add(total.coats, begun);
    totals.set(run, total);
  }
  return totals;
}

function coatIn(members: readonly Member[], at: number, total: RunTotals | undefined): number {
  const run = members[at]?.run ?? 0;
  const coats =
    total?.coats ??
    members.filter((each) => isSame(each.run, run)).reduce((sum, each) => add(sum, known(each.coatBegun)), 0);
  return isZero(coats) ? 0 : Math.max(0, hoursLeft(members, at, beforeItsCoat, total?.beforeCoat));
}

/** Of the run of the task `at`: its hours, in all `total` where that is known, less those above. */
function hoursLeft(members: readonly Member[], at: number, counts: Counts, total: number | undefined): number {
  const run = members[at]?.run ?? 0;
  const sum = (to: number): number => {
    let hours = 0;
    for (let row = 0; row < to; row += 1) {
      const each = members[row];
      if (each !== undefined && isSame(each.run, run) && counts(each)) hours = add(hours, known(each.hours));
    }
    return hours;
  };
  const all = total ?? sum(members.length);
  return at === 0 ? all : subtract(all, sum(at));
}

function isSame(one: Given, other: Given): boolean {
  return compareNumbers(known(one), known(other)) === 0;
}
