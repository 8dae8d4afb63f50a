import { describe, expect, it } from 'vitest';
import { serialDayOf, weekdayOf } from '../../src/formula/calendar.ts';

describe('DATE', () => {
  it.each([
    [1899, 12, 30, 693_961, 'years below 1900 count from 1900: 3799-12-30'],
    [1900, 1, 1, 2, 'two days after the epoch'],
    [2026, 1, 5, 46_027, '2026-01-05'],
    [2024, 2, 29, 45_351, 'a leap day'],
    [2023, 2, 29, 44_986, 'no leap year: the 1st of March'],
    [2025, 13, 1, 46_023, 'month 13 is the next January'],
    [2026, 0, 31, 46_022, 'month 0 is the December before'],
    [2026, 1, 0, 46_022, 'day 0 is the last of the month before'],
    [2026, -11, 1, 45_658, 'month -11 is January a year before'],
    [26, 1, 5, 9_502, '1926-01-05'],
    [2026.9, 1.9, 5.9, 46_027, 'parts of numbers do not count'],
    [9999, 12, 31, 2_958_465, 'the last day'],
    [9999, 12, 32, Number.NaN, 'one day more'],
    [10_000, 1, 1, Number.NaN, 'a year too far'],
    [Number.POSITIVE_INFINITY, 1, 1, Number.NaN, 'no year at all'],
  ])('of %d, %d, %d is %d: %s', (year, month, day, wanted) => {
    expect(serialDayOf(year, month, day)).toBe(wanted);
  });

  it('agrees with the calendar of the machine on every first of a month from 1900 to 2100', () => {
    for (let year = 1900; year <= 2100; year += 1) {
      for (let month = 1; month <= 12; month += 1) {
        const days = (Date.UTC(year, month - 1, 1) - Date.UTC(1899, 11, 30)) / 86_400_000;
        expect(serialDayOf(year, month, 1)).toBe(days);
      }
    }
  });
});

describe('WEEKDAY', () => {
  // 2026-01-05 is a Monday.
  it.each([
    [undefined, 2],
    [1, 2],
    [2, 1],
    [3, 0],
    [11, 1],
    [12, 7],
    [13, 6],
    [14, 5],
    [15, 4],
    [16, 3],
    [17, 2],
    [4, Number.NaN],
    [1.5, Number.NaN],
  ])('of a Monday by numbering %s is %d', (numbering, wanted) => {
    expect(weekdayOf(46_027.5, numbering)).toBe(wanted);
  });

  it('agrees with the machine’s calendar over 1,000 days, and has none before the epoch', () => {
    for (let day = 46_000; day < 47_000; day += 1) {
      expect(weekdayOf(day)).toBe(new Date(Date.UTC(1899, 11, 30) + day * 86_400_000).getUTCDay() + 1);
    }
    expect(weekdayOf(-1)).toBeNaN();
  });
});
