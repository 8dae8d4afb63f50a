import { extraWork, fixedShare, peopleOn } from './extra-work.ts';
import { builtOn, hoursOnIt } from './floor-measure.ts';
import { measured, pitsOf, type SystemId } from './material-needs.ts';
import { numberIn, type PrintedQuote } from './printed-quote.ts';
import { wholeUp } from './products.ts';

/** A task as the trade plans it: labour hours, people at it, and whether it runs beside the one above. */
export interface PlannedTask {
  readonly task: string;
  readonly hours: number;
  readonly people: number;
  readonly visit: number;
  readonly beside: boolean;
  readonly included: boolean;
}

export interface PlannedVisit {
  readonly used: boolean;
  readonly worked: number;
  readonly onSite: number;
  readonly days: number;
  readonly paid: number;
  readonly daysCharged: number;
}

/** Rates a person, an hour; common practice, no source. Hours of the task list, in work order. */
export function plannedTasks(system: SystemId, quote: PrintedQuote): PlannedTask[] {
  return [
    ...preparation(system, quote),
    ...repairs(system, quote),
    ...coating(system, quote),
    ...extras(quote),
    ...afterCoating(quote),
  ];
}

type Planned = readonly [task: string, hours: number, included?: boolean];

const beside = (visit: number, [task, hours, included = true]: Planned): PlannedTask => ({
  task,
  hours: included ? hours : 0,
  people: 1,
  visit,
  beside: true,
  included,
});
const by = (people: number, visit: number, [task, hours, included = true]: Planned): PlannedTask => ({
  task,
  hours: included ? hours : 0,
  people,
  visit,
  beside: false,
  included,
});

export function grinderFor(quote: PrintedQuote): string {
  const chosen = quote.choice('grinder');
  if (chosen !== 'by_floor_size') return chosen;
  const { area } = measured(quote);
  if (area >= quote.entry('planetary_from')) return 'large_planetary';
  return area < quote.entry('hand_tools_under') ? 'hand_tools' : 'walk_behind';
}

function preparation(system: SystemId, quote: PrintedQuote): PlannedTask[] {
  const { area, edge } = measured(quote);
  const machine = numberIn(quote.row('machine_sets', 'machine', grinderFor(quote)), 'set_rate');
  const hardness = numberIn(quote.row('hardness_effects', 'hardness_code', quote.choice('hardness')), 'rate_share');
  const old = numberIn(quote.row('old_surfaces', 'surface_code', quote.choice('old_surface')), 'rate_share');
  const passes = system === 'solid-colour' ? 1.2 : 1;
  const walls = quote.entry('stem_wall_length');
  const taller = Math.max(1, quote.entry('stem_wall_height') / 8);
  const onIt = hoursOnIt(builtOn(quote));
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
    beside(1, ['stem_wall', (walls / 18) * taller, walls > 0]),
    beside(1, ['curbs', onIt.curbs, onIt.curbs > 0]),
    beside(1, ['steps', onIt.steps, onIt.steps > 0]),
    beside(1, ['obstacles', onIt.obstacles, onIt.obstacles > 0]),
  ];
}

