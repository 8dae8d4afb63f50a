import type { OptionResults } from '../quote/option-results.ts';
import { holdsBack, openChecks } from '../quote/told-checks.ts';
import { formatQuantity } from '../units/format.ts';
import type { Measures } from '../units/measures.ts';
import { isForSale } from './for-sale.ts';
import { lineIn, wordsOf } from './option-cells.ts';
import type { PricedSystem } from './price-systems.ts';
import { layTable, type TextColumn } from './text-layout.ts';

const left: TextColumn = { heading: '', align: 'left' };
const right: TextColumn = { heading: '', align: 'right' };

/** A line a system: title, price, price a square foot, days on site; what is not for sale says so. */
export function briefOutput(systems: readonly PricedSystem[], measures: Measures = 'us'): string {
  return `${briefLines(systems, measures).join('\n')}\n`;
}

export function briefLines(systems: readonly PricedSystem[], measures: Measures): string[] {
  const rows = systems.map(({ sheet, results }) => [
    sheet.title,
    priceText(results),
    wordsOf(lineIn(results, 'price_per_sqft'), measures),
    daysText(results, measures),
    notForSale(results),
  ]);
  return layTable([left, right, right, left, left], rows);
}

/** Whole dollars where the price is; `incomplete` where there is none. */
export function priceText(results: OptionResults): string {
  const price = lineIn(results, 'price');
  if (typeof price?.value !== 'number' || price.type.kind !== 'number') return 'incomplete';
  return formatQuantity(price.value, price.type.unit, { digits: Number.isInteger(price.value) ? 0 : 2 });
}

function daysText(results: OptionResults, measures: Measures): string {
  const days = lineIn(results, 'work_days');
  return typeof days?.value === 'number' ? `${wordsOf(days, measures)} on site` : '';
}

function notForSale(results: OptionResults): string {
  if (isForSale(results)) return '';
  const stops = openChecks(results).filter(holdsBack).length;
  return stops === 0 ? 'not for sale' : `not for sale: ${stops} stop${stops === 1 ? '' : 's'}`;
}
