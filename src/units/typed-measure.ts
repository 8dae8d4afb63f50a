import { fromMetric } from './conversion.ts';
import { fifteenDigits, roundTo } from './decimal-rounding.ts';
import { lengthScale, readUnmarkedFeet, writeFeetInches } from './feet-inches.ts';
import { type FormatOptions, formatForTyping, formatNumber, formatQuantity, isMoney, unitSuffix } from './format.ts';
import { type Measures, unitIn } from './measures.ts';
import { readTyped, type TypedOptions, type TypedReading } from './typed-number.ts';
import { splitTypedUnit } from './typed-unit.ts';
import type { Unit } from './unit.ts';

/** What a number without any unit is written with. */
const numberOnly = /^[\d\s.,+\-*/()×÷−–—½¼¾⅛⅜⅝⅞xX✕$%]*$/;
const plainNumber = /^-?\d+(\.\d+)?$/;
/** What reads right with its unit behind it, and a $ before it: numbers and arithmetic without any sign of a unit. */
const bareNumber = /^[\d\s.,+\-*/()×÷−–—½¼¾⅛⅜⅝⅞xX✕]*$/;
/** One length with its marks: `76' 6 1/2"`, `76'`, `6"`. */
const markedLength = /^[\d.,]+ ?['‘’′`]([ -]?[\d.,/ ½¼¾⅛⅜⅝⅞]+(["“”″]|'')?)?$|^[\d.,/ ½¼¾⅛⅜⅝⅞]+(["“”″]|'')$/;
const sixteenthsOfFoot = 192;
const allButNoise = 6;
const echoDecimals = 4;

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
  const shown = formatQuantity(value, unit, echoForm(unit, measures));
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

/** A text as it stands in a field that has its unit beside it. */
export interface FieldText {
  readonly text: string;
  /** It says its unit itself, as feet and inches do: nothing is to stand behind it. */
  readonly saysUnit: boolean;
}

/**
 * What stands in a field for a text that was typed, so that no unit and no $ is said twice: '$41.50/h' → '41.50',
 * '8 percent' → '8', "20' * 20'" of ft2 → '400'. Feet and inches stay, without ft behind them: `76' 6"`; '22 7' becomes
 * `22' 7"`. What cannot be read stays as it was typed.
 */
export function textBesideUnit(text: string, unit: Unit, measures: Measures): FieldText {
  const typed = text.trim();
  if (plainNumber.test(typed)) return { text: typed, saysUnit: false };
  const read = readTypedIn(typed, unit, measures);
  if (read.kind === 'fault') return { text, saysUnit: false };
  const length = lengthScale(unitIn(unit, measures));
  if (length?.power === 1 && markedLength.test(typed)) return { text: typed, saysUnit: true };
  const isUnmarked = length?.power === 1 && length.unit === 'ft' && readUnmarkedFeet(typed) !== undefined;
  if (isUnmarked && Number.isInteger(roundTo(read.value * sixteenthsOfFoot, allButNoise)))
    return { text: writeFeetInches(read.value), saysUnit: true };
  if (bareNumber.test(typed) && !isUnmarked) return { text: typed, saysUnit: false };
  return { text: numberIn(typed, read.value, unit, measures), saysUnit: false };
}

/** The number of a text with a unit: with the digits it was typed with, if without the unit they are still that value. */
function numberIn(typed: string, value: number, unit: Unit, measures: Measures): string {
  const number = splitTypedUnit(typed).number.replaceAll('$', '').trim();
  const alone = number !== typed && bareNumber.test(number) ? readTypedIn(number, unit, measures) : undefined;
  if (alone?.kind === 'number' && alone.value === value) return number;
  return formatNumber(value, unit, echoForm(unit, measures)).replaceAll(/[$,]/g, '');
}

function echoForm(unit: Unit, measures: Measures): FormatOptions {
  return isMoney(unit) ? { measures } : { measures, digits: echoDecimals };
}

function stored(value: number, typedIn: Unit, unit: Unit): number {
  return typedIn === unit ? value : fromMetric(value, unit);
}

function suffixOf(unit: Unit): string {
  const suffix = unitSuffix(unit);
  return suffix === '' || suffix.startsWith('/') ? suffix : ` ${suffix}`;
}
