import { messages } from './messages.ts';
import { nearestWord } from './nearest-word.ts';
import { type Atom, atomsByName, unitTextBySpelling } from './unit-table.ts';

/**
 * A unit as integer powers of atoms: `ft2*mil/gal` is {ft: 2, gal: -1, mil: 1}. Canonical: atoms sorted, no zero
 * powers. Counting words and % are display names of 1 and never stand among the powers; `text` keeps them.
 */
export interface Unit {
  /** The canonical text, or as declared when it holds a display name of 1 (`$/visit`, `%`). */
  readonly text: string;
  readonly powers: ReadonlyMap<string, number>;
  readonly point?: PointUnit;
}

/** What makes a unit a point on a scale (65 °F, a date) and not an amount. */
export interface PointUnit {
  /** The unit of one such point minus another: `ddegF`, `ddegC`, `d`. */
  readonly difference: string;
}

export type UnitResult =
  | { readonly kind: 'unit'; readonly unit: Unit }
  | { readonly kind: 'fault'; readonly reason: string };

/** One atom of a declared text: `ft2` over the line is {atom ft, power 2}, under it {atom ft, power -2}. */
export interface UnitTerm {
  readonly atom: Atom;
  readonly power: number;
}

type TermsResult =
  | { readonly kind: 'terms'; readonly terms: readonly UnitTerm[] }
  | { readonly kind: 'fault'; readonly reason: string };

const longestUnitText = 80;
const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/**
 * Reads a unit text: `atom*atom/atom`, an integer power as suffix (`ft2`), each `/atom` a divisor (`a/b/c` is
 * a/(b*c)), `1` for no unit and in `1/h`. Faults name the nearest unit that is known.
 * Example: `parseUnit('ft2*mil/gal')`; `parseUnit('galon')` → fault, "did you mean gal?".
 */
export function parseUnit(text: string): UnitResult {
  const read = readTerms(text);
  if (read.kind === 'fault') return read;
  const [first] = read.terms;
  if (first?.atom.kind === 'point') return { kind: 'unit', unit: pointUnit(first.atom) };
  const unit = fromPowers(measuredPowers(read.terms));
  const named = read.terms.some((term) => !isMeasured(term.atom));
  return { kind: 'unit', unit: named ? { ...unit, text: text.replaceAll(' ', '') } : unit };
}

/** The unit of a plain number, `1`. */
export const one: Unit = fromPowers(new Map());

/**
 * Whether values of the two units may be added and compared: the same powers, and both points or neither.
 * Every display name of 1 (%, person, visit, …) is the same as `1`.
 */
export function sameUnit(a: Unit, b: Unit): boolean {
  return a === b || unitText(a) === unitText(b);
}

/** `mil` times `ft2` is `ft2*mil`. Throws on a point: ask `isPoint` first. */
export function multiplyUnits(a: Unit, b: Unit): Unit {
  return combine(a, b, 1);
}

/** `ft2` divided by `gal` is `ft2/gal`. Throws on a point: ask `isPoint` first. */
export function divideUnits(a: Unit, b: Unit): Unit {
  return combine(a, b, -1);
}

/** `ft` to the power 2 is `ft2`; power 0 is `1`. `n` must be an integer. Throws on a point. */
export function powerOfUnit(a: Unit, n: number): Unit {
  if (!Number.isInteger(n)) throw new RangeError(`A unit has integer powers only, not ${n}`);
  refusePoint(a);
  return fromPowers(new Map([...a.powers].map(([atom, power]) => [atom, power * n])));
}

/** The unit of a square root: `ft2` → `ft`; undefined unless every power is even. */
export function rootOfUnit(a: Unit): Unit | undefined {
  if (isPoint(a) || [...a.powers.values()].some((power) => power % 2 !== 0)) return undefined;
  return fromPowers(new Map([...a.powers].map(([atom, power]) => [atom, power / 2])));
}

/** The unit of a point minus a point: degF → ddegF, degC → ddegC, date → d; undefined for what is no point. */
export function differenceUnit(point: Unit): Unit | undefined {
  return point.point === undefined ? undefined : fromPowers(new Map([[point.point.difference, 1]]));
}

/** Whether the unit is a point on a scale: degF, degC, date. */
export function isPoint(a: Unit): boolean {
  return a.point !== undefined;
}

/** The canonical text, with every display name of 1 left out: `ft2*mil/gal`, `$/h`, `1`. */
export function unitText(u: Unit): string {
  const known = canonicalTexts.get(u);
  if (known !== undefined) return known;
  const text = canonicalText(u.powers);
  canonicalTexts.set(u, text);
  return text;
}

/** Checking a formula compares the units of all its parts: each is written once. */
const canonicalTexts = new WeakMap<Unit, string>();

/** The unit as shown: `ft²·mil/gal`, `°F`, `$/crew day`; empty for `1`. */
export function prettyUnit(u: Unit): string {
  const terms = declaredTerms(u);
  const above = terms.filter((term) => term.power > 0).map(prettyTerm);
  const below = terms.filter((term) => term.power < 0).map((term) => `/${prettyTerm(term)}`);
  return above.join('·') + below.join('');
}

