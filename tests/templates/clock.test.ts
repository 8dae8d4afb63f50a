import { describe, expect, it } from 'vitest';
import { priced } from '../helpers/priced-floor.ts';

// Common practice, no source, where nothing else stands.
const flake = 'flake-full-broadcast';
const fast = 'flake-fast-one-day';
const floorOf = (length: number, width: number) => ({ 'areas.bay.length': length, 'areas.bay.width': width });

describe('a visit', () => {
  it('begins in the morning: on site at 8:15, the first task at 9:00, the second visit’s at 8:33', () => {
    const floor = priced(flake);
    expect(floor.number('site_from')).toBeCloseTo(7 + 0.75 + 0.5, 12);
    expect(floor.number('site_until')).toBeCloseTo(7 + 9 - 0.5, 12);
    expect(floor.number('tasks.grind.start')).toBeCloseTo(9, 12);
    expect(floor.number('tasks.scrape.start')).toBeCloseTo(24 + 8.25 + 0.3, 9);
  });

  it('that follows a coat on a cool slab begins once that takes it, if half of the day is left, else next morning', () => {
    // 12 h at 75 °F: 21.4 h at 60 °F, after 13:38; at 55 °F 25.9 h, past noon.
    const begins = (degrees: number): number =>
      priced(flake, { set: { slab_temperature: degrees } }).number('tasks.scrape.start');
    expect(begins(60)).toBeCloseTo(13.6419 + 12 * 2 ** (15 / 18), 3);
    expect(begins(55)).toBeCloseTo(48 + 8.55, 9);
  });

  it('is paid for the wait for a coat in it, not for the night before the next', () => {
    const day = priced(fast, { set: { finance_share: 0 } });
    expect(day.number('tasks.scrape.clock_added') - day.number('tasks.scrape.elapsed')).toBeCloseTo(3.17778, 4);
    const night = priced(flake);
    expect(night.number('tasks.scrape.clock_added')).toBeCloseTo(night.number('tasks.scrape.elapsed'), 9);
  });

  it('is not paid for what is waited after its last task', () => {
    const paid = (set: object): number => priced(flake, { set: { ...set } }).number('paid_hours');
    expect(paid({ 'tasks.wash_clear.wait': 3 })).toBeCloseTo(paid({}), 12);
    expect(paid({ 'tasks.vacuum.wait': 0.25 })).toBeCloseTo(paid({}) + 2 * 0.25, 9);
  });

  it('is one more for a fast floor too large for its day, and the others move with it', () => {
    const [two, four] = [priced(fast), priced(fast, { set: floorOf(40, 25) })];
    expect([two.number('visits'), four.number('visits')]).toEqual([1, 2]);
    expect(four.number('tasks.scrape.day_no')).toBeGreaterThan(four.number('tasks.lay_base.day_no'));
    expect(four.number('trips.row_2.used')).toBe(1);
  });

  it('of the system as planned keeps its people when one before it is divided', () => {
    const set = { ...floorOf(60, 40), 'tasks.vacuum.wait': 8 };
    const floor = priced('metallic', { set });
    expect(floor.number('tasks.lay_metallic.visit_used')).toBe(3);
    expect([1, 2, 3, 4].map((trip) => floor.number(`trips.row_${trip}.crew_here`))).toEqual([2, 2, 3, 2]);
  });
});

