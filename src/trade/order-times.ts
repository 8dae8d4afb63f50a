import { type ClockHour, type Hours, hours, hoursBetween, later } from '../units/hours.ts';
import { type Block, type CrewDay, driveBetween, type Job } from './crew-day.ts';
import { type DayStep, daySteps, hoursOf, type Journey, type TimedBlock } from './day-steps.ts';
import { earliestStarts, type Lag, sameHour } from './earliest-starts.ts';

export interface PlannedDay {
  /** The job whose next block comes at each place. */
  readonly order: readonly number[];
  readonly steps: readonly DayStep[];
  /** With the drive to where the crew must be at the end. */
  readonly ends: ClockHour;
  /** From there to the end of the shift. */
  readonly spare: Hours;
  readonly working: Hours;
  readonly driving: Hours;
  readonly waiting: Hours;
}

/** The first rule that an order breaks: grinders, then windows, then the end of the shift. */
export type BrokenRule =
  /** `held` are the other jobs whose grinding is not over. */
  | { readonly kind: 'grinder'; readonly job: string; readonly block: string; readonly held: readonly string[] }
  /** Started as early as may be, the block comes `over` too late for its window, what is to spare taken off. */
  | {
      readonly kind: 'recoat';
      readonly job: string;
      readonly block: string;
      readonly most: Hours;
      readonly over: Hours;
    }
  | { readonly kind: 'late'; readonly ends: ClockHour };

export type OrderTimes =
  | { readonly kind: 'holds'; readonly day: PlannedDay }
  | { readonly kind: 'breaks'; readonly order: readonly number[]; readonly rule: BrokenRule };

/** A block at its place in the order. */
interface Turn {
  readonly job: Job;
  readonly block: Block;
  /** The place of the job's next block. */
  readonly next: number | undefined;
}

/**
 * The times of one order, each block as early as cure, drives and the windows after it let it; or the rule it breaks.
 * All may run `slack` late: that much is left before the end of the shift, and in each window during which the crew
 * works elsewhere. Example: A (4.5 h, cure 3 h, 2 h) and B (3.5, 3, 1.5) with 0.5 h between them, from 0: the order
 * A B A B ends at 13.
 */
export function orderTimes(jobs: readonly Job[], order: readonly number[], day: CrewDay, slack: Hours): OrderTimes {
  const turns = turnsOf(jobs, order);
  const grinder = grinderWanting(turns, day.grinders);
  if (grinder !== undefined) return { kind: 'breaks', order, rule: grinder };

  const journey = journeyOf(turns, day);
  const arrives = later(day.starts, journey.drive(journey.from, turns[0]?.job.site ?? journey.from));
  const lengths = turns.map(({ block }) => block.length);
  const found = earliestStarts(lengths, lagsOf(turns, slack, journey), arrives);
  if (found.kind === 'missed') return { kind: 'breaks', order, rule: missedWindow(turns, found.lag, found.over) };

  const steps = daySteps(timedBlocks(turns, found.starts), journey);
  const ends = steps.at(-1)?.finishes ?? day.starts;
  const spare = hoursBetween(ends, day.endsBy);
  if (spare < slack - sameHour) return { kind: 'breaks', order, rule: { kind: 'late', ends } };
  const [working, driving, waiting] = [hoursOf('work', steps), hoursOf('drive', steps), hoursOf('wait', steps)];
  return { kind: 'holds', day: { order, steps, ends, spare, working, driving, waiting } };
}

function turnsOf(jobs: readonly Job[], order: readonly number[]): Turn[] {
  return order.map((at, place) => {
    const job = jobs[at];
    const block = job?.blocks[order.slice(0, place).filter((other) => other === at).length];
    if (job === undefined || block === undefined) throw new RangeError(`Job ${at} has no block for place ${place}`);
    const next = order.indexOf(at, place + 1);
    return { job, block, next: next === -1 ? undefined : next };
  });
}

/** A grinder stays on its site from a job's first block that needs one to the last. */
function grinderWanting(turns: readonly Turn[], grinders: number): BrokenRule | undefined {
  const grinding = turns.filter(({ block }) => block.grinder);
  for (const [place, { job, block }] of grinding.entries()) {
    const later = grinding.slice(place + 1);
    const earlier = grinding.slice(0, place);
    const held = [...new Set(earlier.map((turn) => turn.job))].filter(
      (other) => other !== job && later.some((turn) => turn.job === other),
    );
    const sites = new Set([job, ...held].map(({ site }) => site));
    if (sites.size > grinders)
      return { kind: 'grinder', job: job.name, block: block.name, held: held.map(({ name }) => name) };
  }
  return undefined;
}

function journeyOf(turns: readonly Turn[], day: CrewDay): Journey {
  const from = day.startsAt ?? turns[0]?.job.site;
  const to = day.endsAt ?? turns.at(-1)?.job.site;
  if (from === undefined || to === undefined) throw new RangeError('An order of no blocks has no times');
  const drive = (one: string, other: string): Hours => {
    const length = driveBetween(one, other, day.drives);
    if (length === undefined) throw new RangeError(`No drive is given between ${one} and ${other}`);
    return length;
  };
  return { starts: day.starts, from, to, drive };
}

function lagsOf(turns: readonly Turn[], slack: Hours, { drive }: Journey): Lag[] {
  return turns.flatMap(({ job, block, next }, place): Lag[] => {
    const following = turns[place + 1];
    const lags: Lag[] = following
      ? [{ before: place, after: place + 1, least: drive(job.site, following.job.site) }]
      : [];
    if (next === undefined) return lags;
    const { least, most } = block.cure;
    const kept = next === place + 1 ? hours(0) : slack;
    lags.push({ before: place, after: next, least, ...(most === undefined ? {} : { most: hours(most - kept) }) });
    return lags;
  });
}

function missedWindow(turns: readonly Turn[], lag: Lag, over: Hours): BrokenRule {
  const turn = turns[lag.after];
  const most = turns[lag.before]?.block.cure.most;
  if (turn === undefined || most === undefined) throw new Error('No block has the recoat time that was missed');
  return { kind: 'recoat', job: turn.job.name, block: turn.block.name, most, over };
}

function timedBlocks(turns: readonly Turn[], starts: readonly ClockHour[]): TimedBlock[] {
  return turns.flatMap(({ job, block }, place) => {
    const start = starts[place];
    if (start === undefined) return [];
    return [{ job: job.name, block: block.name, site: job.site, starts: start, length: block.length }];
  });
}
