import { describe, expect, it } from 'vitest';
import type { DaySpan, WorkDay } from '../../src/quote/work-days.ts';
import { workDays } from '../../src/quote/work-days.ts';
import { clockOf } from '../helpers/clock-of-tasks.ts';

function told(spans: readonly DaySpan[] | undefined): string[] {
  return (spans ?? []).map(({ kind, from, to, task }) => `${task?.row ?? kind} ${from} to ${to}`);
}

function only(days: readonly WorkDay[]): WorkDay {
  expect(days).toHaveLength(1);
  const [day] = days;
  if (day === undefined) throw new Error('There is no day');
  return day;
}

describe('a day of work', () => {
  const oneDay = clockOf([
    { row: 'grind', from: 8.5, to: 10.5 },
    { row: 'edges', from: 8.5, to: 10, beside: true },
    { row: 'base', from: 10.5, to: 11, lays: 'base' },
    { row: 'scrape', from: 15, to: 15.5, over: 'base' },
  ]);

  it('leads from the shop at 7:00 and back without a gap, the wait of 4 h for the base among it', () => {
    const day = only(workDays(oneDay));
    expect(told(day.lead)).toEqual([
      'shop 7 to 7.5',
      'drive 7.5 to 8',
      'set up 8 to 8.5',
      'grind 8.5 to 10.5',
      'base 10.5 to 11',
      'wait 11 to 15',
      'scrape 15 to 15.5',
      'load out 15.5 to 16',
      'drive 16 to 16.5',
    ]);
    expect(told(day.beside)).toEqual(['edges 8.5 to 10']);
  });

  it('tells a coat from other work', () => {
    expect(
      only(workDays(oneDay))
        .lead.filter(({ kind }) => kind === 'coat')
        .map(({ task }) => task?.row),
    ).toEqual(['base']);
  });

  it('in which the work beside takes longer has the rest stand until that is done', () => {
    const day = only(
      workDays(
        clockOf([
          { row: 'grind', from: 8.5, to: 10 },
          { row: 'cracks', from: 8.5, to: 11, beside: true, added: 1 },
        ]),
      ),
    );
    expect(told(day.lead)).toContain('idle 10 to 11');
  });
});

describe('a task that is not done by 16:30, when the crew leaves', () => {
  const split = workDays(clockOf([{ row: 'grind', from: 8.5, to: 34, takes: 10 }]));

  it('goes on at 8:00 next morning, without setting up anew', () => {
    expect(split.map(({ day, lead }) => [day, ...told(lead)])).toEqual([
      [1, 'shop 7 to 7.5', 'drive 7.5 to 8', 'set up 8 to 8.5', 'grind 8.5 to 16.5', 'drive 16.5 to 17'],
      [2, 'shop 31 to 31.5', 'drive 31.5 to 32', 'grind 32 to 34', 'load out 34 to 34.5', 'drive 34.5 to 35'],
    ]);
  });

  it('is finished the same day when only a quarter of an hour is left', () => {
    expect(workDays(clockOf([{ row: 'grind', from: 8.5, to: 16.75 }]))).toHaveLength(1);
  });
});

it('a second visit is a day of its own, set up and loaded out again', () => {
  const days = workDays(
    clockOf([
      { row: 'base', from: 8.5, to: 9.5, lays: 'base' },
      { row: 'scrape', from: 33, to: 34, day: 2, visit: 2, over: 'base' },
    ]),
  );
  expect(days.map(({ visit }) => visit)).toEqual([1, 2]);
  expect(told(days[1]?.lead)).toEqual([
    'shop 31 to 31.5',
    'drive 31.5 to 32',
    'set up 32 to 32.5',
    'wait 32.5 to 33',
    'scrape 33 to 34',
    'load out 34 to 34.5',
    'drive 34.5 to 35',
  ]);
});

it('a second visit that begins later in the day, when the coat is ready, leaves the shop an hour before', () => {
  const days = workDays(
    clockOf(
      [
        { row: 'base', from: 8.5, to: 9.5, lays: 'base' },
        { row: 'scrape', from: 37, to: 38, day: 2, visit: 2, over: 'base' },
      ],
      36.5,
    ),
  );
  expect(told(days[1]?.lead).slice(0, 4)).toEqual([
    'shop 35.5 to 36',
    'drive 36 to 36.5',
    'set up 36.5 to 37',
    'scrape 37 to 38',
  ]);
});
