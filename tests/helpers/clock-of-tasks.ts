import type { Clock, ClockTask } from '../../src/quote/clock.ts';
import { clockHour, hours } from '../../src/units/hours.ts';

/** A task as a test says it: a row from one hour to another. What is left out is usual. */
export interface Task {
  readonly row: string;
  readonly from: number;
  readonly to: number;
  readonly day?: number;
  readonly visit?: number;
  readonly beside?: boolean;
  /** By the clock; left out: all of it. */
  readonly takes?: number;
  readonly added?: number;
  readonly lays?: string;
  readonly over?: string;
  /** From the finish of what it goes over; left out: 0 and no end. */
  readonly after?: number;
  readonly until?: number;
  readonly wait?: number;
  readonly grinds?: boolean;
}

/**
 * A clock with two visits of half an hour's set up and half an hour's load out, days from 7:00 at the shop, half an hour
 * each of loading and driving, and the crew gone from the site by 16:30. The first visit arrives at 8:00, the second at
 * `arrives`.
 */
export function clockOf(tasks: readonly Task[], arrives = 32): Clock {
  return {
    tasks: tasks.map(clockTask),
    visits: [1, 2].map((visit) => ({
      visit,
      crew: 2,
      arrives: clockHour(visit === 1 ? 8 : arrives),
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
      leaves: clockHour(16.5),
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
    start: clockHour(from),
    finish: clockHour(to),
    people: 2,
    wait: hours(task.wait ?? 0),
    beside: task.beside ?? false,
    takes: hours(takes),
    added: hours(task.added ?? (task.beside ? 0 : takes)),
    grinds: task.grinds ?? false,
    ...(lays !== undefined && { lays }),
    ...(over !== undefined && {
      over: { coat: over, from: hours(task.after ?? 0), ...(until !== undefined && { until: hours(until) }) },
    }),
  };
}
