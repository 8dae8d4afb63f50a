import { type Route, routeBetween, trialOf } from '../formula/trial.ts';
import type { OptionPlan } from '../template/plan.ts';
import type { ResultLine } from '../template/result-lines.ts';
import { roundTo } from '../units/decimal-rounding.ts';
import { lineValue, type OptionResults } from './option-results.ts';

/** One step of the walk from one price to another. */
export interface WalkStep {
  /** The cost that changes; `rest` is discount, minimum, target and rounding. */
  readonly cost: WalkedCost | 'rest';
  /** What it does to the price, in dollars and whole cents. */
  readonly delta: number;
  /** What stands behind it: how much more the other option has of it, in the unit of `line`. */
  readonly because?: { readonly line: string; readonly more: number };
}

export type PriceWalk =
  | { readonly kind: 'walk'; readonly from: number; readonly to: number; readonly steps: readonly WalkStep[] }
  /** One of the prices cannot be worked out. */
  | { readonly kind: 'incomplete' };

const walkedCosts = [
  'materials_cost',
  'consumables_cost',
  'labour_cost',
  'equipment_cost',
  'travel_cost',
  'overhead_cost',
  'reserve_cost',
] as const satisfies readonly ResultLine[];

export type WalkedCost = (typeof walkedCosts)[number];

/** The line that says in hours, days or trips what a cost's step is about. */
const behind: Partial<Record<WalkedCost, string>> = {
  labour_cost: 'paid_hours',
  equipment_cost: 'crew_days',
  travel_cost: 'round_trips',
  overhead_cost: 'paid_hours',
};

const cents = 2;

/**
 * Walks from one option's price to another's: each cost in turn takes the other's value in the first one's own formulas, and
 * the list price is read after each. What is left at the end is one step. The steps add up to the difference to the cent.
 */
export function priceWalk(from: OptionResults, to: OptionResults): PriceWalk {
  const [fromPrice, toPrice] = [lineValue(from, 'price'), lineValue(to, 'price')];
  const others = walkedCosts.map((cost) => lineValue(to, cost));
  if (typeof fromPrice !== 'number' || typeof toPrice !== 'number') return { kind: 'incomplete' };
  if (!others.every((value) => typeof value === 'number')) return { kind: 'incomplete' };
  const route = routeOf(from.option);
  const trial = trialOf(route, from.read);
  const listPrice = (): number => {
    const value = trial.result();
    return typeof value === 'number' ? value : Number.NaN;
  };
  let before = listPrice();
  const steps = walkedCosts.flatMap((cost, at): WalkStep[] => {
    const other = others[at];
    trial.setValue(route.tried[at] ?? -1, typeof other === 'number' ? other : 0);
    const after = listPrice();
    const delta = roundTo(after - before, cents);
    before = after;
    return delta === 0 ? [] : [{ cost, delta, ...reason(cost, from, to) }];
  });
  const rest = roundTo(toPrice - fromPrice - steps.reduce((sum, step) => sum + step.delta, 0), cents);
  const all: readonly WalkStep[] = rest === 0 ? steps : [...steps, { cost: 'rest', delta: rest }];
  return { kind: 'walk', from: fromPrice, to: toPrice, steps: all };
}

/** How an option's walked costs lead to its list price: the same for every walk over its plan. */
const routes = new WeakMap<OptionPlan, Route>();

function routeOf(option: OptionPlan): Route {
  const known = routes.get(option);
  if (known !== undefined) return known;
  const { lines } = option.plan;
  const route = routeBetween(
    option.plan,
    option.graph,
    walkedCosts.map((cost) => lines.get(cost) ?? -1),
    lines.get('list_price') ?? -1,
  );
  routes.set(option, route);
  return route;
}

function reason(cost: WalkedCost, from: OptionResults, to: OptionResults): Pick<WalkStep, 'because'> {
  const line = behind[cost];
  if (line === undefined || !from.option.plan.lines.has(line) || !to.option.plan.lines.has(line)) return {};
  const [mine, other] = [lineValue(from, line), lineValue(to, line)];
  if (typeof mine !== 'number' || typeof other !== 'number' || mine === other) return {};
  return { because: { line, more: other - mine } };
}
