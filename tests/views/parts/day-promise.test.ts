import { describe, expect, it } from 'vitest';
import { type DayPromise, dayPromise, promiseWords } from '../../../src/views/parts/day-promise.ts';
import { smallClock } from '../../helpers/small-clock.ts';

function promised(lines: Readonly<Record<string, number>>): DayPromise {
  const promise = dayPromise(smallClock({ lines }));
  if (promise === undefined || promise === 'incomplete') throw new Error('Nothing is promised');
  return promise;
}

describe('what a customer is told of days', () => {
  it('before a start is chosen is hours after the last coat, here 16:00 with walking at 22:00 and driving 3 days on', () => {
    expect(promiseWords(smallClock({}))).toBe(
      'one day on site · walk on it no sooner than 6 hours after the last coat, drive no sooner than 3 days',
    );
  });

  it('once a start is chosen is dates, on the next full hour', () => {
    expect(promiseWords(smallClock({ lines: { start_chosen: 1, walk_at: 22.2 } }))).toBe(
      'one day on site · walk on it no sooner than Mon, Jan 19, 11 pm, drive no sooner than Thu, Jan 22, 4 pm',
    );
  });

  it('rounds 6.2 hours up to 7, and a sum that is a little over 6 to 6', () => {
    expect(promised({ walk_at: 22.2 }).walk.words).toBe('7 hours after the last coat');
    expect(promised({ walk_at: 22 + 1e-9 }).walk.words).toBe('6 hours after the last coat');
  });

  it('beyond 48 hours is days, never sooner than worked out: 85 hours are 4 days, 79 are 3½', () => {
    expect(promised({ drive_at: 16 + 85 }).drive?.words).toBe('4 days after the last coat');
    expect(promised({ drive_at: 16 + 79 }).drive?.words).toBe('3½ days after the last coat');
    expect(promised({ drive_at: 16 + 48 }).drive?.words).toBe('48 hours after the last coat');
  });

  it.each([
    [1, 1, 1, 'one day on site'],
    [1, 3, 3, '3 days on site'],
    [2, 2, 2, '2 days on site'],
    [2, 4, 4, '4 days on site'],
    [2, 2, 3, '2 days on site over 3 days'],
  ])('of %i visits on %i days, %i from the first to the last, is %s', (visits, work_days, calendar_days, words) => {
    expect(promised({ visits, work_days, calendar_days }).days).toBe(words);
  });

  it('speaks of furniture in place of cars where none park', () => {
    const results = smallClock({ lines: { cars_park: 0 } });
    expect(promiseWords(results)).toBe(
      'one day on site · walk on it no sooner than 6 hours after the last coat, furniture no sooner than 24 hours',
    );
    const stated = smallClock({ lines: { cars_park: 0 }, without: ['walk_at'] });
    expect(promiseWords(stated)).not.toContain('drive');
  });

  it('is what the system states where the sheets tell no clock', () => {
    const results = smallClock({ without: ['walk_at'] });
    expect(dayPromise(results)).toBeUndefined();
    expect(promiseWords(results)).toBe(
      '1 visit · walk on it no sooner than 6 hours after the last coat, drive no sooner than 3 days',
    );
  });

  it('promises nothing by a clock that cannot be worked out', () => {
    const failed = smallClock({ failing: 'drive_at' });
    expect(dayPromise(failed)).toBe('incomplete');
    expect(promiseWords(failed)).toBe('The days cannot be worked out.');
  });
});
