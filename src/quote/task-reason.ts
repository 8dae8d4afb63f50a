import { clockHour, timeOfDayText } from '../units/hours.ts';
import type { ClockDay, ClockTask } from './clock.ts';

/**
 * Why a task begins when it does, in words; empty where it just follows the one above. Example: “waits for the base until
 * 6 pm”.
 */
export function taskReason(task: ClockTask, { coatsUntil }: ClockDay): string {
  const coat = task.over === undefined ? 'coat' : task.over.coat.toLowerCase();
  const begins = timeOfDayText(task.start);
  switch (task.because) {
    case 'rests':
      return `what is above it rests until ${begins}`;
    case 'coat_ready':
      return `waits for the ${coat} until ${begins}`;
    case 'planned':
      return 'a later visit, as planned';
    case 'wait_too_long':
      return `another visit: once the ${coat} takes it, the day would not hold the rest`;
    case 'too_late':
      return `next morning: no coat starts after ${timeOfDayText(coatsUntil ?? clockHour(0))}`;
    case 'day_too_short':
      return 'next morning: with what belongs to it, it would end after the day';
    default:
      return '';
  }
}
