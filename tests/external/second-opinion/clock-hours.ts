import { crewDay, peopleOn } from './crew-day.ts';
import { extraWork, oilHours } from './extra-work.ts';
import { builtOn, hoursOnIt } from './floor-measure.ts';
import { grindersFor } from './grinding.ts';
import { measured, pitsOf, type SystemId } from './material-needs.ts';
import { OneGo } from './one-go.ts';
import { type PaidVisit, PaidVisits } from './paid-visits.ts';
import type { Cure, ListedTask } from './planned-task.ts';
import { codeIn, numberIn, type PrintedQuote } from './printed-quote.ts';
import type { Product } from './products.ts';
import { type PlannedVisit, type TimedTask, WorkClock } from './work-clock.ts';

export interface PlannedWork {
  readonly tasks: readonly TimedTask[];
  readonly visits: readonly PlannedVisit[];
  readonly paid: readonly (PaidVisit | undefined)[];
}

/** The task list, followed from hour to hour for the plan, and in one go for the price. */
export function plannedWork(
  system: SystemId,
  quote: PrintedQuote,
  products: ReadonlyMap<string, Product>,
): PlannedWork {
  const [day, cures] = [crewDay(quote), coatCures(quote, products)];
  const crewOn = (visit: number): number => peopleOn(visit, quote);
  const tasks = plannedTasks(system, quote).map((task) => ({
    ...task,
    byAllFree: quote.entry('all_beside') === 1,
    wait: numberIn(quote.row('tasks', 'task', task.task), 'wait'),
  }));
  const work = new OneGo(tasks, cures, crewOn);
  const clock = new WorkClock(quote, day, work, cures, crewOn);
  clock.follow(tasks);
  const paid = new PaidVisits(quote, work, day, cures, crewOn).visits();
  return { tasks: clock.tasks, visits: clock.visits(), paid };
}

/** Rates a person, an hour; common practice, no source. Hours of the task list, in work order. */
function plannedTasks(system: SystemId, quote: PrintedQuote): ListedTask[] {
  return [
    ...extras(quote, ['move_furniture', 'mask_more', 'door_seal', 'pilot_lights']),
    ...preparation(system, quote),
    ...repairs(system, quote),
    ...extras(quote, ['fit_strips', 'lay_cove']),
    ...coating(system, quote),
    ...afterCoating(quote),
  ];
}

type Planned = readonly [task: string, hours: number, included?: boolean];

const beside = (visit: number, [task, hours, included = true]: Planned): ListedTask => ({
  task,
  hours: included ? hours : 0,
  people: 1,
  visit,
  beside: true,
  included,
});
/** Walls, curbs and steps are long work: whoever grinds joins in once he is done. */
const helped = (planned: Planned): ListedTask => ({ ...beside(1, planned), helped: true });
const by = (people: number, visit: number, [task, hours, included = true]: Planned): ListedTask => ({
  task,
  hours: included ? hours : 0,
  people,
  visit,
  beside: false,
  included,
});

function preparation(system: SystemId, quote: PrintedQuote): ListedTask[] {
  const { area, edge } = measured(quote);
  const machine = grindersFor(quote).rate;
  const hardness = numberIn(quote.row('hardness_effects', 'hardness_code', quote.choice('hardness')), 'rate_share');
  const old = numberIn(quote.row('old_surfaces', 'surface_code', quote.choice('old_surface')), 'rate_share');
  const passes = system === 'solid-colour' ? 1.2 : 1;
  const walls = quote.entry('stem_wall_length');
  const taller = Math.max(1, quote.entry('stem_wall_height') / 8);
  const onIt = hoursOnIt(builtOn(quote));
  const byHand = onIt.obstacles + oilHours(quote);
  return [
    {
      task: 'grind',
      hours: (area / (machine * hardness * old)) * passes,
      people: 1,
      visit: 1,
      beside: false,
      included: true,
    },
    beside(1, ['edge_grind', edge / 35]),
    helped(['stem_wall', (walls / 18) * taller, walls > 0]),
    helped(['curbs', onIt.curbs, onIt.curbs > 0]),
    helped(['steps', onIt.steps, onIt.steps > 0]),
    beside(1, ['obstacles', byHand, byHand > 0]),
  ];
}

function repairs(system: SystemId, quote: PrintedQuote): ListedTask[] {
  const cracks = quote.entry('crack_length');
  const deep = quote.entry('wide_crack_length') + quote.entry('through_crack_length');
  const [filled, seen] = [cracks + deep, cracks + deep + quote.entry('hairline_length')];
  const [spalls, pits] = [quote.entry('spall_count'), pitsOf(system, quote).skimmed];
  const skimmed = system === 'solid-colour';
  const two = Math.min(2, peopleOn(1, quote));
  return [
    beside(1, ['fill_cracks', cracks / 25]),
    beside(1, ['fill_deep_cracks', deep / 15, deep > 0]),
    beside(1, ['shave_cracks', filled / 60]),
    beside(1, ['fill_joints', quote.entry('joint_length') / 30, quote.choice('joint_treatment') === 'fill_flush']),
    beside(1, ['patch_spalls', (spalls / 4) * (skimmed ? 1.6 : 1), spalls > 0]),
    beside(1, ['skim_pits', pits / 90, pits > 0]),
    by(two, 1, ['skim_cracks', seen / 20, skimmed]),
    by(two, 1, ['shave_again', seen / 60, skimmed]),
    by(two, 1, ['prime_spots', seen / 80, skimmed]),
  ];
}

