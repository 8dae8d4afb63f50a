import { formatQuantity } from '../../units/format.ts';
import type { Hours } from '../../units/hours.ts';
import { parseUnit } from '../../units/unit.ts';

const parsedHour = parseUnit('h');

/** A length of time to a twentieth of an hour: '3.75 h'; what is shorter is '0.01 h'. */
export function lengthWords(length: Hours | number): string {
  return parsedHour.kind === 'unit' ? formatQuantity(length, parsedHour.unit, { digits: 2 }) : `${length}`;
}
