import { describe, expect, it } from 'vitest';
import { serialDay } from '../../../src/units/serial-day.ts';
import { dateWords, momentWords } from '../../../src/views/parts/date-words.ts';

const day = (iso: string): number => serialDay(iso) ?? Number.NaN;

describe('a date in words', () => {
  it.each([
    ['2026-01-19', 'Mon, Jan 19'],
    ['2024-02-29', 'Thu, Feb 29'],
    ['2027-12-31', 'Fri, Dec 31'],
  ])('of %s is %s', (iso, words) => {
    expect(dateWords(day(iso))).toBe(words);
  });

  it('says no sooner than the next full hour: 18.1 h after the midnight of 2026-01-19 is 7 pm', () => {
    expect(momentWords(day('2026-01-19'), 18.1)).toBe('Mon, Jan 19, 7 pm');
    expect(momentWords(day('2026-01-19'), 18)).toBe('Mon, Jan 19, 6 pm');
  });

  it('goes on over midnight, noon and the end of a month', () => {
    expect(momentWords(day('2026-01-31'), 36)).toBe('Sun, Feb 1, noon');
    expect(momentWords(day('2026-01-19'), 23.5)).toBe('Tue, Jan 20, midnight');
    expect(momentWords(day('2026-01-19'), 79.2)).toBe('Thu, Jan 22, 8 am');
  });
});
