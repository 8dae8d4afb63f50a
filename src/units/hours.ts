import { roundTo } from './decimal-rounding.ts';
import { formatQuantity } from './format.ts';
import { parseUnit } from './unit.ts';

declare const lengthOfTime: unique symbol;
declare const timeOfDay: unique symbol;

/** A length of time in hours. */
export type Hours = number & { readonly [lengthOfTime]: 'h' };

/** A time in hours from midnight of the first day: 7.5 is 07:30, 31 is 07:00 of the next day. */
export type ClockHour = number & { readonly [timeOfDay]: 'h' };

const minutesPerHour = 60;
const hoursPerDay = 24;
const hourUnit = parseUnit('h');
/** Up to this people count hours; beyond it, days. */
const hoursCounted = 48;
const halfDay = 12;
/** Sums of hours reach a full hour from a little above it. */
const noTime = 1e-6;

export function hours(value: number): Hours {
  return value as Hours;
}

export function clockHour(value: number): ClockHour {
  return value as ClockHour;
}

/** Example: 2.5 h later than 07:00 is 09:30. A negative length is earlier. */
export function later(time: ClockHour, by: Hours): ClockHour {
  return clockHour(time + by);
}

/** How long it is from one time to another; negative when `to` comes first. */
export function hoursBetween(from: ClockHour, to: ClockHour): Hours {
  return hours(to - from);
}

export function sumHours(lengths: readonly Hours[]): Hours {
  return hours(lengths.reduce((sum: number, length) => sum + length, 0));
}

/** As people read it: '1 h', '0.75 h'. */
export function hoursText(length: Hours): string {
  return hourUnit.kind === 'unit' ? formatQuantity(length, hourUnit.unit) : `${length}`;
}

/**
 * A wait as a customer is told it, never sooner than it is: up to whole hours, beyond 48 up to half days. 6.2 → 7, 85 → 96.
 */
export function toldWait(length: Hours): Hours {
  const whole = Math.max(0, Math.ceil(length - noTime));
  return hours(whole <= hoursCounted ? whole : halfDay * Math.ceil((length - noTime) / halfDay));
}

/** A wait in a customer's words: 1 → 'an hour', 6.2 → '7 hours', 72 → '3 days', 80 → '3½ days', 85 → '4 days'. */
export function waitText(length: Hours): string {
  const told = toldWait(length);
  if (told <= hoursCounted) return told === 1 ? 'an hour' : `${told} hours`;
  const days = Math.floor(told / hoursPerDay);
  return `${days}${told > days * hoursPerDay ? '½' : ''} days`;
}

/** As a clock shows it, to the minute: 18.5 → '18:30', 25.25 → '01:15 next day', 60 → '12:00 2 days later'. */
export function clockText(time: ClockHour): string {
  const minutes = roundTo(time * minutesPerHour, 0);
  const day = Math.floor(minutes / (hoursPerDay * minutesPerHour));
  const two = (part: number): string => String(part).padStart(2, '0');
  const hour = Math.floor(minutes / minutesPerHour) - day * hoursPerDay;
  return `${two(hour)}:${two(minutes - (day * hoursPerDay + hour) * minutesPerHour)}${dayWords(day)}`;
}

function dayWords(day: number): string {
  switch (day) {
    case 0:
      return '';
    case 1:
      return ' next day';
    case -1:
      return ' the day before';
    default:
      return day > 0 ? ` ${day} days later` : ` ${-day} days before`;
  }
}
