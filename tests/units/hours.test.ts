import { describe, expect, it } from 'vitest';
import {
  clockHour,
  clockText,
  hours,
  hoursBetween,
  hoursText,
  later,
  sumHours,
  timeOfDayText,
  toldWait,
  waitText,
} from '../../src/units/hours.ts';

describe('a time of day', () => {
  it.each([
    [0, 'midnight'],
    [0.2, '12:12 am'],
    [7, '7 am'],
    [7.5, '7:30 am'],
    [12.05, '12:03 pm'],
    [18 + 59 / 60, '6:59 pm'],
    [23.999, 'midnight next day'],
    [25.25, '1:15 am next day'],
    [60, 'noon 2 days later'],
    [-1, '11 pm the day before'],
    [-25, '11 pm 2 days before'],
    [9.99999999999, '10 am'],
  ])('of %f h reads %s', (time, words) => {
    expect(clockText(clockHour(time))).toBe(words);
  });

  it('is said without its day where the day stands elsewhere: 25.25 h and 1.25 h are both 1:15 am', () => {
    expect([25.25, 1.25, -22.75].map((time) => timeOfDayText(clockHour(time)))).toEqual(Array(3).fill('1:15 am'));
    expect([36, 24, 43.999].map((time) => timeOfDayText(clockHour(time)))).toEqual(['noon', 'midnight', '8 pm']);
  });

  it('2.5 h after 7 am is 9:30 am, and 7 am is 2.5 h before it', () => {
    expect(later(clockHour(7), hours(2.5))).toBe(9.5);
    expect(hoursBetween(clockHour(9.5), clockHour(7))).toBe(-2.5);
  });
});

describe('lengths of time', () => {
  it('add up, none of them to 0', () => {
    expect(sumHours([hours(1.5), hours(0.75)])).toBe(2.25);
    expect(sumHours([])).toBe(0);
  });

  it('read with their unit', () => {
    expect(hoursText(hours(1))).toBe('1 h');
    expect(hoursText(hours(0.75))).toBe('0.75 h');
  });
});

describe('a wait as a customer is told it', () => {
  it.each([
    [0, '0 hours'],
    [1, 'an hour'],
    [6, '6 hours'],
    [6 + 1e-9, '6 hours'],
    [6.2, '7 hours'],
    [48, '48 hours'],
    [48.5, '2½ days'],
    [60, '2½ days'],
    [60.1, '3 days'],
    [72, '3 days'],
    [79, '3½ days'],
    [85, '4 days'],
    [168, '7 days'],
  ])('of %f h is %s', (length, words) => {
    expect(waitText(hours(length))).toBe(words);
  });

  it('is never sooner than it is, and never half a day later', () => {
    for (let length = 0; length < 300; length += 0.37) {
      const told = toldWait(hours(length));
      expect(told).toBeGreaterThanOrEqual(length);
      expect(told - length).toBeLessThan(12);
    }
  });
});
