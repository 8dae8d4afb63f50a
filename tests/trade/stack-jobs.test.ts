import { describe, expect, it } from 'vitest';
import { mostOrders, type Refusal, stackJobs } from '../../src/trade/stack-jobs.ts';
import { hours } from '../../src/units/hours.ts';
import { bestOf, crewDay, job, type Work, worked } from './jobs-of-a-day.ts';

const long: readonly Work[] = [{ for: 4.5, cure: 3, grinder: true }, { for: 2 }];
const short: readonly Work[] = [{ for: 3.5, cure: 3, grinder: true }, { for: 1.5 }];
const two = [job('A', long), job('B', short)];

/** The kinds of rules that no order keeps, with how many orders break each first. */
function broken(result: ReturnType<typeof stackJobs>): readonly string[] {
  if (result.kind !== 'none') throw new Error(`Not refused for its orders: ${result.kind}`);
  return result.reasons.map(({ rule, orders }) => `${orders} ${rule.kind}`);
}

describe('a day of two jobs', () => {
  it('from 07:00 with the shift over at 21:00 tells each step, the drives and the wait', () => {
    const result = stackJobs(two, crewDay({ from: 7, to: 21 }));
    if (result.kind !== 'stacked') throw new Error(result.kind);
    const told = result.day.steps.map(({ kind, starts, finishes }) => [kind, starts, finishes]);
    expect(told).toEqual([
      ['work', 7, 11.5],
      ['drive', 11.5, 12],
      ['work', 12, 15.5],
      ['drive', 15.5, 16],
      ['work', 16, 18],
      ['drive', 18, 18.5],
      ['work', 18.5, 20],
    ]);
    expect(result.day).toMatchObject({ ends: 20, spare: 1, working: 11.5, driving: 1.5, waiting: 0 });
  });

  it('waits at the site where it works next', () => {
    const result = stackJobs([job('A', [{ for: 2, cure: 3 }, { for: 1 }])], crewDay({}));
    expect(result).toMatchObject({ kind: 'stacked', orders: 1, holding: 1, day: { ends: 6, waiting: 3 } });
  });
});

describe('time to spare', () => {
  it('is 1 h unless asked otherwise: a shift over at 13.5 takes the day of 13 h only when half an hour will do', () => {
    expect(broken(stackJobs(two, crewDay({ to: 13.5 })))).toEqual(['6 late']);
    expect(bestOf(stackJobs(two, crewDay({ to: 13.5 }), hours(0.5)))).toEqual({ order: 'A B A B', ends: 13 });
    expect(bestOf(stackJobs(two, crewDay({ to: 14 }))).ends).toBe(13);
  });

  it('is kept in a window while the crew is away: A comes 4.5 h after its first coat, so 5 h are too few', () => {
    const within = (most: number) => [job('A', [{ for: 4.5, cure: 3, within: most }, { for: 2 }]), job('B', short)];
    expect(bestOf(stackJobs(within(5.5), crewDay({}))).order).toBe('A B A B');
    expect(bestOf(stackJobs(within(5), crewDay({}))).order).toBe('B A B A');
    expect(bestOf(stackJobs(within(5), crewDay({}), hours(0))).order).toBe('A B A B');
  });

  it('is not asked of a window during which the crew stays', () => {
    const alone = job('A', [{ for: 4, cure: 3, within: 3 }, { for: 2 }]);
    expect(bestOf(stackJobs([alone], crewDay({}))).ends).toBe(9);
  });
});

describe('a recoat window', () => {
  it('makes an earlier block start later rather than miss it', () => {
    // B must be coated again at 3 h sharp; A fills that time only when B waits to begin.
    const jobs = [job('A', [{ for: 4, cure: 6 }, { for: 1 }]), job('B', [{ for: 1, cure: 3, within: 3 }, { for: 1 }])];
    const result = stackJobs(jobs, crewDay({ drive: 0 }), hours(0));
    expect(bestOf(result)).toEqual({ order: 'A B B A', ends: 11 });
    const tight = stackJobs(
      [job('A', [{ for: 2, cure: 1 }, { for: 2 }]), job('B', [{ for: 1, cure: 2, within: 2 }, { for: 1 }])],
      crewDay({ drive: 0 }),
      hours(0),
    );
    // Started at 0, B would be done again at 3 and A at 2 to 4: so B starts at 2, beside A's cure.
    expect(bestOf(tight)).toEqual({ order: 'A B A B', ends: 6 });
  });

  it('that closes before any order comes back is the reason, with the least that it is missed by', () => {
    // Each fills its own cure alone, but the shift is too short for one after the other.
    const shut = (name: string) => job(name, [{ for: 4, cure: 3, within: 4 }, { for: 2 }]);
    const result = stackJobs([shut('A'), shut('B')], crewDay({ to: 15 }));
    expect(broken(result)).toEqual(['2 late', '2 recoat', '2 recoat']);
    const windows = result.kind === 'none' ? result.reasons.map(({ rule }) => rule) : [];
    expect(windows[1]).toMatchObject({ kind: 'recoat', block: 'clear', most: 4, over: 2 });
  });
});

