import { describe, expect, it } from 'vitest';
import { readClock } from '../../src/quote/clock.ts';
import { smallClock } from '../helpers/small-clock.ts';

const tasks = [
  { task: 'grind', start: 8.5, finish: 10.5, elapsed: 2, clock_added: 2, rate: { formula: 'grind_rate' } },
  { task: 'edges', start: 8.5, finish: 11, elapsed: 2.5, clock_added: 0.5, joined: 1, people_at_it: 1 },
  { task: 'lay_base', start: 11, finish: 12, elapsed: 1, clock_added: 1, lays: 'base' },
  { task: 'abrade', include: 0 },
  { task: 'scrape', start: 15, finish: 16, elapsed: 1, clock_added: 4, over: 'base' },
];

function read(over: Parameters<typeof smallClock>[0]) {
  const reading = readClock(smallClock(over));
  if (reading.kind !== 'clock') throw new Error(JSON.stringify(reading));
  return reading.clock;
}

describe('the clock of an option', () => {
  const clock = read({ tasks, coats: [{ coat: 'base' }] });

  it('has the tasks that are done, in order, at their hours', () => {
    expect(clock.tasks.map(({ row, start, finish }) => [row, start, finish])).toEqual([
      ['grind', 8.5, 10.5],
      ['edges', 8.5, 11],
      ['lay_base', 11, 12],
      ['scrape', 15, 16],
    ]);
  });

  it('adds only the half hour to the clock by which the edges outlast the grinding they run beside', () => {
    expect(clock.tasks.map(({ added, takes }) => [added, takes])).toEqual([
      [2, 2],
      [0.5, 2.5],
      [1, 1],
      [1, 1],
    ]);
  });

  it('knows the task at the grinder’s rate, what a task lays and what it is done to', () => {
    expect(clock.tasks.map(({ grinds }) => grinds)).toEqual([true, false, false, false]);
    expect(clock.tasks.map(({ lays }) => lays)).toEqual([undefined, undefined, 'Base', undefined]);
    expect(clock.tasks.at(-1)?.over).toEqual({ coat: 'Base', from: 3, until: 24 });
  });

  it('has the one visit that is used, set up 0.5 h and loaded out 0.5 h, and leaves the site by 16:30', () => {
    expect(clock.visits).toMatchObject([
      { visit: 1, arrives: 8, setUp: 0.5, loadOut: 0.5, worked: 9, paid: 16, crewDays: 1 },
    ]);
    expect(clock.day).toEqual({ begins: 7, loading: 0.5, drive: 0.5, leaves: 16.5, coatsUntil: 24 });
  });
});

it('a coat that flake is thrown into has no window', () => {
  const clock = read({ tasks, coats: [{ coat: 'base', to_refusal: 1 }] });
  expect(clock.tasks.at(-1)?.over).toEqual({ coat: 'Base', from: 3 });
});

it('a coat that is left out is gone over by nothing', () => {
  const clock = read({ tasks, coats: [{ coat: 'base', include: 0 }] });
  expect(clock.tasks.at(-1)?.over).toBeUndefined();
});

it('a sheet without the hour its day begins at tells no times', () => {
  expect(readClock(smallClock({ tasks, coats: [{ coat: 'base' }], without: ['day_begins'] }))).toEqual({
    kind: 'absent',
  });
});

it('a clock that divides by 0 says where and why', () => {
  const reading = readClock(smallClock({ tasks, coats: [{ coat: 'base' }], failing: 'drive_time' }));
  expect(reading).toMatchObject({ kind: 'failed' });
  expect(reading.kind === 'failed' && reading.reason).toMatch(/^drive_time cannot be worked out: nil is 0/);
});
