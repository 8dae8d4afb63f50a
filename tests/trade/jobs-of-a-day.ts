import type { Block, CrewDay, Job } from '../../src/trade/crew-day.ts';
import { type DayStep, hoursOf } from '../../src/trade/day-steps.ts';
import type { StackResult } from '../../src/trade/stack-jobs.ts';
import { clockHour, hours } from '../../src/units/hours.ts';

/** A block as a test says it: its hours, then its cure's least and most. */
export interface Work {
  readonly for: number;
  readonly cure?: number;
  readonly within?: number;
  readonly grinder?: boolean;
}

/** A job on a site of its own name, its blocks called `grind`, `clear` and so on in their order. */
export function job(name: string, blocks: readonly Work[], site = name): Job {
  const names = ['grind', 'clear', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'];
  return { name, site, blocks: blocks.map((work, at) => block(names[at] ?? `${at}`, work)) };
}

function block(name: string, { for: length, cure = 0, within, grinder = false }: Work): Block {
  const most = within === undefined ? {} : { most: hours(within) };
  return { name, length: hours(length), grinder, cure: { least: hours(cure), ...most } };
}

/** One crew with one grinder; `drive` is the drive between any two of the sites A, B, C, D and the yard. */
export function crewDay(day: Partial<Record<'from' | 'to' | 'drive' | 'grinders', number>>, yard?: 'yard'): CrewDay {
  const { from = 0, to = 24, drive = 0.5, grinders = 1 } = day;
  const sites = ['A', 'B', 'C', 'D', 'yard'];
  const drives = sites.flatMap((one, at) =>
    sites.slice(at + 1).map((other) => ({ between: [one, other] as const, length: hours(drive) })),
  );
  const ends = yard === undefined ? {} : { startsAt: yard, endsAt: yard };
  return { starts: clockHour(from), endsBy: clockHour(to), grinders, drives, ...ends };
}

/** The best day as the jobs' names in the order of their blocks, and when it ends. */
export function bestOf(result: StackResult): { readonly order: string; readonly ends: number } {
  if (result.kind !== 'stacked') throw new Error(`No order holds: ${JSON.stringify(result)}`);
  const { steps, ends } = result.day;
  return { order: worked(steps), ends };
}

export function worked(steps: readonly DayStep[]): string {
  return steps.flatMap((step) => (step.kind === 'work' ? [step.job] : [])).join(' ');
}

export function hoursByKind(steps: readonly DayStep[]): readonly number[] {
  return [hoursOf('work', steps), hoursOf('drive', steps), hoursOf('wait', steps)];
}
