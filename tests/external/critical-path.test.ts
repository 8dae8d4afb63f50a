import { describe, expect, it } from 'vitest';
import { clockHour, clockText, hours } from '../../src/units/hours.ts';
import { criticalPath, type Task, type TimedTask } from './second-opinion/critical-path.ts';

/*
 * A flake floor by a crew of two from 07:00. Derived: worked out by hand with the formulas of the critical path method
 * (activity on node: start = latest finish before it + lag, total float = latest start - earliest start), as a
 * construction manual gives them.
 */
const task = (name: string, length: number, ...after: readonly (readonly [string, number?])[]): Task => ({
  name,
  length: hours(length),
  after: after.map(([before, least = 0]) => ({ task: before, least: hours(least) })),
});

const floor = (cure: number): readonly Task[] => [
  task('set up', 0.75),
  task('grind', 3, ['set up']),
  task('chase and fill', 1, ['grind']),
  task('stem wall', 0.5, ['grind']),
  task('vacuum', 0.5, ['chase and fill', 0.5]),
  task('base and broadcast', 1, ['vacuum'], ['stem wall']),
  task('scrape', 1.25, ['base and broadcast', cure]),
  task('topcoat', 1, ['scrape']),
];

function scheduled(tasks: readonly Task[]): { readonly of: (name: string) => TimedTask; readonly ends: number } {
  const found = criticalPath(tasks, clockHour(7));
  if (found.kind !== 'path') throw new Error(JSON.stringify(found));
  const of = (name: string): TimedTask => {
    const timed = found.tasks.find((one) => one.name === name);
    if (timed === undefined) throw new Error(`No ${name}`);
    return timed;
  };
  return { of, ends: found.ends };
}

describe('a flake floor from 07:00', () => {
  const { of, ends } = scheduled(floor(3));

  it.each([
    ['set up', 0],
    ['grind', 0.75],
    ['chase and fill', 3.75],
    ['vacuum', 5.25],
    ['base and broadcast', 5.75],
    ['scrape', 9.75],
    ['topcoat', 11],
  ])('begins to %s after %f h, and not a minute later', (name, start) => {
    expect(of(name).starts - 7).toBeCloseTo(start, 12);
    expect(of(name)).toMatchObject({ critical: true, totalFloat: 0, freeFloat: 0 });
  });

  it('ends after 12 h, at 19:00', () => {
    expect(ends - 7).toBeCloseTo(12, 12);
    expect(clockText(clockHour(ends))).toBe('7 pm');
  });

  it('may touch up the stem wall beside the filling, from 3.75 to 5.25 h: a float of 1.5 h', () => {
    const wall = of('stem wall');
    expect([wall.starts - 7, wall.latestStart - 7, wall.totalFloat, wall.freeFloat]).toEqual([3.75, 5.25, 1.5, 1.5]);
    expect(wall.critical).toBe(false);
  });

  it('takes feet after 24 h, at 07:00 of the next day, and cars after 60 h, at 19:00 of the third', () => {
    const used = scheduled([...floor(3), task('feet', 0, ['topcoat', 12]), task('cars', 0, ['topcoat', 48])]);
    expect([used.of('feet').starts - 7, used.of('cars').starts - 7]).toEqual([24, 60]);
    expect(clockText(used.of('feet').starts)).toBe('7 am next day');
    expect(clockText(used.of('cars').starts)).toBe('7 pm 2 days later');
  });

  it('ends after 15 h, at 22:00, when the cold doubles the cure of 3 h', () => {
    const cold = scheduled(floor(6));
    expect(cold.ends - 7).toBeCloseTo(15, 12);
    expect(clockText(clockHour(cold.ends))).toBe('10 pm');
  });
});
