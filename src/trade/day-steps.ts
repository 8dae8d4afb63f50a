import { type ClockHour, type Hours, hours, hoursBetween, later, sumHours } from '../units/hours.ts';
import { sameHour } from './earliest-starts.ts';

/** What the crew does from one time to another. */
export type DayStep =
  | (Span & { readonly kind: 'work'; readonly job: string; readonly block: string; readonly site: string })
  | (Span & { readonly kind: 'drive'; readonly from: string; readonly to: string })
  | (Span & { readonly kind: 'wait'; readonly site: string });

interface Span {
  readonly starts: ClockHour;
  readonly finishes: ClockHour;
}

/** A block with its start. */
export interface TimedBlock {
  readonly job: string;
  readonly block: string;
  readonly site: string;
  readonly starts: ClockHour;
  readonly length: Hours;
}

export interface Journey {
  readonly starts: ClockHour;
  /** Where the crew is then, and where it must be at the end. */
  readonly from: string;
  readonly to: string;
  readonly drive: (from: string, to: string) => Hours;
}

/** The day without gaps: the crew drives as soon as it has finished, and waits where it works next. */
export function daySteps(blocks: readonly TimedBlock[], { starts, from, to, drive }: Journey): DayStep[] {
  const steps: DayStep[] = [];
  let site = from;
  let now = starts;
  const goTo = (next: string): void => {
    if (next === site) return;
    const arrives = later(now, drive(site, next));
    steps.push({ kind: 'drive', from: site, to: next, starts: now, finishes: arrives });
    site = next;
    now = arrives;
  };
  for (const { length, ...work } of blocks) {
    goTo(work.site);
    if (hoursBetween(now, work.starts) > sameHour)
      steps.push({ kind: 'wait', site, starts: now, finishes: work.starts });
    now = later(work.starts, length);
    steps.push({ kind: 'work', ...work, finishes: now });
  }
  goTo(to);
  return steps;
}

/** The hours of the steps of one kind. */
export function hoursOf(kind: DayStep['kind'], steps: readonly DayStep[]): Hours {
  const lengths = steps.filter((step) => step.kind === kind).map((step) => hoursBetween(step.starts, step.finishes));
  return lengths.length === 0 ? hours(0) : sumHours(lengths);
}