describe('setting up and loading out', () => {
  const setUp = (set: object): number => priced(flake, { set: { ...set } }).number('trips.row_1.set_up_hours');

  it('take more people than usual two thirds of the usual 0.75 h at least, and fewer no longer', () => {
    const standing = [-1, 0, 1, 2, 6].map((crew_extra) => setUp({ crew_extra }));
    for (const [at, hours] of [0.75, 0.75, 0.5025, 0.5025, 0.5025].entries())
      expect(standing[at]).toBeCloseTo(hours, 9);
    expect(setUp({ usual_crew: 4, crew_extra: 1 })).toBeCloseTo((0.75 * 4) / 5, 9);
    expect(setUp({ 'trips.row_1.people_more': 1 })).toBeCloseTo(0.5025, 9);
  });

  it('of the grinder goes on while a fast base cures: 0.25 h is left after the clear, and no hour of labour is lost', () => {
    const [early, late] = [priced(fast), priced(fast, { set: { early_load_out: 0 } })];
    expect(early.number('trips.row_1.load_out_hours')).toBeCloseTo(0.25, 9);
    expect(late.number('trips.row_1.load_out_hours')).toBeCloseTo(0.75, 9);
    expect(early.number('person_hours')).toBeCloseTo(late.number('person_hours'), 9);
    expect(early.number('tasks.scrape.start')).toBeCloseTo(late.number('tasks.scrape.start'), 9);
    expect(late.number('trips.row_1.paid') - early.number('trips.row_1.paid')).toBeCloseTo(3 * 0.5, 9);
    const onSite = 'paid_visits.row_1.site_paid';
    expect(late.number(onSite) - early.number(onSite)).toBeCloseTo(0.5, 9);
  });

  it('is loaded once where the clear waits for another visit, which is loaded out in full', () => {
    const cold = priced(fast, { set: { slab_temperature: 50, longest_day: 10 } });
    expect(cold.number('visits')).toBe(2);
    expect(cold.number('trips.row_1.load_out_hours')).toBeCloseTo(0.25, 9);
    expect(cold.number('trips.row_2.load_out_hours')).toBeCloseTo(0.75, 9);
  });
});

describe('a large floor', () => {
  it.each(['flake-fast-one-day', flake, 'quartz-double', 'solid-colour', 'flake-over-moisture-barrier'])(
    'of 12,000 ft2 in %s has visits enough, one after the other',
    (system) => {
      const floor = priced(system, { set: floorOf(120, 100) });
      expect(floor.check('visits_held').verdict).toBe('holds');
      // The least is of the fast one: base and clear begin in a morning each.
      expect(floor.number('calendar_days')).toBeGreaterThanOrEqual(7);
    },
  );

  it('that wants more than 8 visits is stopped, with no way round', () => {
    const rows = Array.from({ length: 9 }, (_, at) => ({
      task: `task_${at}`,
      measure: 'hours',
      quantity: 1,
      rate: 1,
      wait: 12,
    }));
    const tasks = [{ task: 'grind' }, { task: 'edge_grind' }, ...rows];
    const told = priced(flake, { rows: { tasks } }).check('visits_held');
    expect(told).toMatchObject({ verdict: 'fails', severity: 'stop', absolute: true });
    expect(told.says).toContain('9 visits');
  });
});

describe('loading out', () => {
  it('of 4 h that runs over into the day of the next visit is no trip of its own', () => {
    const floor = priced('metallic', { set: { ...floorOf(120, 50), load_out: 4 } });
    expect(floor.number('trips.row_1.days_filled')).toBe(5);
    expect(floor.number('trips.row_2.arrives')).toBeCloseTo(4 * 24 + 8.25, 9);
    expect(floor.number('trips.row_1.days')).toBe(4);
  });
});

describe('the recoat window', () => {
  const second = { 'coats.second_clear.include': 1 };

  it('of a clear that wants its second within 12 h is over the next day: it is abraded, at 350 ft2 an hour', () => {
    const floor = priced(flake, { set: second });
    expect(floor.number('coats.clear.recoat_until')).toBeCloseTo(12 * 1.01, 9);
    expect(floor.number('tasks.abrade_for_second_clear.task_hours')).toBeCloseTo(528 / 350, 9);
    expect(floor.check('coats.clear.window_kept').verdict).toBe('holds');
  });

  it('that is kept prices no abrading', () => {
    const floor = priced(flake, { set: second, products: { 'clear_aspartic.recoat_before': 36 } });
    expect(floor.number('tasks.abrade_for_second_clear.task_hours')).toBe(0);
    expect(floor.number('price')).toBeLessThan(priced(flake, { set: second }).number('price'));
  });

  it('of a coat thrown to refusal has no end: the base is not abraded, however late the clear comes', () => {
    const floor = priced(flake, { products: { 'base_slate.recoat_before': 13 } });
    expect(floor.number('tasks.scrape.window_passed')).toBe(0);
    const thin = priced('flake-partial', { products: { 'colour_pebble.recoat_before': 13 } });
    expect(thin.number('tasks.abrade_for_clear.task_hours')).toBeCloseTo(528 / 350, 9);
  });

  it('missed, with the abrading left out, is a stop', () => {
    const told = priced(flake, { set: { ...second, 'tasks.abrade_for_second_clear.abrades': 0 } }).check(
      'coats.clear.window_kept',
    );
    expect(told).toMatchObject({ verdict: 'fails', severity: 'stop' });
    expect(told.says).toContain('12.1 h');
  });

  it('of colours shrinks on a hot slab: the second colour of the next day is abraded for', () => {
    const hours = (slab_temperature: number): number =>
      priced('solid-colour', { set: { slab_temperature } }).number('tasks.abrade_for_second_colour.task_hours');
    expect([hours(70), hours(95)]).toEqual([0, expect.closeTo(528 / 350, 9)]);
  });
});

