import { expect, it } from 'vitest';
import { serialDay } from '../../../src/units/serial-day.ts';
import { madeOnDayOf, newQuoteAt } from '../../../src/views/app/new-quote-at.ts';

it('a quote is made on the day of its time, as the invented one is', () => {
  const at = '2026-05-31T23:59:00.000Z';
  expect(serialDay('2026-05-31')).toBeGreaterThan(0);
  expect(madeOnDayOf(at)).toEqual({ madeOn: serialDay('2026-05-31') });
  expect(newQuoteAt(at).madeOn).toBe(serialDay('2026-05-31'));
});
