import { describe, expect, it } from 'vitest';
import type { RowFile } from '../../src/template/line-schema.ts';
import { clockHour, hours } from '../../src/units/hours.ts';
import type { Given } from '../helpers/given-floor.ts';
import { type PricedFloor, priced } from '../helpers/priced-floor.ts';
import { criticalPath, type Task } from './second-opinion/critical-path.ts';

/*
 * The clock of the shipped hours part on a flake floor by two from 07:00, at the site from the first minute. Starts, end and
 * float were derived by hand with the formulas of the critical path method (activity on node: start = latest finish before
 * it + lag), as a construction manual gives them. The rule that 10 C less doubles a cure is the trade's, from memory.
 */
const hour = (task: string, quantity: number, more: RowFile = {}): RowFile => ({
  task,
  measure: 'hours',
  quantity,
  ...more,
});
const rows: readonly RowFile[] = [
  hour('grind', 3),
  hour('edge_grind', 0.5, { label: 'touch up the stem wall' }),
  hour('chase', 1, { label: 'chase and fill', beside: 'above', wait: 0.5 }),
  hour('vacuum', 0.5),
  hour('lay_base', 1, { lays: 'base' }),
  hour('scrape', 1.25, { over: 'base' }),
  hour('lay_clear', 1, { lays: 'clear' }),
].map((row, at) => ({ ...row, label: `${at}`, people: 1, rate: 1 }));
const names = ['grind', 'touch_up', 'chase', 'vacuum', 'base', 'scrape', 'topcoat'];

const flake = 'flake-full-broadcast';
const atTheShop = {
  shop_time: 0,
  drive_time: 0,
  load_out: 0,
  set_up_first: 0.75,
  day_begins: 7,
  day_length: 13,
  coat_start_stretch: 4,
};

/** A base that takes scraping 3 h later at 25 C. */
function floorAt(celsius: number, set: Given['set'] = {}): PricedFloor {
  return priced(flake, {
    set: { ...atTheShop, slab_temperature: celsius * 1.8 + 32, ...set },
    rows: { tasks: rows },
    products: { 'base_slate.times_at': 77, 'base_slate.recoat_after': 3 },
  });
}

const startsOf = (floor: PricedFloor): number[] => names.map((_, at) => floor.number(`tasks.${at}.start`) - 7);

describe('a flake floor by two from 07:00, on a slab of 25 C', () => {
  const floor = floorAt(25);

  it.each([
    ['grind', 0.75],
    ['chase', 3.75],
    ['vacuum', 5.25],
    ['base', 5.75],
    ['scrape', 9.75],
    ['topcoat', 11],
  ])('begins with %s after %f h', (name, start) => {
    expect(startsOf(floor)[names.indexOf(name)]).toBeCloseTo(start, 9);
  });

  it('has its last coat down after 12 h, at 19:00, in one visit of 12 h on the clock', () => {
    expect(floor.number('last_coat_done')).toBeCloseTo(19, 9);
    expect(floor.number('work_done')).toBeCloseTo(19, 9);
    expect(floor.number('trips.row_1.site_hours')).toBeCloseTo(12, 9);
    expect([floor.number('visits'), floor.number('calendar_days')]).toEqual([1, 1]);
  });

  it('takes feet 12 h later, at 07:00 of the second day, and cars 48 h later, at 19:00 of the third', () => {
    const soon = Object.fromEntries(
      ['base_slate', 'clear_aspartic'].flatMap((code) => [
        [`${code}.walk_after`, 1],
        [`${code}.drive_after`, 1],
      ]),
    );
    const used = priced(flake, {
      set: { ...atTheShop, slab_temperature: 77, walk_hours: 12, drive_hours: 48 },
      rows: { tasks: rows },
      products: { 'base_slate.times_at': 77, 'base_slate.recoat_after': 3, ...soon },
    });
    expect(used.number('walk_at')).toBeCloseTo(24 + 7, 9);
    expect(used.number('drive_at')).toBeCloseTo(48 + 19, 9);
    expect(used.number('walk_date') - used.number('start_date')).toBe(1);
    expect(used.number('drive_date') - used.number('start_date')).toBe(2);
  });

  it('may touch up the stem wall 1.5 h later than it does, by the critical path of the same tasks', () => {
    const length = (at: number) => hours(floor.number(`tasks.${at}.elapsed`));
    const task = (at: number, ...after: readonly (readonly [number, number?])[]): Task => ({
      name: names[at] ?? '',
      length: length(at),
      after: after.map(([before, least = 0]) => ({ task: names[before] ?? '', least: hours(least) })),
    });
    const cure = floor.number('coats.base.recoat_from');
    const path = criticalPath(
      [task(0), task(1, [0]), task(2, [0]), task(3, [2, 0.5]), task(4, [3], [1]), task(5, [4, cure]), task(6, [5])],
      clockHour(7.75),
    );
    if (path.kind !== 'path') throw new Error(path.kind);
    for (const [at, { starts }] of path.tasks.entries()) expect(starts - 7).toBeCloseTo(startsOf(floor)[at] ?? -1, 9);
    expect(path.tasks[1]?.totalFloat).toBeCloseTo(1.5, 9);
    expect(path.ends).toBeCloseTo(floor.number('last_coat_done'), 9);
  });
});