describe('when the floor is used again', () => {
  it('is the later of what the system states and what the price list says on this slab', () => {
    const [stated, listed] = [24, 72].map((walk_hours) => priced(flake, { set: { walk_hours, slab_temperature: 70 } }));
    const last = stated?.number('last_coat_done') ?? Number.NaN;
    expect(stated?.number('walk_at')).toBeCloseTo(last + 24, 9);
    expect(listed?.number('walk_at')).toBeCloseTo(last + 72, 9);
    // The clear is driven on 84 h after it is laid, times 1.01 at 70 °F; the system says 72.
    expect(stated?.number('drive_at')).toBeCloseTo(last + 84 * 1.01, 9);
  });

  it('comes in the order feet, furniture, cars, chemicals, each a date of the calendar', () => {
    const floor = priced(flake);
    const at = ['walk', 'furniture', 'drive', 'chemical'].map((use) => floor.number(`${use}_at`));
    expect([...at].sort((a, b) => a - b)).toEqual(at);
    const days = ['walk', 'furniture', 'drive', 'chemical'].map(
      (use) => floor.number(`${use}_date`) - floor.number('start_date'),
    );
    expect(days).toEqual(at.map((hour) => Math.floor(hour / 24)));
  });

  it('is told of furniture where no cars park, here 48 h after the last coat', () => {
    const [open, chosen] = [0, 1].map((start_chosen) => priced(flake, { set: { cars_park: 0, start_chosen } }));
    expect(open?.said('use_hours')).toBeUndefined();
    expect(open?.said('use_hours_no_cars')).toBe(
      'Walk on it no sooner than 24 hours after the last coat, furniture on it no sooner than 48 hours.',
    );
    expect(chosen?.said('use_dates')).toBeUndefined();
    expect(chosen?.said('use_dates_no_cars')).toContain('furniture on it on Jan 22, 2026 at the earliest');
  });

  it('is told in hours after the last coat until a start is chosen, then in dates', () => {
    const [open, chosen] = [priced(flake), priced(flake, { set: { start_chosen: 1 } })];
    expect(open.said('use_hours')).toBe(
      'Walk on it no sooner than 24 hours after the last coat, drive on it no sooner than 4 days.',
    );
    expect(open.said('use_dates')).toBeUndefined();
    expect(chosen.said('use_hours')).toBeUndefined();
    expect(chosen.said('use_dates')).toBe(
      'Walk on it on Jan 21, 2026 at the earliest, drive on it on Jan 23, 2026 at the earliest.',
    );
  });
});

describe('a wait after a task', () => {
  it('is in the price also where what stands below that task is left out, as it is in the plan', () => {
    const [none, waits] = [{}, { 'tasks.fill_cracks.wait': 1.5 }].map((set) => priced(flake, { set }));
    expect(none?.value('tasks.fill_deep_cracks.include')).toBe(0);
    const more = (line: string): number => Number(waits?.number(line)) - Number(none?.number(line));
    expect(more('trips.row_1.site_hours')).toBeGreaterThan(0);
    expect(more('paid_visits.row_1.site_paid')).toBeCloseTo(more('trips.row_1.site_hours'), 9);
    expect(more('paid_hours')).toBeGreaterThan(0);
  });
});

describe('a task beside another', () => {
  it('ends at the usual time too on a day that does not end the run', () => {
    const set = { ...floorOf(68, 56.3235), 'trips.row_1.people_more': 2, drive_time: 1.27 };
    const floor = priced(flake, { set });
    const [grind, edges] = ['grind', 'edge_grind'].map((task) => floor.number(`tasks.${task}.finish`));
    expect(grind).toBeGreaterThan(24);
    // What cannot be done by the usual end is done in the morning.
    const usual = floor.number('site_until') + floor.number('grace_hours');
    expect(Number(edges) <= usual || Number(edges) > 24).toBe(true);
  });
});
