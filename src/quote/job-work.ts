import type { Block, Cure } from '../trade/crew-day.ts';
import { type ClockHour, clockHour, type Hours, hours, sumHours } from '../units/hours.ts';
import type { Clock, ClockTask } from './clock.ts';

/** What a job's clock is made of when its crew may leave during every wait. */
export interface JobWork {
  readonly blocks: readonly WorkBlock[];
}

/** Tasks done in one go: setting up is in the first of a visit, loading out in the last. */
export interface WorkBlock extends Block {
  readonly tasks: readonly ClockTask[];
  /** From the block's start to the start of the last coat it lays; undefined when it lays none. */
  readonly lastCoatAfter?: Hours;
}

/** Shorter than four seconds: a difference of sums, no time. */
const noTime = 0.001;

/**
 * The blocks of work between an option's waits, with the shortest and longest wait after each, counted from its end.
 * A wait that is over by the time the crew has tidied up divides nothing. Example: a fast base, 4 h, then scrape and clear:
 * two blocks, the first with a cure of 4 h less what came after the base.
 */
export function jobWork(clock: Clock): JobWork {
  const runs = runsOf(clock.tasks);
  const blocks: WorkBlock[] = [];
  /** When each coat is down if every block follows as soon as it may, from the start of the first. */
  const down = new Map<string, number>();
  let starts = 0;
  for (const [at, tasks] of runs.entries()) {
    const [before, after] = [runs[at - 1], runs[at + 1]];
    const [head, tail] = edgesOf(tasks, before, after, clock);
    const length = sumHours([head, ...tasks.map(({ added }) => added), tail]);
    for (const task of tasks)
      if (task.lays !== undefined) down.set(task.lays, starts + head + workedBefore(task, tasks) + task.takes);
    const ends = starts + length;
    const cure = after === undefined ? { least: hours(0) } : cureBetween(tasks, after, tail, clock, { down, ends });
    blocks.push({
      name: nameOf(tasks),
      length,
      grinder: tasks.some(({ grinds }) => grinds),
      cure,
      tasks,
      ...lastCoat(tasks, head),
    });
    starts = ends + cure.least;
  }
  return { blocks };
}

/** Tasks that follow each other without a wait in between; a night between two days of a visit is none. */
function runsOf(tasks: readonly ClockTask[]): ClockTask[][] {
  const runs: ClockTask[][] = [];
  const down = new Map<string, ClockHour>();
  for (const task of tasks) {
    const run = runs.at(-1);
    if (run === undefined || (!task.beside && isApart(run, task, down))) runs.push([task]);
    else run.push(task);
    if (task.lays !== undefined) down.set(task.lays, task.finish);
  }
  return runs;
}

function isApart(run: readonly ClockTask[], task: ClockTask, down: ReadonlyMap<string, ClockHour>): boolean {
  if (task.visit !== run[0]?.visit || run.some(({ wait }) => wait > 0)) return true;
  const laid = task.over === undefined ? undefined : down.get(task.over.coat);
  return laid !== undefined && task.over !== undefined && laid + task.over.from - endOf(run) > noTime;
}

function lastCoat(tasks: readonly ClockTask[], head: Hours): Pick<WorkBlock, 'lastCoatAfter'> {
  const last = tasks.filter(({ lays }) => lays !== undefined).at(-1);
  return last === undefined ? {} : { lastCoatAfter: sumHours([head, workedBefore(last, tasks)]) };
}

/** Setting up before a block and loading out after it. */
function edgesOf(
  tasks: readonly ClockTask[],
  before: readonly ClockTask[] | undefined,
  after: readonly ClockTask[] | undefined,
  { visits }: Clock,
): readonly [Hours, Hours] {
  const own = tasks[0]?.visit;
  const visit = visits.find((each) => each.visit === own);
  const opens = before?.[0]?.visit !== own;
  const closes = after?.[0]?.visit !== own;
  const none = hours(0);
  return [opens ? (visit?.setUp ?? none) : none, closes ? (visit?.loadOut ?? none) : none];
}

/** What a block is called: by the coats it lays, else by its first task. */
function nameOf(tasks: readonly ClockTask[]): string {
  const coats = [...new Set(tasks.flatMap(({ lays }) => lays ?? []))];
  const words = coats.length > 0 ? coats.join(' and ') : (tasks[0]?.label ?? '');
  return words.toLowerCase();
}

interface SoFar {
  readonly down: ReadonlyMap<string, number>;
  readonly ends: number;
}

/**
 * From the end of a block with its loading out to the start of the next with its setting up: long enough for every coat
 * that the next one goes over, whichever block laid it. Windows are those of coats of the block itself.
 */
function cureBetween(
  tasks: readonly ClockTask[],
  next: readonly ClockTask[],
  tail: Hours,
  clock: Clock,
  { down, ends }: SoFar,
): Cure {
  const [head] = edgesOf(next, tasks, undefined, clock);
  const leads = (task: ClockTask): number => head + workedBefore(task, next);
  const typed = tasks.map(({ wait }) => (wait > 0 ? wait - head - tail : 0));
  const waits = next.flatMap((task) => {
    const laid = task.over === undefined ? undefined : down.get(task.over.coat);
    return laid === undefined || task.over === undefined ? [] : [laid + task.over.from - leads(task) - ends];
  });
  const least = hours(Math.max(0, ...typed, ...waits));
  const windows = next.flatMap((task): number[] => {
    const laid = tasks.filter(({ lays }) => lays !== undefined && lays === task.over?.coat).at(-1)?.lays;
    if (laid === undefined || task.over?.until === undefined) return [];
    return [(down.get(laid) ?? ends) + task.over.until - leads(task) - ends];
  });
  return windows.length === 0 ? { least } : { least, most: hours(Math.max(0, Math.min(...windows))) };
}

function workedBefore(task: ClockTask, tasks: readonly ClockTask[]): Hours {
  return sumHours([hours(0), ...tasks.slice(0, tasks.indexOf(task)).map(({ added }) => added)]);
}

function endOf(tasks: readonly ClockTask[]): ClockHour {
  return clockHour(Math.max(...tasks.map(({ finish }) => finish)));
}
