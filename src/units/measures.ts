import { toMetric } from './conversion.ts';
import type { Unit } from './unit.ts';

/** How numbers are shown and typed. Values, formulas and prices are in feet, gallons, pounds and °F in both. */
export type Measures = 'us' | 'metric';

/** A value and its unit as shown. Example: 528 ft2 in metric → 49.05 m2; dollars, hours and counts stay. */
export function shownIn(
  value: number,
  unit: Unit,
  measures: Measures,
): { readonly value: number; readonly unit: Unit } {
  return measures === 'us' ? { value, unit } : toMetric(value, unit);
}

/** The unit in which a value of `unit` is shown and typed: itself, or its metric one. */
export function unitIn(unit: Unit, measures: Measures): Unit {
  return shownIn(0, unit, measures).unit;
}
