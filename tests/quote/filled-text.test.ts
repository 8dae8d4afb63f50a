import { describe, expect, it } from 'vitest';
import { type PricedFloor, priced } from '../helpers/priced-floor.ts';

const flake = 'flake-full-broadcast';
const short = 'hand_grinding_short';

describe('a number in a caution', () => {
  const ground = (set: Readonly<Record<string, number>>): PricedFloor => priced(flake, { set });
  /** Edges of so many hours of grinding by hand. */
  const byHand = (hours: number, set: Readonly<Record<string, number>> = {}): PricedFloor =>
    priced(flake, { set, instead: { hand_grinding_hours: hours } });

  it('that was worked out is rounded: hand grinding is said to a tenth of an hour', () => {
    const floor = ground({ hand_grinding_limit: 1 });
    const said = /comes to ([\d.]+) h/.exec(floor.check(short).says)?.[1];
    expect(floor.number('hand_grinding_hours')).not.toBe(Number(said));
    expect(Number(said)).toBeCloseTo(floor.number('hand_grinding_hours'), 1);
    expect(said).toMatch(/^\d+(\.\d)?$/);
  });

  it('that somebody typed is said as typed: a limit of 1.25 h, and 5.125 h in place of what was worked out', () => {
    expect(ground({ hand_grinding_limit: 1.25 }).check(short).says).toContain('one person over 1.25 h in a shift');
    expect(byHand(5.125, { hand_grinding_limit: 1.25 }).check(short).says).toContain('comes to 5.125 h');
  });

  it('is not rounded until it looks like the one it is held against', () => {
    const worked = ground({ hand_grinding_limit: 1 }).number('hand_grinding_hours');
    // A limit typed to a tenth, as near below the hours as a tenth comes.
    const limit = Math.floor(worked * 10) / 10;
    const floor = ground({ hand_grinding_limit: limit });
    const [, comes, over] = /comes to ([\d.]+ h).*one person over ([\d.]+ h)/.exec(floor.check(short).says) ?? [];
    expect(over).toBe(`${limit} h`);
    expect(comes).not.toBe(over);
  });

  it('of a date is in words: a wait for a reading of January 19 says Jan 19, 2026', () => {
    const floor = priced(flake, { set: { reading_taken: 1, reading_date: 46041, humidity: 0.95 } });
    expect(floor.check('humidity_low_enough').says).toMatch(/Read by: nobody is named; Jan 19, 2026\.$/);
  });
});

describe('hours after midnight in a sentence', () => {
  it('are a time of day: a reading at 13.5 h was read at 1:30 pm', () => {
    const set = { reading_taken: 1, read_by: 'owner', reading_date: 46041, start_date: 46041, reading_hour: 13.5 };
    expect(priced(flake, { set }).said('day_reading')).toBe(
      'Read by: nobody is named; role: owner; Jan 19, 2026, 1:30 pm.',
    );
  });

  it('are told with the day where they run into the next: a crew that is on site until 25.5 h, 1:30 am', () => {
    const floor = priced(flake, { instead: { stays_until: 25.5 } });
    expect(floor.check('day_before_midnight').says).toBe(
      'The crew would be on site until 1:30 am next day. Let the day begin sooner or be shorter.',
    );
  });
});
