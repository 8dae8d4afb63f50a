import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clockHour, hours } from '../../../src/units/hours.ts';
import { printedSeed } from '../../helpers/random-seed.ts';
import { criticalPath, type Task, type Wait } from './critical-path.ts';

const seed = printedSeed('critical-path.property');
const from = clockHour(7);

/** A task waits for some of those before it; whole hours, so that a search of whole hours finds all there is. */
const waits = (windows: boolean) =>
  fc.record({
    back: fc.integer({ min: 1, max: 4 }),
    least: fc.integer({ min: 0, max: 3 }),
    room: windows ? fc.option(fc.integer({ min: 0, max: 2 })) : fc.constant(null),
  });

const networks = (most: number, windows: boolean): fc.Arbitrary<Task[]> =>
  fc
    .array(fc.record({ length: fc.integer({ min: 0, max: 4 }), waits: fc.array(waits(windows), { maxLength: 3 }) }), {
      minLength: 1,
      maxLength: most,
    })
    .map((made) =>
      made.map(({ length, waits: behind }, at) => ({
        name: `${at}`,
        length: hours(length),
        after: behind.flatMap(({ back, least, room }): Wait[] => {
          if (back > at) return [];
          const most = room === null ? {} : { most: hours(least + room) };
          return [{ task: `${at - back}`, least: hours(least), ...most }];
        }),
      })),
    );

/** The longest way to the finish of a task, each way followed to its beginning. */
function longestTo(task: Task, tasks: readonly Task[]): number {
  const before = task.after.map((wait) => {
    const earlier = tasks.find(({ name }) => name === wait.task);
    return wait.least + (earlier === undefined ? Number.NaN : longestTo(earlier, tasks));
  });
  return task.length + Math.max(0, ...before);
}

function keepsWaits(task: Task, start: number, starts: ReadonlyMap<string, number>, tasks: readonly Task[]): boolean {
  return task.after.every(({ task: name, least, most = Number.POSITIVE_INFINITY }) => {
    const length = tasks.find((other) => other.name === name)?.length ?? Number.NaN;
    const wait = start - ((starts.get(name) ?? Number.NaN) + length);
    return wait >= least && wait <= most;
  });
}

/** The earliest end over all whole-hour starts up to `latest`, tried one by one. */
function searchedEnd(tasks: readonly Task[], latest: number, starts = new Map<string, number>()): number {
  const task = tasks[starts.size];
  if (task === undefined) return Math.max(...tasks.map(({ name, length }) => (starts.get(name) ?? 0) + length));
  let best = Number.POSITIVE_INFINITY;
  for (let start = 0; start <= latest; start += 1) {
    if (!keepsWaits(task, start, starts, tasks)) continue;
    best = Math.min(best, searchedEnd(tasks, latest, new Map(starts).set(task.name, start)));
  }
  return best;
}

describe('tasks that wait for each other', () => {
  it('end with the longest way through them, and none starts before its wait is over', () => {
    fc.assert(
      fc.property(networks(9, false), (tasks) => {
        const found = criticalPath(tasks, from);
        if (found.kind !== 'path') throw new Error(JSON.stringify(found));
        const longest = Math.max(...tasks.map((task) => longestTo(task, tasks)));
        expect(found.ends - from).toBe(longest);
        const starts = new Map(found.tasks.map(({ name, starts: start }) => [name, start - from]));
        for (const task of tasks) expect(keepsWaits(task, starts.get(task.name) ?? -1, starts, tasks)).toBe(true);
      }),
      { seed, numRuns: 500 },
    );
  });

  it('have an unbroken chain without float, and float that may be used up without a later end', () => {
    fc.assert(
      fc.property(networks(7, true), (tasks) => {
        const found = criticalPath(tasks, from);
        if (found.kind !== 'path') return;
        const latest = new Map(found.tasks.map(({ name, latestStart }) => [name, latestStart - from]));
        expect(found.tasks.some(({ critical }) => critical)).toBe(true);
        for (const { name, totalFloat, freeFloat, latestStart, finishes, starts } of found.tasks) {
          expect(freeFloat).toBeGreaterThanOrEqual(0);
          expect(totalFloat).toBeGreaterThanOrEqual(freeFloat);
          expect(latestStart + finishes - starts).toBeLessThanOrEqual(found.ends);
          const task = tasks.find((one) => one.name === name);
          expect(task && keepsWaits(task, latest.get(name) ?? -1, latest, tasks)).toBe(true);
        }
      }),
      { seed, numRuns: 500 },
    );
  });

  it('and keep windows end when a search of all starts finds the earliest end, or are missed where it finds none', () => {
    const kinds = { path: 0, missed: 0 };
    fc.assert(
      fc.property(networks(4, true), (tasks) => {
        const found = criticalPath(tasks, from);
        if (found.kind !== 'path' && found.kind !== 'missed') throw new Error(JSON.stringify(found));
        kinds[found.kind] += 1;
        const searched = searchedEnd(tasks, 24);
        expect(found.kind === 'path' ? found.ends - from : Number.POSITIVE_INFINITY).toBe(searched);
      }),
      { seed, numRuns: 300 },
    );
    expect(Math.min(kinds.path, kinds.missed)).toBeGreaterThan(5);
  });
});
