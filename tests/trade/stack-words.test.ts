import { describe, expect, it } from 'vitest';
import type { CrewDay, Job } from '../../src/trade/crew-day.ts';
import { stackJobs, usualSlack } from '../../src/trade/stack-jobs.ts';
import { whyNotStacked } from '../../src/trade/stack-words.ts';
import { hours } from '../../src/units/hours.ts';
import { crewDay, job } from './jobs-of-a-day.ts';

function said(jobs: readonly Job[], day: CrewDay, slack = usualSlack): string[] {
  const result = stackJobs(jobs, day, slack);
  if (result.kind === 'stacked') throw new Error('An order holds');
  return whyNotStacked(result, jobs, day, slack);
}

const two = [
  job('A', [{ for: 4.5, cure: 3, grinder: true }, { for: 2 }]),
  job('B', [{ for: 3.5, cure: 3, grinder: true }, { for: 1.5 }]),
];

describe('why two jobs do not go on one day is said', () => {
  it('with the clock and the best end, when every order ends too late', () => {
    expect(said(two, crewDay({ from: 6.5, to: 18 }))).toEqual([
      'No order ends by 6 pm with 1 h to spare: the best (A: grind, B: grind, A: clear, B: clear) ends 7:30 pm.',
    ]);
    expect(said(two, crewDay({ from: 6.5, to: 18 }), hours(0))[0]).toMatch(/^No order ends by 6 pm: the best /);
  });

  it('with the window and by how much it is missed', () => {
    const shut = (name: string) => job(name, [{ for: 4, cure: 3, within: 4 }, { for: 2 }]);
    expect(said([shut('A'), shut('B')], crewDay({ to: 15 }))).toEqual([
      'Of 6 orders, 2 keep all else, but none of them ends by 3 pm with 1 h to spare: ' +
        'the best (A: grind, A: clear, B: grind, B: clear) ends 6:30 pm.',
      'In 2 of 6 orders A: clear comes 2 h or more too late: it must follow within 4 h with 1 h to spare.',
      'In 2 of 6 orders B: clear comes 2 h or more too late: it must follow within 4 h with 1 h to spare.',
    ]);
  });

  it('with who holds the grinder', () => {
    const polished = (name: string) =>
      job(name, [
        { for: 2, cure: 3, grinder: true },
        { for: 1, grinder: true },
      ]);
    const words = said([polished('A'), polished('B')], crewDay({ drive: 0, to: 12 }));
    expect(words.slice(1)).toEqual([
      'In 2 of 6 orders B: grind needs a grinder, and the only one is held at A.',
      'In 2 of 6 orders A: grind needs a grinder, and the only one is held at B.',
    ]);
    expect(said(two, crewDay({ grinders: 0 }))).toEqual([
      'In 3 of 6 orders A: grind needs a grinder, and the crew has none.',
      'In 3 of 6 orders B: grind needs a grinder, and the crew has none.',
    ]);
  });

  it('with what to change, when they could not be tried', () => {
    expect(said([], crewDay({}))).toEqual(['Choose 1 to 4 jobs for one day, not 0.']);
    expect(said([job('A', [{ for: 1 }]), job('Z', [{ for: 1 }])], crewDay({}))).toEqual([
      'Give the drive between A and Z.',
    ]);
    const shut = job('A', [{ for: 1, cure: 3, within: 2 }, { for: 1 }]);
    expect(said([shut], crewDay({}))).toEqual([
      'A: what follows grind must come before its cure is over: allow a longer time.',
    ]);
    const many = (name: string) =>
      job(
        name,
        Array.from({ length: 8 }, () => ({ for: 0.5 })),
      );
    expect(said([many('A'), many('B')], crewDay({}))).toEqual([
      'There are 12870 orders of so many blocks, and at most 10000 are tried: join blocks that follow each other.',
    ]);
  });
});