describe('the same floor on a slab of 15 C', () => {
  const [warm, cold] = [floorAt(25), floorAt(15)];

  it('waits 6 h in place of 3: it would end at 22:00', () => {
    const wait = (floor: PricedFloor): number => floor.number('tasks.5.ready') - floor.number('tasks.4.finish');
    expect([wait(warm), wait(cold)]).toEqual([expect.closeTo(3, 9), expect.closeTo(6, 9)]);
    const late = floorAt(15, { day_length: 16, latest_coat_start: 18 });
    expect(late.number('last_coat_done')).toBeCloseTo(22, 9);
    expect(late.number('visits')).toBe(1);
  });

  it('is a job of two days, whose second coming is priced', () => {
    expect([cold.number('visits'), cold.number('calendar_days'), cold.number('round_trips')]).toEqual([2, 2, 2]);
    // Set up again, 0.4 of 0.75 h, by two; nobody is paid for the night.
    expect(cold.number('trips.row_2.arrives')).toBeCloseTo(24 + 7, 9);
    expect(cold.number('tasks.5.start')).toBeCloseTo(24 + 7 + 0.3, 9);
    expect(cold.number('trips.row_1.site_hours')).toBeCloseTo(6.75, 9);
    expect(cold.number('trips.row_2.site_hours')).toBeCloseTo(0.3 + 1.25 + 1, 9);
    // 30 miles at $0.95, twice. Of the warm one's the day of 13 h is full to 12: its price carries part of another trip.
    expect(cold.number('travel_cost')).toBeCloseTo(2 * 28.5, 9);
    expect([warm.number('trips_planned'), cold.number('trips_planned')]).toEqual([1, 2]);
    expect(warm.number('round_trips')).toBeCloseTo(1 + (12 - 13 * 0.88) / (2 * 13 * 0.12), 9);
  });
});

describe('flake is scraped', () => {
  // Common practice, no source: about 4 h after a fast base, about 15 after a standard one.
  it.each([
    ['flake-fast-one-day', 3.5, 4.5],
    [flake, 13, 17],
  ])('in %s no sooner than %f to %f h after its base', (system, least, most) => {
    const floor = priced(system);
    const wait = floor.number('tasks.scrape.ready') - floor.number('tasks.lay_base.finish');
    expect(wait).toBeGreaterThan(least);
    expect(wait).toBeLessThan(most);
    expect(floor.number('tasks.scrape.start')).toBeGreaterThanOrEqual(floor.number('tasks.scrape.ready'));
  });

  it('on the day of a fast base, and on the next day of a standard one', () => {
    expect(priced('flake-fast-one-day').number('tasks.scrape.day_no')).toBe(1);
    expect(priced(flake).number('tasks.scrape.day_no')).toBe(2);
  });
});