function repairs(system: SystemId, quote: PrintedQuote): PlannedTask[] {
  const cracks = quote.entry('crack_length');
  const deep = quote.entry('wide_crack_length') + quote.entry('through_crack_length');
  const [filled, seen] = [cracks + deep, cracks + deep + quote.entry('hairline_length')];
  const [spalls, pits] = [quote.entry('spall_count'), pitsOf(system, quote).skimmed];
  const skimmed = system === 'solid-colour';
  const two = Math.min(2, peopleOn(1, measured(quote).area, quote));
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

function coating(system: SystemId, quote: PrintedQuote): PlannedTask[] {
  const { area } = measured(quote);
  const byAll = (visit: number, planned: Planned): PlannedTask => by(peopleOn(visit, area, quote), visit, planned);
  if (system === 'solid-colour') {
    const cars = quote.entry('cars_park') === 1;
    return [
      byAll(1, ['vacuum', area / 900]),
      byAll(1, ['lay_first_colour', area / 450]),
      byAll(1, ['wash_first_colour', 0.5]),
      byAll(2, ['lay_second_colour', area / 450]),
      byAll(2, ['line_out', 2, numberIn(quote.row('tints', 'tint', 'accent_colour'), 'include') === 1]),
      byAll(2, ['wash_second_colour', 0.5]),
      byAll(3, ['lay_wear_coat', area / 550, cars]),
      byAll(3, ['wash_wear_coat', 0.5, cars]),
    ];
  }
  const second = numberIn(quote.row('coats', 'coat', 'second_clear'), 'include') === 1;
  return [
    byAll(1, ['vacuum', area / 900]),
    byAll(1, ['lay_base', area / 450]),
    byAll(1, ['broadcast_flake', area / 900]),
    byAll(1, ['wash_base', 0.5]),
    byAll(2, ['scrape', area / 350]),
    byAll(2, ['lay_clear', area / 450]),
    byAll(2, ['wash_clear', 0.5]),
    byAll(3, ['lay_second_clear', area / 450, second]),
    byAll(3, ['wash_second_clear', 0.5, second]),
  ];
}

function extras(quote: PrintedQuote): PlannedTask[] {
  const { area, edge } = measured(quote);
  const alone = ['door_seal', 'fit_strips', 'pilot_lights'];
  return Object.entries(extraWork(quote, edge).hours).map(([task, hours]) =>
    by(alone.includes(task) ? 1 : peopleOn(1, area, quote), 1, [task, hours ?? 0, hours !== undefined]),
  );
}

function afterCoating(quote: PrintedQuote): PlannedTask[] {
  const after = quote.choice('joint_treatment') === 'fill_after';
  return [by(1, 2, ['fill_joints_after', quote.entry('joint_length') / 30, after])];
}

/** Up to a quarter of an hour over a day, or over half a day, costs no further one. */
const grace = 0.25;

/** The clock of each visit: tasks in a row one after another, those beside one another only as long as the longer side. */
export function plannedVisits(tasks: readonly PlannedTask[], quote: PrintedQuote): PlannedVisit[] {
  const { area } = measured(quote);
  const share = fixedShare(area);
  const [day, away] = [quote.entry('day_length'), share * quote.entry('shop_time') + 2 * quote.entry('drive_time')];
  return [1, 2, 3, 4].map((visit) => {
    const own = tasks.filter((task) => task.visit === visit);
    if (!own.some((task) => task.included))
      return { used: false, worked: 0, onSite: 0, days: 0, paid: 0, daysCharged: 0 };
    const crew = peopleOn(visit, area, quote);
    const setUp = quote.entry('set_up_first') * (visit === 1 ? 1 : quote.entry('set_up_share_later'));
    const fixed = share * (setUp + quote.entry('load_out'));
    const worked = own.reduce((sum, task) => sum + task.hours, 0) + crew * fixed;
    const onSite = clockOf(own, crew) + waits(own, quote) + fixed;
    const days = Math.max(1, wholeUp(onSite / (day - away + grace)));
    const released = numberIn(quote.rows('trips')[visit - 1] ?? {}, 'released_hours');
    const half = quote.entry('half_day');
    return {
      used: true,
      worked,
      onSite,
      days,
      paid: Math.max(worked, crew * (onSite - released)) + crew * days * away,
      daysCharged: Math.max(1, wholeUp((onSite + days * away - grace) / day / half)) * half,
    };
  });
}

/** Cure waits stand on the clock. */
function waits(tasks: readonly PlannedTask[], quote: PrintedQuote): number {
  const waiting = tasks.filter((task) => task.included);
  return waiting.reduce((sum, { task }) => sum + numberIn(quote.row('tasks', 'task', task), 'wait'), 0);
}

/** Whoever works alone has nobody beside. */
function clockOf(tasks: readonly PlannedTask[], crew: number): number {
  const chains: { lead: number; sides: number }[] = [];
  for (const { hours, people, beside: joins } of tasks) {
    const chain = chains.at(-1);
    if (joins && crew > 1 && chain !== undefined) chain.sides += hours / people;
    else chains.push({ lead: hours / people, sides: 0 });
  }
  return chains.reduce((clock, { lead, sides }) => clock + Math.max(lead, sides), 0);
}
