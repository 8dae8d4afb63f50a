import type { Clock, ClockTask } from '../../src/quote/clock.ts';
import { clockHour, hours } from '../../src/units/hours.ts';

/** A task as a test says it: a row from one hour to another. What is left out is usual. */
export interface Task {
  readonly row: string;
  readonly from: number;
  readonly to: number;
  readonly ready?: number;
  readonly day?: number;
  readonly visit?: number;
  readonly beside?: boolean;
  /** By the clock; left out: all of it. */
  readonly takes?: number;
  readonly added?: number;
  readonly lays?: string;
  readonly over?: string;
  readonly until?: number;
  readonly grinds?: boolean;
}

/**
 * A clock with two visits of half an hour's set up and half an hour's load out, days from 7:00 at the shop, half an hour
 * each of loading and driving, and the crew gone from the site by 16:30.
 */
export function clockOf(tasks: readonly Task[], day: Partial<Record<'leaves' | 'grace', number>> = {}): Clock {
  return {
    tasks: tasks.map(clockTask),
    visits: [1, 2].map((visit) => ({
      visit,
      crew: 2,
      setUp: hours(0.5),
      loadOut: hours(0.5),
      worked: hours(8),
      paid: hours(12),
      crewDays: 1,
    })),
    day: {
      begins: clockHour(7),
      loading: hours(0.5),
      drive: hours(0.5),
      leaves: clockHour(day.leaves ?? 16.5),
      grace: hours(day.grace ?? 0.25),
    },
  };
}

function clockTask({ row, from, to, lays, over, until, ...task }: Task): ClockTask {
  const takes = task.takes ?? to - from;
  return {
    row,
    label: row,
    visit: task.visit ?? 1,
    day: task.day ?? 1,
    ready: clockHour(task.ready ?? from),
    start: clockHour(from),
    finish: clockHour(to),
    people: 2,
    beside: task.beside ?? false,
    takes: hours(takes),
    added: hours(task.added ?? (task.beside ? 0 : takes)),
    grinds: task.grinds ?? false,
    ...(lays !== undefined && { lays }),
    ...(over !== undefined && { over: { coat: over, ...(until !== undefined && { until: hours(until) }) } }),
  };
}
