import type { Unit } from './unit.ts';

/**
 * What people write a metric measure to, in decimals. 9.144 m is 9.14 m; 203.2 mm is 203 mm; 24.14016 km is 24.1 km.
 */
const decimalsOfUnits: ReadonlyMap<string, number> = new Map([
  ['m', 2],
  ['m2', 2],
  ['mm', 0],
  ['mm2', 0],
  ['km', 1],
  ['MPa', 2],
]);
/** What would else be finer than anybody measures, in significant digits: 8 mil is 203 µm, 65 °F is 18.3 °C. */
const digitsOfUnits: ReadonlyMap<string, number> = new Map([
  ['um', 3],
  ['degC', 3],
  ['ddegC', 3],
]);
const usualDigits = 4;
/** So that 1/16 in is 1.6 mm and not 2 mm. */
const fewestDigits = 2;
const moneyDecimals = 2;

/**
 * Decimals to which a number that was converted to `metric` is shown: those usual for the unit, cents for money, but never
 * so few that less than two digits are left. Any other unit has about four digits. Example: 6.858 of m → 2; 0.0508 of m → 3.
 */
export function metricDecimals(size: number, metric: Unit, isMoney: boolean): number {
  const magnitude = size === 0 ? 0 : Math.floor(Math.log10(Math.abs(size)));
  const decimals = isMoney ? moneyDecimals : decimalsOfUnits.get(metric.text);
  if (decimals !== undefined) return Math.max(decimals, fewestDigits - 1 - magnitude);
  return Math.max(0, (digitsOfUnits.get(metric.text) ?? usualDigits) - 1 - magnitude);
}
