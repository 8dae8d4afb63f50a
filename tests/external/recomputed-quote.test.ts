import { describe, expect, it } from 'vitest';
import { plannedWork } from './second-opinion/clock-hours.ts';
import { jobMoney } from './second-opinion/job-money.ts';
import { materialNeeds, type SystemId } from './second-opinion/material-needs.ts';
import { codeIn, numberIn, PrintedQuote, type PrintedRow } from './second-opinion/printed-quote.ts';
import { cheapestPacks, demoProducts } from './second-opinion/products.ts';

/*
 * A second opinion: the whole quote worked out again by hand-written rules of the trade (film law, packs, the clock,
 * money) from nothing but the entries that the command line prints, and held against every number it prints.
 * The rules and rates are common practice, no source; the film constant is 231 in3 a gallon over 144 in2 a square foot.
 */
const systems: readonly SystemId[] = ['flake-full-broadcast', 'solid-colour'];
/** Among them one of hand tools and a machine, one to which the second comes back for a part of the visit, one of both grinders. */
const floors = [1, 125, 310, 528, 1150, 12_000];
const products = demoProducts();
const tolerance = 1e-9;

/** What else is set, so that every branch of the rules is met. */
const jobs: Readonly<Record<string, readonly string[]>> = {
  'the shop’s standard': [],
  'a repaired floor with walls, joints filled, net target, tax on the price': [
    'crack_length=63.5',
    'hairline_length=14',
    'wide_crack_length=7.5',
    'through_crack_length=11',
    'through_treatment=double',
    'crack_fills.cracks.chase=vee',
    'joint_treatment=fill_flush',
    'spall_count=6',
    'spall_area=3.5',
    'pitted_area=20',
    'stem_wall_length=76',
    'stem_wall_height=10',
    'target_on=net',
    'target_margin=0.15',
    'tax_mode=on_price',
    'taxable_share=0.4',
    'card_fixed_fee=0.3',
    'receipts_tax_rate=0.01',
    'coats.1.film_by=wet',
    'coats.2.film_by=dry',
    'extras.1.include=1',
    'tasks.vacuum.wait=1.25',
  ],
  'a basement with steps, a curb, posts, a drain, a stand and a coated lip': [
    'openings=[{"width":16,"lip":6},{"width":3,"lip":0}]',
    'steps=[{"risers":13,"treads":12,"width":3.5},{"risers":2,"treads":2,"include":0}]',
    'curbs=[{"length":22,"height":6,"top_width":4,"faces":2}]',
    'obstacles=[{"pieces":3,"around":1},{"what":"drain","around":2,"footprint":0.25},{"what":"heater_stand","around":10,"footprint":6}]',
    'stem_wall_length=30',
    'joint_treatment=fill_flush',
  ],
  'a hard painted floor without cars, joints filled after, tax on materials, a discount, a capped deposit': [
    'hardness=very_hard',
    'old_surface=thin_paint',
    'cars_park=0',
    'joint_treatment=fill_after',
    'tax_mode=on_materials',
    'discount=0.07',
    'deposit_cap_applies=1',
    'grinder=large_planetary',
    'crew_extra=1',
    'trips.2.released_hours=1.5',
    'coats.1.film_by=dry',
    'coats.1.drink=0.2',
    'tolls_and_parking=7.5',
    'round_to=0.01',
    'resin_waste=0.08',
  ],
  'every extra of the site': [
    'furniture_hours=3',
    'masking_hours=1.5',
    'door_seal_off=1',
    'heating_days=2',
    'moisture_test_wanted=1',
    'moisture_test_count=4',
    'dump_fee=35',
    'oil_spots=3',
    'extras.1.include=1',
    'cove_wanted=1',
    'cove_radius=1.5',
  ],
  'one person, and a cove of 30 ft': ['crew_extra=-1', 'cove_wanted=1', 'cove_typed=30'],
  'three people and a fourth on the first visit, long walls, free hands at every task': [
    'crew_extra=1',
    'all_beside=1',
    'trips.1.people_more=1',
    'trips.2.people_more=1',
    'stem_wall_length=140',
    'spall_count=12',
    'wide_crack_length=20',
  ],
  'a long way to drive, dear overtime by the day and the week, hours that are hardly known': [
    'drive_time=1.2',
    'longest_day=12',
    'overtime_factor=2.5',
    'overtime_after_day=8.5',
    'overtime_after_week=30',
    'trips_a_week=4',
    'hours_known_within=0.2',
  ],
  'days that may be longer, coats that may start later, nobody alone': [
    'day_stretch=2',
    'coat_start_stretch=2',
    'overtime_factor=1',
    'alone_under=0',
    'hardness=very_hard',
    'tasks.vacuum.wait=0.75',
  ],
  'a cold slab, a late morning, the last coat begun by 14:30': [
    'slab_temperature=57',
    'humidity=0.8',
    'day_begins=7.75',
    'latest_coat_start=14.5',
    'joint_treatment=fill_after',
    'pilot_lights=2',
  ],
  'a hot slab, which shortens the window of each coat': ['slab_temperature=93', 'humidity=0.35', 'tasks.vacuum.wait=2'],
  'a small repair by hand tools': [
    'repair_only=1',
    'grinder=hand_tools',
    'crack_length=0',
    'tax_mode=none',
    'discount=0.5',
  ],
};

