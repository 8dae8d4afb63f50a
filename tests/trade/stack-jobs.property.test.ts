import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CrewDay, Drive, Job } from '../../src/trade/crew-day.ts';
import { stackJobs } from '../../src/trade/stack-jobs.ts';
import { clockHour, hours } from '../../src/units/hours.ts';
import { printedSeed } from '../helpers/random-seed.ts';
import { hoursByKind } from './jobs-of-a-day.ts';

const seed = printedSeed('stack-jobs.property');
const longestDay = 15;

/** Whole hours, so that a search of whole hours finds the best there is. */
interface Pair {
  readonly lengths: readonly (readonly [number, number])[];
  readonly cures: readonly number[];
  readonly windows: readonly (number | null)[];
  readonly grinds: readonly (readonly [boolean, boolean])[];
  readonly between: number;
  readonly fromYard: number;
  readonly throughYard: boolean;
  readonly grinders: number;
  readonly endsBy: number;
  readonly slack: number;
}

const upTo = (most: number) => fc.integer({ min: 0, max: most });
const both = <Value>(value: fc.Arbitrary<Value>) => fc.tuple(value, value);
const pairs: fc.Arbitrary<Pair> = fc.record({
  lengths: both(both(fc.integer({ min: 1, max: 3 }))),
  cures: both(upTo(3)),
  windows: both(fc.option(upTo(3))),
  grinds: both(both(fc.boolean())),
  between: upTo(2),
  fromYard: upTo(1),
  throughYard: fc.boolean(),
  grinders: fc.integer({ min: 1, max: 2 }),
  endsBy: fc.integer({ min: 6, max: longestDay }),
  slack: upTo(1),
});

const jobsOf = ({ lengths, cures, windows, grinds }: Pair): Job[] =>
  lengths.map((ofJob, at) => {
    const least = hours(cures[at] ?? 0);
    const window = windows[at] ?? null;
    const most = window === null ? {} : { most: hours(least + window) };
    const blocks = ofJob.map((length, place) => ({
      name: `${place}`,
      length: hours(length),
      grinder: grinds[at]?.[place] ?? false,
      cure: { least, ...most },
    }));
    return { name: `${at}`, site: `${at}`, blocks };
  });

const dayOf = ({ between, fromYard, throughYard, grinders, endsBy }: Pair): CrewDay => {
  const drives: Drive[] = [
    { between: ['0', '1'], length: hours(between) },
    { between: ['yard', '0'], length: hours(fromYard) },
    { between: ['yard', '1'], length: hours(fromYard) },
  ];
  const yard = throughYard ? { startsAt: 'yard', endsAt: 'yard' } : {};
  return { starts: clockHour(0), endsBy: clockHour(endsBy), grinders, drives, ...yard };
};

/** The earliest end over all whole-hour starts of the four blocks, tried one by one without a thought of orders. */
function searchedEnd(pair: Pair): number | undefined {
  let best: number | undefined;
  const yard = pair.throughYard ? pair.fromYard : 0;
  const latest = pair.endsBy - pair.slack - yard;
  const [first = [0, 0], second = [0, 0]] = pair.lengths;
  for (let a = yard; a + first[0] <= latest; a += 1)
    for (let aa = a + first[0]; aa + first[1] <= latest; aa += 1)
      for (let b = yard; b + second[0] <= latest; b += 1)
        for (let bb = b + second[0]; bb + second[1] <= latest; bb += 1) {
          const end = Math.max(aa + first[1], bb + second[1]) + yard;
          if ((best === undefined || end < best) && keepsAll(pair, [a, aa], [b, bb])) best = end;
        }
  return best;
}

type Starts = readonly [number, number];

function keepsAll(pair: Pair, first: Starts, second: Starts): boolean {
  const span = (job: number, starts: Starts, place: 0 | 1) => {
    const start = starts[place];
    return { start, end: start + (pair.lengths[job]?.[place] ?? 0), grinds: pair.grinds[job]?.[place] ?? false };
  };
  const jobs = [first, second].map((starts, job) => [span(job, starts, 0), span(job, starts, 1)] as const);
  const [mine, theirs] = jobs;
  if (mine === undefined || theirs === undefined) return false;
  const apart = mine.every((one) =>
    theirs.every((other) => one.end + pair.between <= other.start || other.end + pair.between <= one.start),
  );
  const cured = jobs.every(([before, after], job) => {
    const others = job === 0 ? theirs : mine;
    const away = others.some(({ start }) => start > before.start && start < after.start);
    const wait = after.start - before.end;
    const least = pair.cures[job] ?? 0;
    const window = pair.windows[job] ?? null;
    return wait >= least && (window === null || wait <= least + window - (away ? pair.slack : 0));
  });
  const grinding = jobs.map((blocks) => blocks.filter(({ grinds }) => grinds).map(({ start }) => start));
  const [ours = [], others = []] = grinding;
  const oneAfterTheOther = Math.max(...ours) < Math.min(...others) || Math.max(...others) < Math.min(...ours);
  return apart && cured && (pair.grinders > 1 || oneAfterTheOther);
}

describe('the best order of two jobs', () => {
  it('ends when a search of all starts finds the earliest end, and is refused when that finds none', () => {
    let stacked = 0;
    let none = 0;
    fc.assert(
      fc.property(pairs, (pair) => {
        const result = stackJobs(jobsOf(pair), dayOf(pair), hours(pair.slack));
        const end = searchedEnd(pair);
        if (end === undefined) none += 1;
        else stacked += 1;
        expect(result.kind === 'stacked' ? result.day.ends : undefined).toBe(end);
      }),
      { seed, numRuns: 400 },
    );
    // Neither answer may be the only one that is ever tried.
    expect(Math.min(stacked, none)).toBeGreaterThan(20);
  });

  it('has a day without gaps or overlaps, whose hours add up', () => {
    fc.assert(
      fc.property(pairs, (pair) => {
        const result = stackJobs(jobsOf(pair), dayOf(pair), hours(pair.slack));
        if (result.kind !== 'stacked') return;
        const { steps, ends, spare, working, driving, waiting } = result.day;
        for (const [at, step] of steps.entries()) expect(step.starts).toBe(steps[at - 1]?.finishes ?? 0);
        expect(steps.at(-1)?.finishes).toBe(ends);
        expect(working + driving + waiting).toBe(ends);
        expect([working, driving, waiting]).toEqual(hoursByKind(steps));
        expect(working).toBe(pair.lengths.flat().reduce((sum, length) => sum + length, 0));
        expect(ends + spare).toBe(pair.endsBy);
        expect(spare).toBeGreaterThanOrEqual(pair.slack);
      }),
      { seed, numRuns: 400 },
    );
  });

  it('counts each order once: those that hold, or those of every reason', () => {
    fc.assert(
      fc.property(pairs, (pair) => {
        const result = stackJobs(jobsOf(pair), dayOf(pair), hours(pair.slack));
        if (result.kind === 'refused') throw new Error(JSON.stringify(result.refusal));
        expect(result.orders).toBe(6);
        if (result.kind === 'none') expect(result.reasons.reduce((sum, { orders }) => sum + orders, 0)).toBe(6);
        else expect(result.holding).toBeGreaterThan(0);
      }),
      { seed, numRuns: 400 },
    );
  });
});
