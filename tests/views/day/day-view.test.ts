import { describe, expect, it } from 'vitest';
import { type DayView, dayView } from '../../../src/views/day/day-view.ts';
import { smallClock } from '../../helpers/small-clock.ts';

const tasks = [
  { task: 'grind', label: 'Grind', start: 8.5, finish: 10.5, elapsed: 2, clock_added: 2 },
  {
    task: 'edges',
    label: 'Grind edges',
    start: 8.5,
    finish: 10,
    elapsed: 1.5,
    clock_added: 2,
    joined: 1,
    people_at_it: 1,
  },
  {
    task: 'lay_base',
    label: 'Base: mix, cut in',
    start: 10.5,
    finish: 11,
    elapsed: 0.5,
    clock_added: 0.5,
    lays: 'base',
  },
  {
    task: 'scrape',
    label: 'Scrape, sweep',
    start: 14.75,
    finish: 15.5,
    elapsed: 0.75,
    clock_added: 0.75,
    over: 'base',
  },
];

function daysOf(lines: Readonly<Record<string, number>> = {}): Extract<DayView, { kind: 'days' }> {
  const view = dayView(smallClock({ tasks, coats: [{ coat: 'base' }], lines }), 'us');
  if (view.kind === 'nothing') throw new Error(view.words);
  return view;
}

describe('the day in a table', () => {
  const { days, visits } = daysOf();

  it('tells every hour from the shop and back, tasks by number, the cure of 3.75 h as a wait', () => {
    expect(
      days.flatMap(({ rows }) => rows.map((row) => `${row.mark} ${row.words} ${row.start}–${row.finish} ${row.hours}`)),
    ).toEqual([
      ' Load at the shop 7 am–7:30 am 0.5 h',
      ' Drive 7:30 am–8 am 0.5 h',
      ' Set up 8 am–8:30 am 0.5 h',
      '1 Grind 8:30 am–10:30 am 2 h',
      '2 Grind edges, beside 8:30 am–10 am 1.5 h',
      '3 Base: mix, cut in 10:30 am–11 am 0.5 h',
      ' Wait for the cure 11 am–2:45 pm 3.75 h',
      '4 Scrape, sweep 2:45 pm–3:30 pm 0.75 h',
      ' Load out 3:30 pm–4 pm 0.5 h',
      ' Drive 4 pm–4:30 pm 0.5 h',
    ]);
  });

  it('has the people at each task, and the 16 h that are paid for 9 h of labour', () => {
    expect(days[0]?.rows.filter(({ mark }) => mark !== '').map(({ people }) => people)).toEqual(['2', '1', '2', '2']);
    expect(visits).toEqual([{ title: 'Visit 1', crew: '2', worked: '9 h', idle: '7 h', paid: '16 h', crewDays: '1' }]);
  });

  it('says 1–2 where a second person comes for part of the visit, who is 0.4 of one in the price', () => {
    const [first, ...others] = tasks;
    const shared = [{ ...first, people_at_it: 1.4 }, ...others];
    const view = dayView(smallClock({ tasks: shared, coats: [{ coat: 'base' }] }), 'us');
    if (view.kind === 'nothing') throw new Error(view.words);
    expect(view.days[0]?.rows.find(({ words }) => words === 'Grind')?.people).toBe('1–2');
  });

  it('is called by its date once a start is chosen', () => {
    expect(days[0]?.title).toBe('Day 1 · visit 1');
    expect(daysOf({ start_chosen: 1 }).days[0]?.title).toBe('Day 1 · Mon, Jan 19 · visit 1');
  });
});

describe('the day drawn', () => {
  it('has a lane for the crew and one for what runs beside, coats in resin, the cure hatched, ways light', () => {
    const [lead, beside] = daysOf().strip[0]?.lanes ?? [];
    expect(lead?.spans.map(({ words, tone }) => `${words} ${tone}`)).toEqual([
      'Shop light',
      'Drive light',
      'Set up light',
      'Grind work',
      'Base coat',
      'Cure wait',
      'Scrape work',
      'Load out light',
      'Drive light',
    ]);
    expect(beside?.spans.map(({ words, mark }) => [words, mark])).toEqual([['Grind edges', '2']]);
  });
});

describe('where there is no day', () => {
  it('a sheet without a clock says so', () => {
    expect(dayView(smallClock({ without: ['day_begins'] }), 'us')).toMatchObject({
      kind: 'nothing',
      words: expect.stringContaining('no times of day'),
    });
  });

  it('a clock that fails says where it failed', () => {
    const view = dayView(smallClock({ tasks, coats: [{ coat: 'base' }], failing: 'drive_time' }), 'us');
    expect(view.kind === 'nothing' && view.words).toMatch(
      /^The times cannot be told\. drive_time cannot be worked out/,
    );
  });

  it('a sheet whose tasks are all left out says that', () => {
    const view = dayView(smallClock({ tasks: [{ task: 'grind', include: 0 }] }), 'us');
    expect(view).toEqual({ kind: 'nothing', words: 'No task is included, so no day begins.' });
  });
});

describe('the day in a picture', () => {
  it('gives each piece the key of its row, and says its number, its whole name and its times', () => {
    const { days, strip } = daysOf();
    const pieces = strip.flatMap(({ lanes }) => lanes.flatMap(({ spans }) => spans));
    const rows = days.flatMap(({ rows: all }) => all.map(({ key }) => key));
    expect(new Set(rows).size).toBe(rows.length);
    expect(pieces.map(({ key }) => key).toSorted()).toEqual(rows.toSorted());
    expect(pieces.map(({ said }) => said)).toEqual(
      expect.arrayContaining(['Shop, 7 am to 7:30 am', '3 Base: mix, cut in, 10:30 am to 11 am']),
    );
  });
});
