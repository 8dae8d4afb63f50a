import { type Amount, type AmountResult, type LiteralResult, readArithmetic } from './arithmetic.ts';
import { readDecimal } from './decimal-text.ts';
import {
  type LengthScale,
  lengthScale,
  markLengthWords,
  readMarkedLength,
  readMixedNumber,
  readUnmarkedFeet,
  writeFeetInches,
} from './feet-inches.ts';
import { formatQuantity, isMoney, isShare } from './format.ts';
import { messages } from './messages.ts';
import { readIsoDate } from './serial-day.ts';
import { saysUnit, splitTypedUnit } from './typed-unit.ts';
import { prettyUnit, type Unit } from './unit.ts';

export type TypedReading =
  | {
      readonly kind: 'number';
      /** In the unit that was asked for; a share as a fraction of 1, a date as its serial day. */
      readonly value: number;
      /** How an entry was understood that could be read in two ways: '22 ft 7 in = 22.5833 ft'. */
      readonly echo?: string;
    }
  | { readonly kind: 'fault'; readonly reason: string };

export interface TypedOptions {
  /** How a bare number in a share is meant: 8 is 8 % (the default), or 0.08 is 8 %. '8 %' is 0.08 in both. */
  readonly shareAs?: 'percent' | 'fraction';
}

const longestText = 200;
const fractionCharacters: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};
const numberRun = /[\d.,]+/y;
const mixedNumber = /(\d+) (\d+\/\d+)(?![\d.,])/y;

/**
 * Reads what people type into a field of the given unit: numbers with either decimal separator, arithmetic
 * ('24*22+60'), the unit behind ('528 sq ft') or $ before, shares, dates as YYYY-MM-DD, and in lengths feet and
 * inches (`22' 7 1/2"`, `22-7.5`, `22 7`). Never a guess and never 0 for what is no number: a fault says what
 * would be right. Example: `readTyped("22 7", ft)` → 22.5833…, echo '22 ft 7 in = 22.5833 ft'.
 */
export function readTyped(text: string, unit: Unit, options: TypedOptions = {}): TypedReading {
  const example = exampleOf(unit);
  if (text.length > longestText) return fault(messages.tooLong(longestText));
  const tidy = tidyText(text);
  if (tidy === '') return fault(messages.numberMissing(example));
  if (unit.text === 'date') return readDate(tidy);
  if (/\d[eE][+-]?\d/.test(tidy)) return fault(messages.exponent);
  const length = lengthScale(unit);
  const { number, suffix } = splitTypedUnit(timesSign(length === undefined ? tidy : markLengthWords(tidy)));
  if (suffix !== '') {
    if (!/\d/.test(number)) return fault(messages.notANumber(tidy, example));
    if (!saysUnit(suffix, unit)) return fault(messages.wrongUnit(suffix, prettyUnit(unit)));
  }
  const read = readNumber(number, unit, length);
  if (read.kind === 'fault') return read;
  // Arithmetic may end at a 0 with a minus; nobody typed that.
  const value = (isPercent(suffix, unit, options) ? read.amount.value / 100 : read.amount.value) + 0;
  const echo = echoOf(number, read.amount, value, unit);
  return echo === undefined ? { kind: 'number', value } : { kind: 'number', value, echo };
}

