import { writeFeetInches } from './feet-inches.ts';
import { formatNumber, formatQuantity } from './format.ts';
import type { Measures } from './measures.ts';
import { parseUnit, type Unit } from './unit.ts';

const centimetres = 2;

/** The unit in which lengths are stored. */
export const feet: Unit = feetUnit();

/** A length as people say it: 22.5 ft → `22' 6"`, in metric '6.858 m'. */
export function writeLength(length: number, measures: Measures): string {
  return measures === 'us' ? writeFeetInches(length) : formatQuantity(length, feet, { measures });
}

/** Two sides in feet as metres to the centimetre: 12 and 20 → '3.66 × 6.1 m'. */
export function writeSidesInMetres(first: number, second: number): string {
  const [a, b] = [first, second].map((side) => formatNumber(side, feet, { digits: centimetres, measures: 'metric' }));
  return `${a} × ${b} m`;
}

function feetUnit(): Unit {
  const read = parseUnit('ft');
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.unit;
}
