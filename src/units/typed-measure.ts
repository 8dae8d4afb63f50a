import { fromMetric } from './conversion.ts';
import { fifteenDigits } from './decimal-rounding.ts';
import { formatForTyping, formatQuantity, isMoney, unitSuffix } from './format.ts';
import { type Measures, unitIn } from './measures.ts';
import { readTyped, type TypedOptions, type TypedReading } from './typed-number.ts';
import type { Unit } from './unit.ts';

/** What a number without any unit is written with. */
const numberOnly = /^[\d\s.,+\-*/()×÷−–—½¼¾⅛⅜⅝⅞xX✕$%]*$/;
const plainNumber = /^-?\d+(\.\d+)?$/;

/**
 * Reads what is typed where numbers are shown in `measures`: a number alone is meant in the unit that is shown, and a unit
 * behind it, or feet and inch marks, may be of either. The value is in `unit`, as it is stored. Faults are those of
 * `readTyped`. Example: '6.9' of ft in metric → 22.6378…; "22' 7\"" → 22.5833…, echo `22' 7" = 6.8834 m`.
 */
export function readTypedIn(text: string, unit: Unit, measures: Measures, options?: TypedOptions): TypedReading {
  const metric = unitIn(unit, 'metric');
  if (metric === unit) return readTyped(text, unit, options);
  const [expected, other] = measures === 'metric' ? [metric, unit] : [unit, metric];
  const read = readTyped(text, expected, options);
  if (read.kind === 'number') return { ...read, value: stored(read.value, expected, unit) };
  const foreign = numberOnly.test(text) ? read : readTyped(text, other, options);
  if (foreign.kind === 'fault') return read;
  const value = stored(foreign.value, other, unit);
  const shown = formatQuantity(value, unit, isMoney(unit) ? { measures } : { measures, digits: 4 });
  return { kind: 'number', value, echo: `${text.trim()} = ${shown}` };
}

/**
 * The text to keep with an entry: only what says more than its number, and with its unit wherever the unit stored is
 * another. Example: '3*2.3' typed in metres → '3*2.3 m'; '6.9' → undefined.
 */
export function textToKeep(text: string, value: number, unit: Unit, measures: Measures): string | undefined {
  const typed = text.trim();
  const isPlain = plainNumber.test(typed);
  const shown = unitIn(unit, measures);
  if (shown === unit) return isPlain ? undefined : typed;
  if (isPlain && Number(formatForTyping(value, unit, measures)) === Number(typed)) return undefined;
  return numberOnly.test(typed) ? typed + suffixOf(shown) : typed;
}

/**
 * The text that stands in a field: what was typed, where that is in the unit shown and still says the value, or else the
 * value's number.
 */
export function standingText(value: number, typed: string | undefined, unit: Unit, measures: Measures): string {
  const shown = unitIn(unit, measures);
  const read = typed === undefined ? undefined : readTyped(typed, shown);
  if (typed === undefined || read?.kind !== 'number') return formatForTyping(value, unit, measures);
  if (fifteenDigits(stored(read.value, shown, unit)) !== fifteenDigits(value))
    return formatForTyping(value, unit, measures);
  const suffix = suffixOf(shown);
  return shown !== unit && suffix !== '' && typed.endsWith(suffix) ? typed.slice(0, -suffix.length) : typed;
}

function stored(value: number, typedIn: Unit, unit: Unit): number {
  return typedIn === unit ? value : fromMetric(value, unit);
}

function suffixOf(unit: Unit): string {
  const suffix = unitSuffix(unit);
  return suffix === '' || suffix.startsWith('/') ? suffix : ` ${suffix}`;
}
