import { roundTo } from './decimal-rounding.ts';
import { type FormatOptions, formatQuantity, isShare } from './format.ts';
import { type Measures, shownIn } from './measures.ts';
import type { Unit } from './unit.ts';

/** Amounts that nobody weighs, pours or times finer than to a tenth, and less than one of them than to a hundredth. */
const amounts: ReadonlySet<string> = new Set(['gal', 'lb', 'min']);
/** Hours, temperatures, and how far apart two temperatures are. */
const toTenths: ReadonlySet<string> = new Set(['h', 'degF', 'ddegF', 'degC', 'ddegC']);
/** From here on a number has no decimals anyway. */
const wholeFrom = 1000;

/**
 * A worked-out number as a sentence says it: hours, shares and temperatures to a tenth; pounds, gallons and minutes to a
 * tenth, less than one of them to a hundredth; all else as its unit has it. Example: 9.566 of h → '9.6 h', 0.1843 of % →
 * '18.4 %', 0.845 of gal → '0.85 gal'. What somebody typed is not rounded: `formatQuantity` says it.
 */
export function saidQuantity(value: number, unit: Unit, options: FormatOptions = {}): string {
  const digits = saidDecimals(value, unit, options.measures ?? 'us');
  return formatQuantity(value, unit, digits === undefined ? options : { digits, ...options });
}

function saidDecimals(value: number, unit: Unit, measures: Measures): number | undefined {
  const size = Math.abs(shownIn(value, unit, measures).value) * (isShare(unit) ? 100 : 1);
  if (roundTo(size, 1) >= wholeFrom) return undefined;
  if (isShare(unit) || toTenths.has(unit.text)) return 1;
  return amounts.has(unit.text) ? (size < 1 ? 2 : 1) : undefined;
}
