import { clockHour, timeOfDayText } from '../../units/hours.ts';
import { serialDay, spokenDate } from '../../units/serial-day.ts';

const minutesPerHour = 60;

/** The day of an instant as people say it where they are: '2026-05-31T14:00:00.000Z' → 'May 31, 2026'. */
export function instantDay(at: string): string {
  const here = new Date(at);
  const two = (part: number): string => String(part).padStart(2, '0');
  const day = serialDay(`${here.getFullYear()}-${two(here.getMonth() + 1)}-${two(here.getDate())}`);
  return day === undefined ? at : spokenDate(day);
}

/** The day and the time of an instant as people say them where they are: 'May 31, 2026, 2:05 pm'. */
export function instantWords(at: string): string {
  const here = new Date(at);
  const time = timeOfDayText(clockHour(here.getHours() + here.getMinutes() / minutesPerHour));
  const day = instantDay(at);
  return day === at ? at : `${day}, ${time}`;
}