function coating(system: SystemId, quote: PrintedQuote): ListedTask[] {
  const { area } = measured(quote);
  const byAll = (visit: number, planned: Planned, coats: Coats = {}): ListedTask => ({
    ...by(peopleOn(visit, quote), visit, planned),
    ...coats,
  });
  const abrade = (visit: number, over: string, coat: string, included: boolean): ListedTask =>
    byAll(visit, [`abrade_for_${coat}`, area / 350, included], { over, ifMissed: true });
  if (system === 'solid-colour') {
    const cars = quote.entry('cars_park') === 1;
    return [
      byAll(1, ['vacuum', area / 900]),
      byAll(1, ['lay_first_colour', area / 450], { lays: 'first_colour' }),
      byAll(1, ['wash_first_colour', 0.5]),
      abrade(2, 'first_colour', 'second_colour', true),
      byAll(2, ['lay_second_colour', area / 450], { lays: 'second_colour', over: 'first_colour' }),
      byAll(2, ['line_out', 2, numberIn(quote.row('tints', 'tint', 'accent_colour'), 'include') === 1]),
      byAll(2, ['wash_second_colour', 0.5]),
      abrade(3, 'second_colour', 'wear_coat', cars),
      byAll(3, ['lay_wear_coat', area / 550, cars], { lays: 'wear_coat', over: 'second_colour' }),
      byAll(3, ['wash_wear_coat', 0.5, cars]),
    ];
  }
  const second = numberIn(quote.row('coats', 'coat', 'second_clear'), 'include') === 1;
  return [
    byAll(1, ['vacuum', area / 900]),
    byAll(1, ['lay_base', area / 450], { lays: 'base' }),
    byAll(1, ['broadcast_flake', area / 900]),
    byAll(1, ['wash_base', 0.5]),
    byAll(2, ['scrape', area / 350], { over: 'base' }),
    byAll(2, ['lay_clear', area / 450], { lays: 'clear' }),
    byAll(2, ['wash_clear', 0.5]),
    abrade(3, 'clear', 'second_clear', second),
    byAll(3, ['lay_second_clear', area / 450, second], { lays: 'second_clear', over: 'clear' }),
    byAll(3, ['wash_second_clear', 0.5, second]),
  ];
}

type Coats = Pick<ListedTask, 'lays' | 'over' | 'ifMissed'>;

/** What is asked for beside the coats, of those named. */
function extras(quote: PrintedQuote, named: readonly string[]): ListedTask[] {
  const { edge } = measured(quote);
  const alone = ['door_seal', 'fit_strips', 'pilot_lights'];
  const flames = quote.entry('pilot_lights');
  const hours: Readonly<Record<string, number | undefined>> = {
    ...extraWork(quote, edge).hours,
    pilot_lights: flames > 0 ? flames * 0.5 : undefined,
  };
  return named.map((task) => {
    const people = alone.includes(task) ? 1 : peopleOn(1, quote);
    return by(people, 1, [task, hours[task] ?? 0, hours[task] !== undefined]);
  });
}

function afterCoating(quote: PrintedQuote): ListedTask[] {
  const after = quote.choice('joint_treatment') === 'fill_after';
  return [by(1, 2, ['fill_joints_after', quote.entry('joint_length') / 30, after])];
}

/** When each coat takes the next, on this slab. Thrown to refusal, the base holds the clear by its texture. */
function coatCures(quote: PrintedQuote, products: ReadonlyMap<string, Product>): Map<string, Cure> {
  return new Map(
    quote.rows('coats').map((row) => {
      const product = products.get(codeIn(row, 'product')) ?? {};
      const share = timeShare(product, quote.entry('slab_temperature'), quote.entry('humidity'));
      const endless = numberIn(row, 'to_refusal') === 1;
      const until = endless ? Number.POSITIVE_INFINITY : Number(product.recoat_before) * share;
      return [codeIn(row, 'coat'), { from: Number(product.recoat_after) * share, until }];
    }),
  );
}

/** An epoxy takes twice as long for each 18 F less; others by their table at 50, 70, 90 F and 30, 80 % of humidity. */
function timeShare(product: Product, slab: number, humidity: number): number {
  if (product.chemistry === 'epoxy') return 2 ** ((Number(product.times_at) - slab) / 18);
  const [cold, mild, hot] = ['cold', 'mild', 'hot'].map((at) => {
    const [dry, humid] = [Number(product[`${at}_dry`]), Number(product[`${at}_humid`])];
    return dry + (humid - dry) * Math.min(1, Math.max(0, (humidity - 0.3) / 0.5));
  });
  const [from, to, of] = slab < 70 ? [cold, mild, (slab - 50) / 20] : [mild, hot, (slab - 70) / 20];
  return Number(from) + (Number(to) - Number(from)) * Math.min(1, Math.max(0, of));
}