describe('grinders', () => {
  const polished: readonly Work[] = [
    { for: 2, cure: 3, grinder: true },
    { for: 1, grinder: true },
  ];
  const jobs = [job('A', polished), job('B', polished)];

  it('stay on a site until its grinding is over: with one, the jobs do not mesh', () => {
    expect(bestOf(stackJobs(jobs, crewDay({ drive: 0 })))).toEqual({ order: 'A A B B', ends: 12 });
    expect(broken(stackJobs(jobs, crewDay({ drive: 0, to: 12 })))).toEqual(['2 late', '2 grinder', '2 grinder']);
  });

  it('with a second one the jobs mesh', () => {
    expect(bestOf(stackJobs(jobs, crewDay({ drive: 0, grinders: 2 })))).toEqual({ order: 'A B A B', ends: 8 });
  });

  it('serve two jobs on one site', () => {
    const next = [job('A', polished), job('B', polished, 'A')];
    expect(bestOf(stackJobs(next, crewDay({}))).order).toBe('A B A B');
  });

  it('are wanted by every order of a crew that has none', () => {
    expect(broken(stackJobs(two, crewDay({ grinders: 0 })))).toEqual(['3 grinder', '3 grinder']);
  });
});

describe('the drive from the yard and back', () => {
  it('counts: half an hour each way makes 13 h 14 h', () => {
    expect(bestOf(stackJobs(two, crewDay({}, 'yard')))).toEqual({ order: 'A B A B', ends: 14 });
    expect(broken(stackJobs(two, crewDay({ to: 14.5 }, 'yard')))).toEqual(['6 late']);
  });

  it('may be on one side only', () => {
    const { endsAt, ...outOnly } = crewDay({}, 'yard');
    expect(endsAt).toBe('yard');
    expect(bestOf(stackJobs(two, outOnly)).ends).toBe(13.5);
  });
});

describe('of orders that end alike', () => {
  it('the one with the least driving is taken, then the one that begins with the earlier job', () => {
    const far = (name: string) => job(name, [{ for: 1, cure: 0 }, { for: 1 }]);
    const least = stackJobs([far('A'), far('B')], crewDay({ drive: 1 }));
    expect(bestOf(least)).toEqual({ order: 'A A B B', ends: 5 });
    // Four hours' cure hide the drives: A B A B and B A B A end alike, and drive alike.
    const slow = (name: string) => job(name, [{ for: 1, cure: 4 }, { for: 1 }]);
    expect(bestOf(stackJobs([slow('A'), slow('B')], crewDay({ drive: 1 }))).order).toBe('A B A B');
    expect(bestOf(stackJobs([slow('B'), slow('A')], crewDay({ drive: 1 }))).order).toBe('B A B A');
  });
});

describe('more jobs', () => {
  it('up to four of two blocks are tried in all 2,520 orders', () => {
    const jobs = ['A', 'B', 'C', 'D'].map((name) => job(name, [{ for: 1, cure: 3 }, { for: 1 }]));
    const result = stackJobs(jobs, crewDay({ drive: 0 }));
    expect(result).toMatchObject({ kind: 'stacked', orders: 2520, day: { ends: 8, waiting: 0 } });
    expect(result.kind === 'stacked' && worked(result.day.steps)).toBe('A B C D A B C D');
  });

  it('may have blocks in any number', () => {
    const jobs = [job('A', [{ for: 1, cure: 2 }, { for: 1, cure: 2 }, { for: 1 }]), job('B', [{ for: 4 }])];
    expect(stackJobs(jobs, crewDay({ drive: 0 }))).toMatchObject({ kind: 'stacked', orders: 4, day: { ends: 9 } });
  });
});

describe('what cannot be tried is refused', () => {
  const [a, b] = [job('A', long), job('B', short)];
  const day = crewDay({});
  const refusals: readonly (readonly [string, ReturnType<typeof stackJobs>, Refusal])[] = [
    ['no job', stackJobs([], day), { kind: 'jobs', count: 0 }],
    ['five jobs', stackJobs([a, b, a, b, a], day), { kind: 'jobs', count: 5 }],
    ['one job twice', stackJobs([a, a], day), { kind: 'same_name', name: 'A' }],
    ['a job without work', stackJobs([a, job('B', [])], day), { kind: 'no_blocks', job: 'B' }],
    [
      'hours that are none',
      stackJobs([job('A', [{ for: Number.NaN }])], day),
      { kind: 'bad_hours', job: 'A', block: 'grind' },
    ],
    [
      'a negative cure',
      stackJobs([job('A', [{ for: 1, cure: -1 }])], day),
      { kind: 'bad_hours', job: 'A', block: 'grind' },
    ],
    [
      'a window shorter than the cure',
      stackJobs([job('A', [{ for: 1, cure: 3, within: 2 }, { for: 1 }])], day),
      { kind: 'no_window', job: 'A', block: 'grind' },
    ],
    ['a site that nobody drives to', stackJobs([a, job('Z', short)], day), { kind: 'no_drive', from: 'A', to: 'Z' }],
    ['half a grinder', stackJobs([a, b], crewDay({ grinders: 0.5 })), { kind: 'bad_day' }],
    ['negative time to spare', stackJobs([a, b], day, hours(-1)), { kind: 'bad_day' }],
  ];

  it.each(refusals)('%s', (_words, result, refusal) => {
    expect(result).toEqual({ kind: 'refused', refusal });
  });

  it('too many orders: two jobs of eight blocks have 12,870', () => {
    const many = (name: string) =>
      job(
        name,
        Array.from({ length: 8 }, () => ({ for: 0.5 })),
      );
    expect(mostOrders).toBe(10_000);
    expect(stackJobs([many('A'), many('B')], day)).toEqual({
      kind: 'refused',
      refusal: { kind: 'orders', count: 12_870 },
    });
  });
});
