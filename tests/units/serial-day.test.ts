import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isSerialDay, readIsoDate, spokenDate, writeIsoDate } from '../../src/units/serial-day.ts';

describe('serial days', () => {
  it.each([
    ['1899-12-30', 0],
    ['1900-03-01', 61],
    ['1970-01-01', 25569],
    ['2000-02-29', 36585],
    ['2026-03-09', 46090],
    ['9999-12-31', 2958465],
  ])('counts %s as day %d, and back', (text, day) => {
    expect(readIsoDate(text)).toEqual({ kind: 'day', day });
    expect(writeIsoDate(day)).toBe(text);
  });

  it('writes 46090.75, a quarter past a day, as its date', () => {
    expect(writeIsoDate(46090.75)).toBe('2026-03-09');
  });

  it.each(['2026-02-29', '2026-13-01', '2026-04-31', '2026-00-10', '2026-01-00', '1900-02-29'])(
    'finds no day %s',
    (text) => {
      expect(readIsoDate(text)).toMatchObject({ kind: 'fault', reason: expect.stringContaining(`no day ${text}`) });
    },
  );

  it.each(['03/09/2026', '2026-3-9', '26-03-09', '', 'today', '2026-03-09T00:00'])(
    'wants year-month-day, not “%s”',
    (text) => {
      expect(readIsoDate(text)).toMatchObject({ kind: 'fault', reason: expect.stringContaining('2026-03-09') });
    },
  );

  it.each(['1899-12-29', '0050-01-01'])('refuses %s, before the first day', (text) => {
    expect(readIsoDate(text)).toMatchObject({ kind: 'fault', reason: expect.stringContaining('1899-12-30') });
  });

  it('throws for days it cannot write', () => {
    for (const day of [-1, 2958466, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(isSerialDay(day)).toBe(false);
      expect(() => writeIsoDate(day)).toThrow(RangeError);
    }
  });

  it('reads back every day it writes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2958465 }), (day) => {
        expect(readIsoDate(writeIsoDate(day))).toEqual({ kind: 'day', day });
      }),
    );
  });

  it('says 46090 as Mar 9, 2026, and day 0 as no date', () => {
    expect([46090, 46090.9, 0, -1].map(spokenDate)).toEqual(['Mar 9, 2026', 'Mar 9, 2026', 'no date', 'not a date']);
  });
});
