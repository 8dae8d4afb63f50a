import { describe, expect, it } from 'vitest';
import { dayRows } from '../../../src/views/compare/day-rows.ts';
import { smallClock } from '../../helpers/small-clock.ts';

type Lines = Readonly<Record<string, number>>;

function rowsOf(...options: readonly Lines[]) {
  const named = options.map((lines, at) => ({ id: `${at}`, title: `${at}`, results: smallClock({ lines }) }));
  return (dayRows(named) ?? []).map(({ label, cells, differs }) => [
    label,
    differs,
    ...cells.map(({ text, difference }) => (difference === '' ? text : `${text}, ${difference}`)),
  ]);
}

describe('days side by side', () => {
  it('are told in the customer’s words, with how much later the other is', () => {
    expect(
      rowsOf({}, { visits: 2, work_days: 2, calendar_days: 2, last_coat_done: 36, walk_at: 60, drive_at: 108 }),
    ).toEqual([
      ['Work', true, 'one day on site', '2 days on site'],
      [
        'Walk on it, no sooner than',
        true,
        '6 hours after the last coat',
        '24 hours after the last coat, 18 hours later',
      ],
      [
        'Furniture on it, no sooner than',
        true,
        '24 hours after the last coat',
        '4 hours after the last coat, 20 hours sooner',
      ],
      ['Drive on it, no sooner than', false, '3 days after the last coat', '3 days after the last coat'],
    ]);
  });

  it('are dates once a start is chosen, the difference from day one on', () => {
    const later = { visits: 2, calendar_days: 2, last_coat_done: 36, walk_at: 60, drive_at: 136, start_chosen: 1 };
    expect(rowsOf({ start_chosen: 1 }, later).slice(3)).toEqual([
      ['Drive on it, no sooner than', true, 'Thu, Jan 22, 4 pm', 'Sat, Jan 24, 4 pm, 48 hours later'],
    ]);
  });

  it('say nothing of driving where no cars park', () => {
    expect(rowsOf({ cars_park: 0 }, { cars_park: 0 }).map(([label]) => label)).toEqual([
      'Work',
      'Walk on it, no sooner than',
      'Furniture on it, no sooner than',
    ]);
  });

  it('are left to what the systems state where one of them tells no clock', () => {
    const without = smallClock({ without: ['calendar_days'] });
    expect(dayRows([{ id: 'a', title: 'a', results: without }])).toBeUndefined();
  });

  it('say that the clock of an option is incomplete', () => {
    const failed = { id: 'b', title: 'b', results: smallClock({ failing: 'walk_at' }) };
    const rows = dayRows([{ id: 'a', title: 'a', results: smallClock({}) }, failed]);
    expect(rows?.map(({ cells }) => cells.map(({ text }) => text)[1])).toEqual(Array(4).fill('incomplete'));
  });
});
