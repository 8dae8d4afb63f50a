import { describe, expect, it } from 'vitest';
import { instantDay, instantWords } from '../../../src/views/parts/instant-words.ts';

/** An instant of a clock on the wall where this runs, as it is stored. */
function stored(hour: number, minute: number): string {
  return new Date(2026, 4, 31, hour, minute).toISOString();
}

describe('an instant as people say it where they are', () => {
  it('is on the day of their own calendar, early and late: May 31, 2026', () => {
    expect([stored(0, 5), stored(12, 0), stored(23, 55)].map(instantDay)).toEqual(Array(3).fill('May 31, 2026'));
  });

  it('has its time on twelve hours: 7 am, 2:05 pm, noon', () => {
    expect([stored(7, 0), stored(14, 5), stored(12, 0)].map(instantWords)).toEqual([
      'May 31, 2026, 7 am',
      'May 31, 2026, 2:05 pm',
      'May 31, 2026, noon',
    ]);
  });

  it('that is none is said as it stands', () => {
    expect([instantDay('soon'), instantWords('soon')]).toEqual(['soon', 'soon']);
  });
});
