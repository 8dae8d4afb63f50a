import { describe, expect, it } from 'vitest';
import { clockHour, hours } from '../../../src/units/hours.ts';
import { criticalPath, type Task, type Wait } from './critical-path.ts';

const wait = (task: string, least: number, most?: number): Wait => ({
  task,
  least: hours(least),
  ...(most === undefined ? {} : { most: hours(most) }),
});
const task = (name: string, length: number, ...after: readonly Wait[]): Task => ({
  name,
  length: hours(length),
  after,
});
const from = clockHour(0);

describe('a recoat window', () => {
  it('holds the coat before it back until the coat after it can come', () => {
    const tasks = [
      task('base', 1),
      task('other floor', 8),
      task('clear', 1, wait('base', 2, 3), wait('other floor', 0)),
    ];
    const found = criticalPath(tasks, from);
    expect(found).toMatchObject({ kind: 'path', ends: 9 });
    // Clear at 8, no more than 3 h after the base: the base is not begun before 4, and may wait until 5.
    const base = found.kind === 'path' ? found.tasks[0] : undefined;
    expect(base).toMatchObject({ name: 'base', starts: 4, latestStart: 5, totalFloat: 1, freeFloat: 1 });
  });

  it('that nothing can keep is told with the task, what is before it, and by how much', () => {
    const tasks = [
      task('base', 1),
      task('fill', 8, wait('base', 0)),
      task('clear', 1, wait('base', 2, 3), wait('fill', 0)),
    ];
    expect(criticalPath(tasks, from)).toEqual({ kind: 'missed', task: 'clear', before: 'base', over: 5 });
  });

  it('leaves no float to what it follows at once', () => {
    const found = criticalPath([task('base', 1), task('flake', 1, wait('base', 0, 0)), task('long', 5)], from);
    const floats = found.kind === 'path' ? found.tasks.map(({ totalFloat, freeFloat }) => [totalFloat, freeFloat]) : [];
    // Base and flake may both be 3 h later, but neither without the other.
    expect(floats).toEqual([
      [3, 0],
      [3, 0],
      [0, 0],
    ]);
  });
});

describe('tasks', () => {
  it('may be listed in any order, and are told in that order', () => {
    const found = criticalPath([task('clear', 1, wait('base', 2)), task('base', 1)], from);
    expect(found.kind === 'path' && found.tasks.map(({ name, starts }) => [name, starts])).toEqual([
      ['clear', 3],
      ['base', 0],
    ]);
  });

  it('that are none end where they begin', () => {
    expect(criticalPath([], clockHour(7))).toEqual({ kind: 'path', tasks: [], ends: 7 });
  });

  it('that wait for each other in a circle are refused with the circle', () => {
    const tasks = [task('a', 1, wait('c', 0)), task('b', 1, wait('a', 0)), task('c', 1, wait('b', 0)), task('d', 1)];
    expect(criticalPath(tasks, from)).toEqual({ kind: 'circle', tasks: ['a', 'c', 'b'] });
  });

  it('that wait for a stranger, or stand there twice, are refused', () => {
    expect(criticalPath([task('a', 1, wait('x', 0))], from)).toEqual({ kind: 'unknown', task: 'a', wanted: 'x' });
    expect(criticalPath([task('a', 1), task('a', 2)], from)).toEqual({ kind: 'twice', task: 'a' });
  });

  it.each([
    ['a length that is none', task('a', Number.NaN)],
    ['a negative wait', task('a', 1, wait('b', -1))],
    ['a window without end', task('a', 1, wait('b', 0, Number.POSITIVE_INFINITY))],
  ])('of %s are refused', (_words, bad) => {
    expect(criticalPath([task('b', 1), bad], from)).toEqual({ kind: 'bad_hours', task: 'a' });
  });
});
