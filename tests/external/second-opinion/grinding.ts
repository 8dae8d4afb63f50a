import { measured } from './material-needs.ts';
import { numberIn, type PrintedQuote } from './printed-quote.ts';

interface Grinders {
  /** Square feet an hour on the usual slab, by one person. */
  readonly rate: number;
  readonly dayCost: number;
}

/** Between two sizes of floor either grinder does it: each grinds its share of the floor, and its hours are added up. */
export function grindersFor(quote: PrintedQuote): Grinders {
  const mix = Object.entries(sharesOf(quote)).map(([machine, share]) => {
    const set = quote.row('machine_sets', 'machine', machine);
    return { hours: share / numberIn(set, 'set_rate'), dayCost: share * numberIn(set, 'set_day_cost') };
  });
  const total = (of: 'hours' | 'dayCost'): number => mix.reduce((sum, each) => sum + each[of], 0);
  return { rate: 1 / total('hours'), dayCost: total('dayCost') };
}

/** Of the floor, by machine. */
function sharesOf(quote: PrintedQuote): Readonly<Record<string, number>> {
  const chosen = quote.choice('grinder');
  if (chosen !== 'by_floor_size') return { [chosen]: 1 };
  const { area } = measured(quote);
  const large = along(area, quote.entry('planetary_from'), quote.entry('planetary_always'));
  const hand = 1 - along(area, quote.entry('hand_tools_under'), quote.entry('walk_behind_from'));
  return { hand_tools: hand, walk_behind: 1 - large - hand, large_planetary: large };
}

/** How far a number is on its way: 0 up to the first, 1 from the last. */
export function along(at: number, first: number, last: number): number {
  return Math.min(1, Math.max(0, (at - first) / (last - first)));
}
