import { clockHour, timeOfDayText } from '../../units/hours.ts';
import { isSerialDay, writeIsoDate } from '../../units/serial-day.ts';

// Serial day 0 was a Saturday.
const weekdays = ['Sat', 'Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri'];
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const hoursPerDay = 24;
/** Sums of hours reach a full hour from a little above it. */
const noTime = 1e-6;

/** A date as people say it: serial day 46041 → 'Mon, Jan 19'. Empty for what is no date. */
export function dateWords(day: number): string {
  if (!isSerialDay(day)) return '';
  const [, month, date] = writeIsoDate(day).split('-').map(Number);
  return `${weekdays[Math.floor(day) % weekdays.length]}, ${months[(month ?? 1) - 1]} ${date}`;
}

/**
 * A time no sooner than `hour`, in hours after midnight of `day`, up to the next full hour: day 46041 and 42.2 h →
 * 'Tue, Jan 20, 7 pm'.
 */
export function momentWords(day: number, hour: number): string {
  const full = Math.ceil(hour - noTime);
  return `${dateWords(day + Math.floor(full / hoursPerDay))}, ${timeOfDayText(clockHour(full))}`;
}
