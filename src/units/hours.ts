import { roundTo } from './decimal-rounding.ts';
import { formatQuantity } from './format.ts';
import { parseUnit } from './unit.ts';

declare const lengthOfTime: unique symbol;
declare const timeOfDay: unique symbol;

/** A length of time in hours. */
export type Hours = number & { readonly [lengthOfTime]: 'h' };

/** A time in hours from midnight of the first day: 7.5 is 7:30 am, 31 is 7 am of the next day. */
export type ClockHour = number & { readonly [timeOfDay]: 'h' };

const minutesPerHour = 60;
const hoursPerDay = 24;
const minutesPerDay = hoursPerDay * minutesPerHour;
const noon = 12;
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

/** Example: 2.5 h later than 7 am is 9:30 am. A negative length is earlier. */
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

/** A time of day as people say it, to the minute, on whatever day: 7.5 → '7:30 am', 36 → 'noon', 43 → '7 pm'. */
export function timeOfDayText(time: ClockHour): string {
  const minute = minutesFrom(time) - dayOf(time) * minutesPerDay;
  const [hour, past] = [Math.floor(minute / minutesPerHour), minute % minutesPerHour];
  if (past === 0 && hour === 0) return 'midnight';
  if (past === 0 && hour === noon) return 'noon';
  const shown = hour % noon === 0 ? noon : hour % noon;
  return `${shown}${past === 0 ? '' : `:${String(past).padStart(2, '0')}`} ${hour < noon ? 'am' : 'pm'}`;
}

/** The same with its day, from the first: 18.5 → '6:30 pm', 25.25 → '1:15 am next day', 60 → 'noon 2 days later'. */
export function clockText(time: ClockHour): string {
  return timeOfDayText(time) + dayWords(dayOf(time));
}

function minutesFrom(time: ClockHour): number {
  return roundTo(time * minutesPerHour, 0);
}

function dayOf(time: ClockHour): number {
  return Math.floor(minutesFrom(time) / minutesPerDay);
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
