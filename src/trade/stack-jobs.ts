import { type ClockHour, type Hours, hours } from '../units/hours.ts';
import { type CrewDay, driveBetween, type Job } from './crew-day.ts';
import { sameHour } from './earliest-starts.ts';
import { countOrders, ordersOf } from './job-orders.ts';
import { type BrokenRule, orderTimes, type PlannedDay } from './order-times.ts';

export type StackResult =
  /** `orders` were looked at, `holding` of them keep every rule, and `day` is the best of those. */
  | { readonly kind: 'stacked'; readonly day: PlannedDay; readonly orders: number; readonly holding: number }
  /** Why none of the orders holds; the counts of the reasons add up to `orders`. */
  | { readonly kind: 'none'; readonly orders: number; readonly reasons: readonly [Reason, ...Reason[]] }
  | { readonly kind: 'refused'; readonly refusal: Refusal };

/** One rule that some orders break first, with the order that comes nearest to keeping it. */
export interface Reason {
  readonly rule: BrokenRule;
  readonly nearest: readonly number[];
  readonly orders: number;
}

export type Refusal =
  | { readonly kind: 'jobs'; readonly count: number }
  | { readonly kind: 'same_name'; readonly name: string }
  | { readonly kind: 'no_blocks'; readonly job: string }
  | { readonly kind: 'bad_hours'; readonly job: string; readonly block: string }
  | { readonly kind: 'bad_day' }
  /** The window is over before the coat has cured. */
  | { readonly kind: 'no_window'; readonly job: string; readonly block: string }
  | { readonly kind: 'no_drive'; readonly from: string; readonly to: string }
  | { readonly kind: 'orders'; readonly count: number };

export const mostJobs = 4;
/** Four jobs of two blocks have 2,520 orders. */
export const mostOrders = 10_000;
export const usualSlack = hours(1);

/**
 * The best order in which one crew does the blocks of up to 4 jobs on one day, or why there is none: every order is
 * tried. Best is the earliest end, then the least driving, then the order that begins with the earlier jobs of the
 * list. All may run `slack` late (1 h unless told otherwise) and still hold.
 * Example: A (4.5 h, cure 3 h, 2 h) and B (3.5, 3, 1.5) with 0.5 h between them, from 07:00 to 21:00 → A B A B,
 * over at 20:00.
 */
export function stackJobs(jobs: readonly Job[], day: CrewDay, slack: Hours = usualSlack): StackResult {
  const refusal = refusalOf(jobs, day, slack);
  if (refusal !== undefined) return { kind: 'refused', refusal };
  let best: PlannedDay | undefined;
  let holding = 0;
  let orders = 0;
  const reasons = new Map<string, Reason>();
  for (const order of ordersOf(jobs.map(({ blocks }) => blocks.length))) {
    orders += 1;
    const times = orderTimes(jobs, order, day, slack);
    switch (times.kind) {
      case 'holds':
        holding += 1;
        if (best === undefined || isBetter(times.day, best)) best = times.day;
        break;
      case 'breaks':
        addReason(reasons, times.rule, times.order);
        break;
      default:
        return times satisfies never;
    }
  }
  if (best !== undefined) return { kind: 'stacked', day: best, orders, holding };
  const [first, ...others] = [...reasons.values()].sort((left, right) => right.orders - left.orders);
  if (first === undefined) throw new Error('No order was tried');
  return { kind: 'none', orders, reasons: [first, ...others] };
}

function isBetter(day: PlannedDay, than: PlannedDay): boolean {
  if (Math.abs(day.ends - than.ends) > sameHour) return day.ends < than.ends;
  return day.driving < than.driving - sameHour;
}

/** Orders that break the same rule for the same block are told as one. */
function addReason(reasons: Map<string, Reason>, rule: BrokenRule, order: readonly number[]): void {
  const known = JSON.stringify(rule.kind === 'late' ? [rule.kind] : [rule.kind, rule.job, rule.block]);
  const before = reasons.get(known);
  const nearer = before === undefined || missBy(rule) < missBy(before.rule) - sameHour;
  const orders = (before?.orders ?? 0) + 1;
  reasons.set(known, nearer ? { rule, nearest: order, orders } : { ...before, orders });
}

function missBy(rule: BrokenRule): number {
  switch (rule.kind) {
    case 'grinder':
      return rule.held.length;
    case 'recoat':
      return rule.over;
    case 'late':
      return rule.ends;
    default:
      return rule satisfies never;
  }
}

function refusalOf(jobs: readonly Job[], day: CrewDay, slack: Hours): Refusal | undefined {
  if (jobs.length < 1 || jobs.length > mostJobs) return { kind: 'jobs', count: jobs.length };
  const names = jobs.map(({ name }) => name);
  const twice = names.find((name, at) => names.indexOf(name) !== at);
  if (twice !== undefined) return { kind: 'same_name', name: twice };
  const empty = jobs.find(({ blocks }) => blocks.length === 0);
  if (empty !== undefined) return { kind: 'no_blocks', job: empty.name };
  const count = countOrders(jobs.map(({ blocks }) => blocks.length));
  if (count > mostOrders) return { kind: 'orders', count };
  return hoursRefusal(jobs, day, slack) ?? driveRefusal(jobs, day);
}

function hoursRefusal(jobs: readonly Job[], day: CrewDay, slack: Hours): Refusal | undefined {
  for (const { name: job, blocks } of jobs) {
    for (const { name: block, length, cure } of blocks) {
      if (![length, cure.least].every(isLength)) return { kind: 'bad_hours', job, block };
      if (cure.most !== undefined && !(cure.most >= cure.least)) return { kind: 'no_window', job, block };
    }
  }
  const times: readonly ClockHour[] = [day.starts, day.endsBy];
  const isDay = times.every(Number.isFinite) && Number.isInteger(day.grinders) && day.grinders >= 0;
  const areLengths = [slack, ...day.drives.map(({ length }) => length)].every(isLength);
  return isDay && areLengths ? undefined : { kind: 'bad_day' };
}

function isLength(length: Hours): boolean {
  return Number.isFinite(length) && length >= 0;
}

function driveRefusal(jobs: readonly Job[], { startsAt, endsAt, drives }: CrewDay): Refusal | undefined {
  const sites = jobs.map(({ site }) => site);
  const ends = [startsAt, endsAt].filter((site) => site !== undefined);
  for (const from of [...sites, ...ends]) {
    const to = sites.find((site) => driveBetween(from, site, drives) === undefined);
    if (to !== undefined) return { kind: 'no_drive', from, to };
  }
  return undefined;
}
