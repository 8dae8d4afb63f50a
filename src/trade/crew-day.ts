import { type ClockHour, type Hours, hours } from '../units/hours.ts';

/** Work that the crew does in one go. */
export interface Block {
  readonly name: string;
  /** By the clock, the whole crew at it. */
  readonly length: Hours;
  readonly grinder: boolean;
  /** From its finish to the start of the job's next block; not read on the last one. */
  readonly cure: Cure;
}

export interface Cure {
  readonly least: Hours;
  /** The recoat window: the next block starts no later than this. Left out: no end to it. */
  readonly most?: Hours;
}

export interface Job {
  readonly name: string;
  readonly site: string;
  /** Done in this order. */
  readonly blocks: readonly Block[];
}

/** One crew's day. */
export interface CrewDay {
  readonly starts: ClockHour;
  /** When the shift is over. */
  readonly endsBy: ClockHour;
  /** A grinder stays on a site from the first block of a job that needs one to the last. */
  readonly grinders: number;
  readonly drives: readonly Drive[];
  /** Where the crew is at the start; left out: at the first site. */
  readonly startsAt?: string;
  /** Where it must be at the end; left out: it may end at any site. */
  readonly endsAt?: string;
}

/** The same both ways. */
export interface Drive {
  readonly between: readonly [string, string];
  readonly length: Hours;
}

/** How long the drive is: 0 from a site to itself, undefined when nobody has said. */
export function driveBetween(from: string, to: string, drives: readonly Drive[]): Hours | undefined {
  if (from === to) return hours(0);
  const same = ([one, other]: Drive['between']): boolean =>
    (one === from && other === to) || (one === to && other === from);
  return drives.find(({ between }) => same(between))?.length;
}
