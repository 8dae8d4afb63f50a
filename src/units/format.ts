import { roundTo } from './decimal-rounding.ts';
import { type Measures, shownIn, unitIn } from './measures.ts';
import { metricDecimals } from './metric-decimals.ts';
import { dateText, isDated, writeIsoDate } from './serial-day.ts';
import { declaredTerms, one, prettyUnit, type Unit } from './unit.ts';

export interface FormatOptions {
  /** Decimals: exactly so many for money (0 gives whole dollars), at most so many for everything else. */
  readonly digits?: number;
  /** What it is shown in; `us` unless given. */
  readonly measures?: Measures;
}

type NumberForm =
  | { readonly kind: 'decimals'; readonly fewest: number; readonly most: number }
  | { readonly kind: 'scientific' }
  | { readonly kind: 'typing' };

const trueMinus = '−';
const significantDigits = 4;
const moneyDecimals = 2;
/** Decimals and sizes beyond these are no longer read; they are shown as a power of ten. */
const mostDecimals = 15;
const largestPlain = 1e15;
/** Rounding to more places than a double has leaves its 15 digits. */
const allPlaces = 400;

/**
 * A value with its unit, for people to read: '$4,325.00', '8 %', '528 ft²', '11.97 mil', '2 visits', '65 °F',
 * '$38.00/h', a date as 2026-03-09, serial day 0 as 'no date'. About four significant digits, whole numbers never
 * shortened, trailing zeros trimmed except for money, a true minus sign, and never 0 for what is not 0. Not finite: 'not
 * a number'.
 * In metric a converted number has the decimals that people write (`metricDecimals`): 30 ft → '9.14 m', 8 in → '203 mm'.
 */
export function formatQuantity(value: number, unit: Unit, options?: FormatOptions): string {
  if (!Number.isFinite(value)) return formatNumber(value, unit, options);
  const number = formatNumber(value, unit, options);
  const suffix = unitSuffix(unit, number, options?.measures);
  return suffix === '' || suffix.startsWith('/') ? number + suffix : `${number} ${suffix}`;
}

/**
 * The number as `formatQuantity` shows it, without the unit that follows it (`unitSuffix`); the $ stays, since it
 * leads the number, and a share is shown ×100.
 */
export function formatNumber(value: number, unit: Unit = one, options?: FormatOptions): string {
  if (!Number.isFinite(value)) return 'not a number';
  if (unit.text === 'date') return dateText(value);
  const shown = shownIn(value, unit, options?.measures ?? 'us');
  const size = Math.abs(isShare(unit) ? timesHundred(value) : shown.value);
  const money = isMoney(unit);
  const usual = shown.unit === unit || money ? undefined : metricDecimals(size, shown.unit, money);
  const form = numberForm(size, money, options?.digits ?? usual);
  const text = formatter(form).format(form.kind === 'decimals' ? roundTo(size, form.most) : size);
  return (shown.value < 0 ? trueMinus : '') + (money ? '$' : '') + text;
}

/**
 * The unit as it stands behind the number: '%', 'ft²', '/h' for $/h; '' for `1`, `$` and dates. A word is
 * 'visit' when `number` (as `formatNumber` wrote it) is 1, else 'visits'.
 */
export function unitSuffix(declared: Unit, number = '', measures: Measures = 'us'): string {
  const unit = unitIn(declared, measures);
  if (unit.text === 'date') return '';
  const pretty = prettyUnit(unit);
  if (isMoney(unit)) return pretty.slice(1).replace(/^·/, '');
  const [first] = declaredTerms(unit);
  const isSingular = number === '1' || number === `${trueMinus}1`;
  if (first === undefined || first.atom.plural === first.atom.symbol || first.power < 0 || isSingular) return pretty;
  return first.atom.plural + pretty.slice(first.atom.symbol.length);
}

/**
 * The value as text for an edit field, all 15 digits, without unit: `readTyped` (shares as percent) gives the same
 * 15 digits back. Example: 0.0825 of % → '8.25'. Not finite: ''. In metric a number is rounded as it is shown, money to
 * cents: 22 ft → '6.71', 134 ft2/gal → '3.289'. What was typed with more digits than that has its text kept beside the
 * value (`textToKeep`), and that stands in the field (`standingText`).
 */
export function formatForTyping(value: number, unit: Unit, measures: Measures = 'us'): string {
  if (!Number.isFinite(value)) return '';
  if (unit.text === 'date') return isDated(value) ? writeIsoDate(value) : '';
  const shown = shownIn(value, unit, measures);
  const places = shown.unit === unit ? allPlaces : metricDecimals(shown.value, shown.unit, isMoney(unit));
  const number = roundTo(shown.value, places);
  return formatter({ kind: 'typing' }).format(isShare(unit) ? timesHundred(value) : number);
}

/** Whether the unit is dollars, or dollars per something. */
export function isMoney(unit: Unit): boolean {
  const [first] = declaredTerms(unit);
  return first?.atom.kind === 'money' && first.power === 1;
}

/** Whether a value of this unit is shown and typed ×100. */
export function isShare(unit: Unit): boolean {
  return declaredTerms(unit).some((term) => term.atom.kind === 'share' && term.power === 1);
}

/** ×100 on the 15 decimal digits, so that 0.07 is 7 and not 7.000000000000001. */
function timesHundred(share: number): number {
  return roundTo(roundTo(share, allPlaces) * 100, allPlaces);
}

function numberForm(size: number, money: boolean, digits: number | undefined): NumberForm {
  const magnitude = size === 0 ? 0 : Math.floor(Math.log10(size));
  if (size >= largestPlain || -magnitude + 1 > mostDecimals) {
    return { kind: 'scientific' };
  }
  const usual = Math.max(0, significantDigits - 1 - magnitude);
  const wanted = digits ?? (money ? moneyDecimals : usual);
  const most = Math.max(0, Math.min(mostDecimals, wanted));
  if (size !== 0 && roundTo(size, most) === 0)
    return { kind: 'decimals', fewest: 0, most: Math.min(mostDecimals, 1 - magnitude) };
  return { kind: 'decimals', fewest: money ? most : 0, most };
}

const formatters = new Map<string, Intl.NumberFormat>();

function formatter(form: NumberForm): Intl.NumberFormat {
  const key = form.kind === 'decimals' ? `${form.fewest} ${form.most}` : form.kind;
  const known = formatters.get(key);
  if (known !== undefined) return known;
  const made = new Intl.NumberFormat('en-US', formatterOptions(form));
  formatters.set(key, made);
  return made;
}

function formatterOptions(form: NumberForm): Intl.NumberFormatOptions {
  switch (form.kind) {
    case 'decimals':
      return { minimumFractionDigits: form.fewest, maximumFractionDigits: form.most };
    case 'scientific':
      return { notation: 'scientific', maximumSignificantDigits: significantDigits };
    case 'typing':
      return { maximumSignificantDigits: 15, useGrouping: false };
    default:
      return form satisfies never;
  }
}
