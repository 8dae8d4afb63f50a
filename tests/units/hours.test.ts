import { describe, expect, it } from 'vitest';
import {
  clockHour,
  clockText,
  hours,
  hoursBetween,
  hoursText,
  later,
  sumHours,
  toldWait,
  waitText,
} from '../../src/units/hours.ts';

describe('a time of day', () => {
  it.each([
    [0, '00:00'],
    [7.5, '07:30'],
    [18 + 59 / 60, '18:59'],
    [23.999, '00:00 next day'],
    [25.25, '01:15 next day'],
    [60, '12:00 2 days later'],
    [-1, '23:00 the day before'],
    [-25, '23:00 2 days before'],
    [9.99999999999, '10:00'],
  ])('of %f h reads %s', (time, words) => {
    expect(clockText(clockHour(time))).toBe(words);
  });

  it('2.5 h after 07:00 is 09:30, and 07:00 is 2.5 h before it', () => {
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
