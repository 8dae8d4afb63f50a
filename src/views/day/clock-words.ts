import { formatQuantity } from '../../units/format.ts';
import type { Hours } from '../../units/hours.ts';
import { parseUnit } from '../../units/unit.ts';

const parsedHour = parseUnit('h');

/** A length of time to a twentieth of an hour: '3.75 h'; what is shorter is '0.01 h'. */
export function lengthWords(length: Hours | number): string {
  return parsedHour.kind === 'unit' ? formatQuantity(length, parsedHour.unit, { digits: 2 }) : `${length}`;
}

/** '2'; '1–2' where the sheet's 1.4 stand for one, and another for part of the visit. */
export function peopleWords(people: number): string {
  const least = Math.floor(people);
  return least === people ? `${people}` : `${least}–${least + 1}`;
}
