import type { Amount, AmountResult, LiteralResult } from './arithmetic.ts';
import { roundTo } from './decimal-rounding.ts';
import { readDecimal } from './decimal-text.ts';
import { messages } from './messages.ts';
import type { Unit } from './unit.ts';

/** How feet and inches count in the unit that is wanted. */
export interface LengthScale {
  readonly unit: 'ft' | 'in';
  /** 1 for a length, 2 for an area, 3 for a volume. */
  readonly power: number;
}

type Inches =
  | { readonly kind: 'inches'; readonly value: number; readonly spoken: string }
  | { readonly kind: 'fault'; readonly reason: string };

const inchesPerFoot = 12;
const sixteenths = 16;

const number = String.raw`\d[\d.,]*|\.\d+`;
const inches = String.raw`\d+ \d+/\d+|\d+/\d+|${number}`;
const afterFeet = new RegExp(`(${number}) ?'(?:(?:-(?=[\\d.])| ?)(${inches}) ?"?)?`, 'y');
const inchesAlone = new RegExp(`(${inches}) ?"`, 'y');
const dashForm = new RegExp(`^(${number})-(${inches}) ?("?)$`);
const spaceForm = new RegExp(`^(\\d+) (${inches}) ?("?)$`);
const fractionForm = /^(\d+)\/(\d+)$/;

/** The scale for ft, in and their powers; undefined where feet and inch marks have no meaning. */
export function lengthScale(unit: Unit): LengthScale | undefined {
  const [only, ...others] = unit.powers;
  if (only === undefined || others.length > 0 || unit.text !== unit.text.replace(/[^a-z0-9]/g, '')) return undefined;
  const [atom, power] = only;
  return (atom === 'ft' || atom === 'in') && power > 0 ? { unit: atom, power } : undefined;
}

/** Feet and inches in words made marks: `22 ft 7 in` → `22 ' 7 "`; sq ft becomes ft2. */
export function markLengthWords(text: string): string {
  return text
    .replace(/(?:sq|square)\.? ?(ft|feet|foot|in|inch|inches)\b\.?/gi, (_, word: string) => `${baseWord(word)}2`)
    .replace(/(?:cu|cubic)\.? ?(ft|feet|foot|in|inch|inches)\b\.?/gi, (_, word: string) => `${baseWord(word)}3`)
    .replace(/(^|[^A-Za-z])(?:linear feet|lin\.? ?ft|lf|feet|foot|ft)\b\.?/gi, "$1'")
    .replace(/(^|[^A-Za-z])(?:inches|inch|in)\b\.?/gi, '$1"');
}

/**
 * A whole entry of a length in feet that means feet and inches without a foot mark: `22-7.5`, `22-7 1/2`, `22 7`.
 * Undefined when it is something else. Faults: 24-20 (inches below 12), 22 7/8 and 22-7/8 (feet or inches?).
 */
export function readUnmarkedFeet(text: string): AmountResult | undefined {
  const dash = dashForm.exec(text);
  const match = dash ?? spaceForm.exec(text);
  if (match === null) return undefined;
  const [, feet = '', inchText = '', mark] = match;
  if (fractionForm.test(inchText)) {
    if (dash !== null) return { kind: 'fault', reason: messages.dashFraction(feet, inchText) };
    // `7 1/2"` is inches only and is read as a literal.
    return mark === '"' ? undefined : { kind: 'fault', reason: messages.feetThenFraction(feet, inchText) };
  }
  const read = readInches(inchText);
  if (read.kind === 'fault') return read;
  if (dash !== null && read.value >= inchesPerFoot) {
    return { kind: 'fault', reason: messages.subtractOrInches(feet, inchText) };
  }
  return joinFeet(feet, read, { unit: 'ft', power: 1 });
}

