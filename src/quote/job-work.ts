import type { Block, Cure } from '../trade/crew-day.ts';
import { type ClockHour, clockHour, type Hours, hours, hoursBetween, later, sumHours } from '../units/hours.ts';
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
  return { blocks: runs.map((tasks, at) => blockOf(tasks, runs[at - 1], runs[at + 1], clock)) };
}

/** Tasks that follow each other without a wait in between; a night between two days of a visit is none. */
function runsOf(tasks: readonly ClockTask[]): ClockTask[][] {
  const runs: ClockTask[][] = [];
  for (const task of tasks) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run === undefined || last === undefined || (!task.beside && isApart(run, last, task))) runs.push([task]);
    else run.push(task);
  }
  return runs;
}

function isApart(run: readonly ClockTask[], last: ClockTask, task: ClockTask): boolean {
  if (task.visit !== last.visit) return true;
  return task.over !== undefined && hoursBetween(endOf(run), task.ready) > noTime;
}

function blockOf(
  tasks: readonly ClockTask[],
  before: readonly ClockTask[] | undefined,
  after: readonly ClockTask[] | undefined,
  clock: Clock,
): WorkBlock {
  const [head, tail] = edgesOf(tasks, before, after, clock);
  const coats = tasks.filter((task) => task.lays !== undefined);
  const lastCoat = coats.at(-1);
  return {
    name: nameOf(tasks),
    length: sumHours([head, ...tasks.map(({ added }) => added), tail]),
    grinder: tasks.some(({ grinds }) => grinds),
    cure: after === undefined ? { least: hours(0) } : cureBetween(tasks, after, tail, clock),
    tasks,
    ...(lastCoat !== undefined && { lastCoatAfter: sumHours([head, workedBefore(lastCoat, tasks)]) }),
  };
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

/** From the end of a block with its loading out to the start of the next with its setting up. */
function cureBetween(tasks: readonly ClockTask[], next: readonly ClockTask[], tail: Hours, clock: Clock): Cure {
  const [head] = edgesOf(next, tasks, undefined, clock);
  const ends = later(endOf(tasks), tail);
  const fromEnd = (time: ClockHour, lead: Hours): Hours => hours(Math.max(0, hoursBetween(ends, time) - lead));
  const ready = next[0]?.ready ?? ends;
  const least = fromEnd(ready, head);
  const windows = next.flatMap((task): Hours[] => {
    const laid = tasks.filter(({ lays }) => lays !== undefined && lays === task.over?.coat).at(-1);
    if (laid === undefined || task.over?.until === undefined) return [];
    return [fromEnd(later(laid.finish, task.over.until), sumHours([head, workedBefore(task, next)]))];
  });
  return windows.length === 0 ? { least } : { least, most: hours(Math.min(...windows)) };
}

function workedBefore(task: ClockTask, tasks: readonly ClockTask[]): Hours {
  return sumHours([hours(0), ...tasks.slice(0, tasks.indexOf(task)).map(({ added }) => added)]);
}

function endOf(tasks: readonly ClockTask[]): ClockHour {
  return clockHour(Math.max(...tasks.map(({ finish }) => finish)));
}
