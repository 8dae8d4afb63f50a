import { unitOf } from '../../formula/value-type.ts';
import { lineValue, type OptionResults } from '../../quote/option-results.ts';
import type { ResultLine } from '../../template/result-lines.ts';
import { type FormatOptions, formatQuantity, isShare } from '../../units/format.ts';
import type { Measures } from '../../units/measures.ts';
import { labelIn } from '../../units/said-units.ts';
import { one, type Unit } from '../../units/unit.ts';

/** A line's value with its unit; a dash for what cannot be worked out. */
export function shownLine(results: OptionResults, name: string, measures: Measures = 'us'): string {
  const cell = results.option.plan.lines.get(name);
  const planned = cell === undefined ? undefined : results.option.plan.cells[cell];
  if (cell === undefined || planned === undefined) return '';
  const value = results.read(cell);
  return typeof value === 'number' && planned.type.kind === 'number'
    ? formatQuantity(value, planned.type.unit, { measures })
    : '–';
}

/** How results are said beside each other: shares and hours to a tenth, all else as its unit has it. */
export function saidAs(unit: Unit, measures: Measures): FormatOptions {
  return isShare(unit) || unit.text === 'h' ? { digits: 1, measures } : { measures };
}

/** A result with its unit, as it is said beside others; a dash for what cannot be worked out. */
export function shownResult(results: OptionResults, name: ResultLine, measures: Measures = 'us'): string {
  const value = lineValue(results, name);
  const type = results.stack.lines.get(name)?.type;
  if (typeof value !== 'number' || type?.kind !== 'number') return '–';
  return formatQuantity(value, type.unit, saidAs(type.unit, measures));
}

/** A line's label, with the units it says in words in `measures`; its name where no sheet has it. */
export function lineLabel({ stack }: OptionResults, name: string, measures: Measures): string {
  const line = stack.lines.get(name);
  return line === undefined ? name : labelIn(line.definition.label, unitOf(line.type), measures);
}

/** $4,250; cents only where there are some. */
export function wholeDollars(amount: number): string {
  return `$${formatQuantity(amount, one, { digits: Number.isInteger(amount) ? 0 : 2 })}`;
}

/** What stands by a price that may not be given, wherever there is no room for the reason. */
export const notYet = 'not yet';

/** An option's price, or that it is incomplete. */
export function wholePrice(results: OptionResults): string {
  const price = lineValue(results, 'price');
  return typeof price === 'number' ? wholeDollars(price) : 'incomplete';
}