/** A number with feet or inch marks at a place in the text; undefined when there is none. */
export function readMarkedLength(text: string, at: number, scale: LengthScale): LiteralResult | undefined {
  afterFeet.lastIndex = at;
  const feet = afterFeet.exec(text);
  if (feet !== null) {
    const [, feetText = '', inchText] = feet;
    const read = inchText === undefined ? undefined : readInches(inchText);
    if (read?.kind === 'fault') return read;
    return literal(joinFeet(feetText, read, scale), afterFeet.lastIndex);
  }
  inchesAlone.lastIndex = at;
  const alone = inchesAlone.exec(text);
  if (alone === null) return undefined;
  const read = readInches(alone[1] ?? '');
  if (read.kind === 'fault') return read;
  return literal({ kind: 'amount', amount: lengthOf(read.value, `${read.spoken} in`, scale) }, inchesAlone.lastIndex);
}

/** A whole number and a fraction, `7 1/2` → 7.5; the fraction is proper. */
export function readMixedNumber(whole: string, fraction: string): AmountResult {
  const match = fractionForm.exec(fraction);
  const above = Number(match?.[1]);
  const below = Number(match?.[2]);
  if (!(above < below)) return { kind: 'fault', reason: messages.fraction(fraction) };
  return { kind: 'amount', amount: { value: Number(whole) + above / below } };
}

/**
 * A length in feet as feet, inches and the nearest sixteenth of an inch: 22.7 → `22' 8 3/8"`. `readTyped` reads it
 * back to within 1/32 in.
 */
export function writeFeetInches(feet: number): string {
  if (!Number.isFinite(feet)) return 'not a number';
  const total = roundTo(Math.abs(feet) * inchesPerFoot * sixteenths, 0);
  const wholeFeet = Math.floor(total / (inchesPerFoot * sixteenths));
  const wholeInches = Math.floor(total / sixteenths) % inchesPerFoot;
  const fraction = writeSixteenths(total % sixteenths);
  const inchText = [wholeInches === 0 && fraction !== '' ? '' : String(wholeInches), fraction].join(' ').trim();
  const parts = [wholeFeet === 0 && total > 0 ? '' : `${wholeFeet}'`, inchText === '0' ? '' : `${inchText}"`];
  return (feet < 0 && total > 0 ? '−' : '') + parts.join(' ').trim();
}

function writeSixteenths(count: number): string {
  if (count === 0) return '';
  let [above, below] = [count, sixteenths];
  while (above % 2 === 0) [above, below] = [above / 2, below / 2];
  return `${above}/${below}`;
}

function readInches(text: string): Inches {
  const [first = '', second] = text.split(' ');
  const fraction = second ?? (fractionForm.test(first) ? first : undefined);
  if (fraction !== undefined) {
    const read = readMixedNumber(second === undefined ? '0' : first, fraction);
    return read.kind === 'fault' ? read : { kind: 'inches', value: read.amount.value, spoken: text };
  }
  const read = readDecimal(first);
  return read.kind === 'fault' ? read : { kind: 'inches', value: read.value, spoken: first };
}

function joinFeet(
  feetText: string,
  read: Extract<Inches, { kind: 'inches' }> | undefined,
  scale: LengthScale,
): AmountResult {
  const feet = readDecimal(feetText);
  if (feet.kind === 'fault') return feet;
  if (read === undefined) {
    return { kind: 'amount', amount: lengthOf(feet.value * inchesPerFoot, `${feetText} ft`, scale) };
  }
  if (!Number.isInteger(feet.value)) return { kind: 'fault', reason: messages.wholeFeet(feetText) };
  if (read.value >= inchesPerFoot) return { kind: 'fault', reason: messages.inchesUnderTwelve(read.spoken) };
  const total = feet.value * inchesPerFoot + read.value;
  return { kind: 'amount', amount: lengthOf(total, `${feetText} ft ${read.spoken} in`, scale) };
}

function lengthOf(totalInches: number, spoken: string, scale: LengthScale): Amount {
  return { value: scale.unit === 'ft' ? totalInches / inchesPerFoot : totalInches, lengthPower: 1, spoken };
}

function literal(read: AmountResult, end: number): LiteralResult {
  return read.kind === 'fault' ? read : { kind: 'literal', amount: read.amount, end };
}

function baseWord(word: string): 'ft' | 'in' {
  return word.toLowerCase().startsWith('f') ? 'ft' : 'in';
}
