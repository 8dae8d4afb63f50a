import { formatNumber, formatQuantity } from './format.ts';
import type { Measures } from './measures.ts';
import type { Unit } from './unit.ts';

/** The least and the most that a number may be. */
export type Limits = readonly [least: number, most: number];

const closeDecimals = 6;

/**
 * Why a number may not stand, where it lies beyond its limits; undefined where it may. The unit stands once behind both,
 * and what is just beyond one does not read as the limit. Example: −5 ft of 0 to 2,000 → “Length” must lie between 0 and
 * 2,000 ft; −5 ft does not.
 */
export function limitsRefusal(
  name: string,
  value: number,
  [least, most]: Limits,
  unit: Unit,
  measures: Measures = 'us',
): string | undefined {
  if (value >= least && value <= most) return undefined;
  const said = (number: number): string => formatQuantity(number, unit, { measures });
  const isAsLimit = said(value) === said(least) || said(value) === said(most);
  const beyond = isAsLimit ? formatQuantity(value, unit, { measures, digits: closeDecimals }) : said(value);
  return `“${name}” must lie between ${formatNumber(least, unit, { measures })} and ${said(most)}; ${beyond} does not.`;
}
