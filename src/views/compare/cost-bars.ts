import { lineValue } from '../../quote/option-results.ts';
import { formatNumber, formatQuantity } from '../../units/format.ts';
import type { Measures } from '../../units/measures.ts';
import { one, parseUnit } from '../../units/unit.ts';
import type { NamedResults } from '../parts/named-results.ts';

/** One option's price by the square foot or metre as a stack of what it pays for, margin last, to the scale all bars share. */
export interface CostBar {
  readonly title: string;
  readonly total: string;
  readonly parts: readonly CostPart[];
}

export interface CostPart {
  readonly label: string;
  /** Where it begins and how long it is, as shares of the longest bar. */
  readonly start: number;
  readonly share: number;
  readonly amount: string;
  /** Which of the chart's tones it has. */
  readonly tone: number;
}

const groups = [
  { label: 'Materials', lines: ['materials_cost', 'consumables_cost'] },
  { label: 'Labour', lines: ['labour_cost'] },
  { label: 'Equipment and travel', lines: ['equipment_cost', 'travel_cost'] },
  { label: 'Overhead and risk', lines: ['overhead_cost', 'contingency_cost', 'reserve_cost'] },
  { label: 'Commission and fees', lines: ['commission', 'fees'] },
  { label: 'Net profit', lines: ['profit'] },
] as const;

/** Bars of the options whose every part can be worked out. A loss has no part: its bar is longer than the price. */
export function costBars(options: readonly NamedResults[], measures: Measures): CostBar[] {
  const perFoot = options.flatMap(({ title, results }) => {
    const area = lineValue(results, 'floor_area');
    const amounts = groups.map(({ lines }) => lines.reduce((sum, line) => sum + Number(lineValue(results, line)), 0));
    if (typeof area !== 'number' || area <= 0 || !amounts.every(Number.isFinite)) return [];
    return [{ title, amounts: amounts.map((amount) => amount / area), total: lineValue(results, 'price_per_sqft') }];
  });
  const longest = Math.max(
    0,
    ...perFoot.map(({ amounts }) => amounts.reduce((sum, amount) => sum + Math.max(0, amount), 0)),
  );
  return perFoot.map(({ title, amounts, total }) => {
    let start = 0;
    const parts = amounts.map((amount, tone): CostPart => {
      const share = longest === 0 ? 0 : Math.max(0, amount) / longest;
      const part = { label: groups[tone]?.label ?? '', start, share, amount: dollars(amount, measures), tone };
      start += share;
      return part;
    });
    return { title, total: typeof total === 'number' ? dollars(total, measures) : '', parts };
  });
}

function dollars(amount: number, measures: Measures): string {
  const unit = parseUnit('$/ft2');
  return unit.kind === 'unit' ? formatQuantity(amount, unit.unit, { measures }) : formatNumber(amount, one);
}
