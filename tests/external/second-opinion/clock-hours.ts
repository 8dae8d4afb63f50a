import { measured, type SystemId } from './material-needs.ts';
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
  return [...preparation(system, quote), ...repairs(system, quote), ...coating(system, quote), ...afterCoating(quote)];
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
const byTwo = (visit: number, [task, hours, included = true]: Planned): PlannedTask => ({
  task,
  hours: included ? hours : 0,
  people: 2,
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
  ];
}

function repairs(system: SystemId, quote: PrintedQuote): PlannedTask[] {
  const cracks = quote.entry('crack_length');
  const [spalls, pits] = [quote.entry('spall_count'), quote.entry('pitted_area')];
  const skimmed = system === 'solid-colour';
  return [
    beside(1, ['fill_cracks', cracks / 25]),
    beside(1, ['shave_cracks', cracks / 60]),
    beside(1, ['fill_joints', quote.entry('joint_length') / 30, quote.choice('joint_treatment') === 'fill_flush']),
    beside(1, ['patch_spalls', (spalls / 4) * (skimmed ? 1.6 : 1), spalls > 0]),
    beside(1, ['skim_pits', pits / 90, pits > 0]),
    byTwo(1, ['skim_cracks', cracks / 20, skimmed]),
    byTwo(1, ['shave_again', cracks / 60, skimmed]),
    byTwo(1, ['prime_spots', cracks / 80, skimmed]),
  ];
}

function coating(system: SystemId, quote: PrintedQuote): PlannedTask[] {
  const { area } = measured(quote);
  if (system === 'solid-colour') {
    const cars = quote.entry('cars_park') === 1;
    return [
      byTwo(1, ['vacuum', area / 900]),
      byTwo(1, ['lay_first_colour', area / 450]),
      byTwo(1, ['wash_first_colour', 0.5]),
      byTwo(2, ['lay_second_colour', area / 450]),
      byTwo(2, ['wash_second_colour', 0.5]),
      byTwo(3, ['lay_wear_coat', area / 550, cars]),
      byTwo(3, ['wash_wear_coat', 0.5, cars]),
    ];
  }
  const second = numberIn(quote.row('coats', 'coat', 'second_clear'), 'include') === 1;
  return [
    byTwo(1, ['vacuum', area / 900]),
    byTwo(1, ['lay_base', area / 450]),
    byTwo(1, ['broadcast_flake', area / 900]),
    byTwo(1, ['wash_base', 0.5]),
    byTwo(2, ['scrape', area / 350]),
    byTwo(2, ['lay_clear', area / 450]),
    byTwo(2, ['wash_clear', 0.5]),
    byTwo(3, ['lay_second_clear', area / 450, second]),
    byTwo(3, ['wash_second_clear', 0.5, second]),
  ];
}

function afterCoating(quote: PrintedQuote): PlannedTask[] {
  const after = quote.choice('joint_treatment') === 'fill_after';
  return [{ ...byTwo(2, ['fill_joints_after', quote.entry('joint_length') / 30, after]), people: 1 }];
}

/** The clock of each visit: tasks in a row one after another, those beside one another only as long as the longer side. */
export function plannedVisits(tasks: readonly PlannedTask[], crew: number, quote: PrintedQuote): PlannedVisit[] {
  const [day, away] = [quote.entry('day_length'), quote.entry('shop_time') + 2 * quote.entry('drive_time')];
  return [1, 2, 3, 4].map((visit) => {
    const own = tasks.filter((task) => task.visit === visit);
    if (!own.some((task) => task.included))
      return { used: false, worked: 0, onSite: 0, days: 0, paid: 0, daysCharged: 0 };
    const setUp = quote.entry('set_up_first') * (visit === 1 ? 1 : quote.entry('set_up_share_later'));
    const fixed = setUp + quote.entry('load_out');
    const worked = own.reduce((sum, task) => sum + task.hours, 0) + crew * fixed;
    const onSite = clockOf(own) + waits(own, quote) + fixed;
    const days = Math.max(1, wholeUp(onSite / (day - away)));
    const released = numberIn(quote.rows('trips')[visit - 1] ?? {}, 'released_hours');
    const half = quote.entry('half_day');
    return {
      used: true,
      worked,
      onSite,
      days,
      paid: Math.max(worked, crew * (onSite - released)) + crew * days * away,
      daysCharged: wholeUp((onSite + days * away) / day / half) * half,
    };
  });
}

/** Cure waits stand on the clock. */
function waits(tasks: readonly PlannedTask[], quote: PrintedQuote): number {
  const waiting = tasks.filter((task) => task.included);
  return waiting.reduce((sum, { task }) => sum + numberIn(quote.row('tasks', 'task', task), 'wait'), 0);
}

function clockOf(tasks: readonly PlannedTask[]): number {
  const chains: { lead: number; sides: number }[] = [];
  for (const { hours, people, beside: joins } of tasks) {
    const chain = chains.at(-1);
    if (joins && chain !== undefined) chain.sides += hours / people;
    else chains.push({ lead: hours / people, sides: 0 });
  }
  return chains.reduce((clock, { lead, sides }) => clock + Math.max(lead, sides), 0);
}