/** The atoms of the unit in the order in which they were declared. */
export function declaredTerms(u: Unit): readonly UnitTerm[] {
  const known = termsOfUnits.get(u);
  if (known !== undefined) return known;
  const read = readTerms(u.text);
  const terms = read.kind === 'terms' ? read.terms : [];
  termsOfUnits.set(u, terms);
  return terms;
}

/** Every number shown asks for its unit's atoms: read once for each unit. */
const termsOfUnits = new WeakMap<Unit, readonly UnitTerm[]>();

function prettyTerm({ atom, power }: UnitTerm): string {
  const size = Math.abs(power);
  return size === 1
    ? atom.symbol
    : atom.symbol + [...String(size)].map((digit) => superscripts[Number(digit)]).join('');
}

function readTerms(text: string): TermsResult {
  const compact = text.replaceAll(' ', '');
  if (compact === '' || compact.length > longestUnitText) return { kind: 'fault', reason: messages.unitMissing };
  const [above = '', ...below] = compact.split('/');
  const terms: UnitTerm[] = [];
  for (const part of above === '1' ? [] : above.split('*')) {
    const read = readTerm(part, 1);
    if (read.kind === 'fault') return read;
    terms.push(read.term);
  }
  for (const part of below) {
    if (part.includes('*')) return { kind: 'fault', reason: messages.timesAfterDivide(part) };
    const read = readTerm(part, -1);
    if (read.kind === 'fault') return read;
    terms.push(read.term);
  }
  const combined = terms.find((term) => term.atom.kind === 'point');
  if (combined !== undefined && (terms.length > 1 || combined.power !== 1)) {
    return { kind: 'fault', reason: messages.pointCombined(combined.atom.name, combined.atom.difference ?? '') };
  }
  return { kind: 'terms', terms };
}

function readTerm(part: string, sign: 1 | -1): { kind: 'term'; term: UnitTerm } | { kind: 'fault'; reason: string } {
  const match = /^([^\d-]+)([1-9]\d?)?$/.exec(part);
  const name = match?.[1];
  if (name === undefined) return { kind: 'fault', reason: messages.unitMalformed(part) };
  const atom = atomsByName.get(name);
  if (atom === undefined) return { kind: 'fault', reason: messages.unitUnknown(part, nearestUnit(part, name)) };
  const size = Number(match?.[2] ?? 1);
  if (size !== 1 && !isMeasured(atom)) return { kind: 'fault', reason: messages.powerOfCount(atom.name) };
  return { kind: 'term', term: { atom, power: sign * size } };
}

function nearestUnit(part: string, name: string): string | undefined {
  const exact = unitTextBySpelling.get(part.toLowerCase());
  if (exact !== undefined) return exact;
  const near = nearestWord(name, [...atomsByName.keys(), ...unitTextBySpelling.keys()]);
  return near === undefined ? undefined : (unitTextBySpelling.get(near) ?? near);
}

/** Counting words and % are names of 1 and take no part in the arithmetic of units. */
function isMeasured(atom: Atom): boolean {
  return atom.kind !== 'counting' && atom.kind !== 'share';
}

function measuredPowers(terms: readonly UnitTerm[]): Map<string, number> {
  const powers = new Map<string, number>();
  for (const { atom, power } of terms) {
    if (isMeasured(atom)) powers.set(atom.name, (powers.get(atom.name) ?? 0) + power);
  }
  return powers;
}

function combine(a: Unit, b: Unit, sign: 1 | -1): Unit {
  refusePoint(a);
  refusePoint(b);
  const powers = new Map(a.powers);
  for (const [atom, power] of b.powers) powers.set(atom, (powers.get(atom) ?? 0) + sign * power);
  return fromPowers(powers);
}

function refusePoint(u: Unit): void {
  if (isPoint(u)) throw new RangeError(`A point on a scale (${u.text}) has no products, quotients or powers`);
}

function pointUnit(atom: Atom): Unit {
  return { text: atom.name, powers: new Map([[atom.name, 1]]), point: { difference: atom.difference ?? '' } };
}

function fromPowers(powers: ReadonlyMap<string, number>): Unit {
  const kept = [...powers].filter(([, power]) => power !== 0).sort(([a], [b]) => (a < b ? -1 : 1));
  const canonical = new Map(kept);
  return { text: canonicalText(canonical), powers: canonical };
}

function canonicalText(powers: ReadonlyMap<string, number>): string {
  const write = (atom: string, power: number): string => (power === 1 ? atom : `${atom}${power}`);
  const above = [...powers].filter(([, power]) => power > 0).map(([atom, power]) => write(atom, power));
  const below = [...powers].filter(([, power]) => power < 0).map(([atom, power]) => `/${write(atom, -power)}`);
  return (above.join('*') || '1') + below.join('');
}