/** What only full flake has. */
const flakeJobs: typeof jobs = {
  'a second clear with grit': ['coats.3.include=1', 'additions.1.include=1'],
  'a second clear on a hot slab': ['coats.3.include=1', 'slab_temperature=93'],
};

/** Of a visit in the price. */
const paidColumns = [
  ['worked_paid', 'worked'],
  ['site_paid', 'onSite'],
  ['trips_paid', 'trips'],
  ['hours_paid', 'paid'],
  ['overtime_hours', 'overtime'],
  ['equipment_days', 'equipmentDays'],
  ['days_counted', 'crewDays'],
] as const;

function wordsFor(area: number, sets: readonly string[]): string[] {
  const edge = Math.round(400 * Math.sqrt(area)) / 100;
  const rows = `areas=[{"place":"bay","shape":"known","known_area":${area},"known_edge":${edge}}]`;
  return ['--rows', rows, ...sets.flatMap((set) => [set.includes('=[') ? '--rows' : '--set', set])];
}

describe.each(systems)('%s', (system) => {
  const own = system === 'flake-full-broadcast' ? { ...jobs, ...flakeJobs } : jobs;
  describe.each(Object.entries(own))('%s', (_, sets) => {
    it.each(floors)('on %d ft2 agrees in every product, hour and dollar', (area) => {
      const quote = new PrintedQuote(system, wordsFor(area, sets));
      const needs = materialNeeds(system, quote, products);
      const materials = expectPurchases(quote, needs.byProduct);
      const { tasks, visits, paid } = plannedWork(system, quote, products);
      const printedTasks = quote.rows('tasks');
      expect(printedTasks.map((row) => codeIn(row, 'task')).sort()).toEqual(tasks.map(({ task }) => task).sort());
      for (const { task, hours, included, starts, ends } of tasks) {
        const row = quote.row('tasks', 'task', task);
        expectNear(task, numberIn(row, 'task_hours'), hours);
        if (!included) continue;
        expectNear(`start of ${task}`, numberIn(row, 'start'), starts);
        expectNear(`finish of ${task}`, numberIn(row, 'finish'), ends);
      }
      const printedTrips = quote.rows('trips');
      expect(printedTrips).toHaveLength(visits.length);
      visits.forEach((visit, at) => {
        const row: PrintedRow = printedTrips[at] ?? {};
        expect(numberIn(row, 'used')).toBe(visit.used ? 1 : 0);
        expectNear(`hours of visit ${at + 1}`, numberIn(row, 'worked'), visit.worked);
        expectNear(`clock of visit ${at + 1}`, numberIn(row, 'site_hours'), visit.onSite);
        expectNear(`paid in visit ${at + 1}`, numberIn(row, 'paid'), visit.paid);
        expect(numberIn(row, 'days'), `days of visit ${at + 1}`).toBe(visit.days);
        expectNear(`crew-days of visit ${at + 1}`, numberIn(row, 'days_charged'), visit.daysCharged);
      });
      quote.rows('paid_visits').forEach((row, at) => {
        const visit = paid[at];
        expect(numberIn(row, 'goes'), `visit ${at + 1} as planned`).toBe(visit === undefined ? 0 : 1);
        for (const [column, part] of paidColumns)
          expectNear(`${column} ${at + 1}`, numberIn(row, column), visit?.[part] ?? 0);
      });
      const paidVisits = paid.filter((visit) => visit !== undefined);
      const money = jobMoney(system, quote, { materials, coats: needs.coats }, paidVisits);
      for (const [line, amount] of Object.entries(money)) expectNear(line, quote.result(line), amount);
      // Rounded to the cent or to the shop's step: the same number, not a near one.
      for (const line of ['price', 'tax', 'total', 'deposit'])
        expect(Math.round(quote.result(line) * 100), line).toBe(Math.round((money[line] ?? Number.NaN) * 100));
    });
  });
});

/** Compares every row of the three buying tables; gives what all of it costs. */
function expectPurchases(quote: PrintedQuote, needs: ReadonlyMap<string, number>): number {
  const rows = ['buy_volume', 'buy_weight', 'buy_count'].flatMap((table) => quote.rows(table));
  expect(rows.map((row) => codeIn(row, 'product')).sort()).toEqual([...needs.keys()].sort());
  let total = 0;
  for (const row of rows) {
    const code = codeIn(row, 'product');
    const packs = cheapestPacks(needs.get(code) ?? Number.NaN, products.get(code) ?? {});
    expectNear(`need of ${code}`, numberIn(row, 'need'), needs.get(code) ?? Number.NaN);
    expect([numberIn(row, 'packs'), numberIn(row, 'large_packs')], `packs of ${code}`).toEqual([
      packs.small,
      packs.large,
    ]);
    expectNear(`cost of ${code}`, numberIn(row, 'cost'), packs.cost);
    total += packs.cost;
  }
  return total;
}

function expectNear(name: string, printed: number, wanted: number): void {
  expect(Math.abs(printed - wanted), `${name}: ${printed} is printed, ${wanted} is wanted`).toBeLessThanOrEqual(
    tolerance * Math.abs(wanted),
  );
}
