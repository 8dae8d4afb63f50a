import { multiplyUnits, one, parseUnit, powerOfUnit, type Unit, unitText } from './unit.ts';
import { atomsByName } from './unit-table.ts';

/*
 * Factors: NIST Handbook 44, Appendix C and NIST SP 811, Appendix B.8, from memory. All are exact by definition
 * (the yard and pound agreement of 1959; the US gallon is 231 cubic inches; standard gravity is 9.80665 m/s²).
 */
export const metresPerFoot = 0.3048;
export const millimetresPerInch = 25.4;
export const micrometresPerMil = 25.4;
export const kilometresPerMile = 1.609344;
export const litresPerGallon = 3.785411784;
export const kilogramsPerPound = 0.45359237;
export const gramsPerOunce = 28.349523125;
/** What a pound weighs under standard gravity is its force; a newton on a square millimetre is a megapascal: 0.006894757. */
const megapascalsPerPsi = (kilogramsPerPound * 9.80665) / millimetresPerInch ** 2;

/** What an atom is shown in, as many of it as `factor` says; a power of an atom may have a measure of its own. */
const metricAtoms: ReadonlyMap<string, { readonly atom: string; readonly factor: number }> = new Map([
  ['ft', { atom: 'm', factor: metresPerFoot }],
  ['in', { atom: 'mm', factor: millimetresPerInch }],
  ['in3', { atom: 'mL', factor: millimetresPerInch ** 3 / 1000 }],
  ['mil', { atom: 'um', factor: micrometresPerMil }],
  ['mi', { atom: 'km', factor: kilometresPerMile }],
  ['gal', { atom: 'L', factor: litresPerGallon }],
  ['lb', { atom: 'kg', factor: kilogramsPerPound }],
  ['oz', { atom: 'g', factor: gramsPerOunce }],
  ['ddegF', { atom: 'ddegC', factor: 5 / 9 }],
]);

/** Units that are shown as one of their own, and not as what their atoms make: a pound on a square inch is a force. */
const metricCompounds: ReadonlyMap<string, { readonly atom: string; readonly factor: number }> = new Map([
  ['lb/in2', { atom: 'MPa', factor: megapascalsPerPsi }],
]);

/**
 * A value and its unit for metric display: ft2 → m2, gal → L, mil → um, lb → kg, degF → degC, lb/in2 → MPa. What has no metric
 * form (dollars, hours, counts) stays. Example: `toMetric(528, ft2)` → 49.05 m2. Full precision, no rounding.
 */
export function toMetric(value: number, unit: Unit): { readonly value: number; readonly unit: Unit } {
  if (unit.text === 'degF') return { value: ((value - 32) * 5) / 9, unit: celsius };
  if (unit.point !== undefined) return { value, unit };
  const { factor, metric } = metricForm(unit);
  return metric === undefined ? { value, unit } : { value: value * factor, unit: metric };
}

/** The inverse of `toMetric`: a metric value in the given US unit. Example: `fromMetric(3.785411784, gal)` → 1 gal. */
export function fromMetric(value: number, unit: Unit): number {
  if (unit.text === 'degF') return (value * 9) / 5 + 32;
  if (unit.point !== undefined) return value;
  return value / metricForm(unit).factor;
}

interface MetricForm {
  readonly factor: number;
  /** Undefined for a unit that is the same in both. */
  readonly metric?: Unit;
}

/** Every number shown asks for its unit's form: made once for each unit. */
const formsOfUnits = new WeakMap<Unit, MetricForm>();

function metricForm(unit: Unit): MetricForm {
  const known = formsOfUnits.get(unit);
  if (known !== undefined) return known;
  const form = makeMetricForm(unit);
  formsOfUnits.set(unit, form);
  return form;
}

function makeMetricForm(unit: Unit): MetricForm {
  const compound = metricCompounds.get(unitText(unit));
  if (compound !== undefined) return { factor: compound.factor, metric: unitOf(compound.atom) };
  let factor = 1;
  let metric = one;
  let changed = false;
  for (const [name, power] of unit.powers) {
    const own = metricAtoms.get(`${name}${Math.abs(power)}`);
    const form = own ?? metricAtoms.get(name);
    const size = own === undefined ? power : Math.sign(power);
    if (form !== undefined) changed = true;
    factor *= (form?.factor ?? 1) ** size;
    metric = multiplyUnits(metric, powerOfUnit(unitOf(form?.atom ?? name), size));
  }
  return changed ? { factor, metric: withDisplayNames(metric, unit) } : { factor: 1 };
}

/** Keeps the counting words of the declared text: lb/pack → kg/pack. */
function withDisplayNames(metric: Unit, declared: Unit): Unit {
  const [above = '', ...below] = declared.text.split('/');
  const isName = (word: string): boolean => ['counting', 'share'].includes(atomsByName.get(word)?.kind ?? '');
  const namesAbove = above.split('*').filter(isName);
  const namesBelow = below.filter(isName);
  if (namesAbove.length + namesBelow.length === 0) return metric;
  const [metricAbove = '1', ...metricBelow] = metric.text.split('/');
  const numerator = [...(metricAbove === '1' ? [] : [metricAbove]), ...namesAbove].join('*') || '1';
  return unitOf([numerator, ...metricBelow, ...namesBelow].join('/'));
}

function unitOf(text: string): Unit {
  const read = parseUnit(text);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.unit;
}

const celsius = unitOf('degC');