function readNumber(number: string, unit: Unit, length: LengthScale | undefined): AmountResult {
  if (length === undefined && /['"]/.test(number)) return fault(messages.noFeetMarks);
  const isFeet = length?.unit === 'ft' && length.power === 1;
  const unmarked = isFeet ? readUnmarkedFeet(number) : undefined;
  if (unmarked !== undefined) return unmarked;
  const read = readArithmetic(number, {
    readLiteral: (text, at) => readLiteral(text, at, unit, length),
    spacedMinus: isFeet,
  });
  if (read.kind === 'fault') return read;
  const { lengthPower } = read.amount;
  return lengthPower === undefined || lengthPower === length?.power
    ? read
    : fault(messages.feetPower(prettyUnit(unit)));
}

function readLiteral(text: string, start: number, unit: Unit, length: LengthScale | undefined): LiteralResult {
  let at = start;
  if (text[at] === '$') {
    if (!isMoney(unit)) return fault(messages.noDollars(prettyUnit(unit)));
    at += text[at + 1] === ' ' ? 2 : 1;
  }
  const marked = length === undefined ? undefined : readMarkedLength(text, at, length);
  if (marked !== undefined) return marked;
  mixedNumber.lastIndex = at;
  const mixed = mixedNumber.exec(text);
  if (mixed !== null) {
    const [, whole = '', fraction = ''] = mixed;
    if (length?.unit === 'ft') return fault(messages.feetThenFraction(whole, fraction));
    const read = readMixedNumber(whole, fraction);
    return read.kind === 'fault' ? read : { kind: 'literal', amount: read.amount, end: mixedNumber.lastIndex };
  }
  numberRun.lastIndex = at;
  const run = numberRun.exec(text);
  if (run === null) return fault(messages.notInNumber(text.slice(at, at + 1), exampleOf(unit)));
  const read = readDecimal(run[0]);
  if (read.kind === 'fault') return read;
  return { kind: 'literal', amount: { value: read.value }, end: numberRun.lastIndex };
}

function readDate(text: string): TypedReading {
  const read = readIsoDate(text);
  return read.kind === 'fault' ? read : { kind: 'number', value: read.day };
}

/** One way to write each sign that keyboards and papers write in several. */
function tidyText(text: string): string {
  return text
    .replace(/[‘’′`]/g, "'")
    .replace(/[“”″]|''/g, '"')
    .replace(/[×✕]/g, '*')
    .replace(/÷/g, '/')
    .replace(/[−–—]/g, '-')
    .replace(
      /(\d?)([½¼¾⅛⅜⅝⅞])(?!\d)/g,
      (_, digit: string, sign: string) => `${digit}${digit === '' ? '' : ' '}${fractionCharacters[sign] ?? sign}`,
    )
    .replace(/([A-Za-zµμ]) ?\^ ?([23])/g, '$1$2')
    .replace(/([A-Za-zµμ])²/g, '$12')
    .replace(/([A-Za-zµμ])³/g, '$13')
    .replace(/(^|[^A-Za-z])per\b/gi, '$1/')
    .replace(/\s+/g, ' ')
    .trim();
}

/** '24 x 22' says times; '0x10' does not. */
function timesSign(text: string): string {
  return text.replace(/([\d'")]) ?[xX] ?(?=[\d(.])/g, (whole, before: string, at: number) =>
    before === '0' && whole.length === 2 && !/[\d.]/.test(text[at - 1] ?? '') ? whole : `${before} * `,
  );
}

function isPercent(suffix: string, unit: Unit, options: TypedOptions): boolean {
  if (/^(%|percent|pct)/i.test(suffix)) return true;
  return isShare(unit) && options.shareAs !== 'fraction';
}

function echoOf(number: string, amount: Amount, value: number, unit: Unit): string | undefined {
  const shown = formatQuantity(value, unit, isMoney(unit) ? undefined : { digits: 4 });
  if (amount.spoken !== undefined) return amount.spoken === shown ? undefined : `${amount.spoken} = ${shown}`;
  if (amount.worked === true) return `${number} = ${shown}`;
  if (unit.text !== 'ft' || Number.isInteger(value)) return undefined;
  const isExact = Number.isInteger(value * 12 * 16);
  return `${shown} ${isExact ? '=' : '≈'} ${writeFeetInches(value)}`;
}

function exampleOf(unit: Unit): string {
  if (unit.text === 'ft') return `22.5 or 22' 6"`;
  if (isMoney(unit)) return '38.50';
  if (isShare(unit)) return '8 %';
  return '12.5';
}

function fault(reason: string): { readonly kind: 'fault'; readonly reason: string } {
  return { kind: 'fault', reason };
}
