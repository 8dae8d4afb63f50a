import { formatQuantity } from '../../units/format.ts';
import { type ClockHour, clockHour, clockText, type Hours } from '../../units/hours.ts';
import { parseUnit } from '../../units/unit.ts';

const hoursPerDay = 24;
const parsedHour = parseUnit('h');

/** The time on the clock of a day, without the day: 7.5 → '7:30', 33 → '9:00'. */
export function timeWords(time: ClockHour): string {
  return clockText(clockHour(time - hoursPerDay * Math.floor(time / hoursPerDay + 1e-9))).replace(
    /^0(?=\d:)| .*$/g,
    '',
  );
}

/** A length of time to a twentieth of an hour: '3.75 h'; what is shorter is '0.01 h'. */
export function lengthWords(length: Hours | number): string {
  return parsedHour.kind === 'unit' ? formatQuantity(length, parsedHour.unit, { digits: 2 }) : `${length}`;
}
