import { describe, expect, it } from 'vitest';
import { worth } from '../../../../src/views/day/two-jobs/worth-words.ts';
import { smallWorth } from '../../../helpers/small-worth.ts';

const standard = {
  title: 'Standard',
  results: smallWorth({
    price: 2875,
    contribution: 1074,
    crew_days: 1.5,
    paid_hours: 16.4,
    contribution_per_crew_day: 716,
  }),
};
const fast = (contribution: number, price: number) => ({
  title: 'Fast',
  results: smallWorth({
    price,
    contribution,
    crew_days: 1,
    paid_hours: 24.3,
    contribution_per_crew_day: contribution,
  }),
});

describe('a fast system that takes 1 crew-day against 1.5', () => {
  it('earns more with the calendar full though the job leaves $74 less, which is what counts with it empty', () => {
    const told = worth(standard, fast(1000, 2900));
    expect(told).toMatchObject({
      full: 'With the calendar full, Fast earns $284 more a crew-day. It takes one crew-day against 1.5 crew-days, and as a job it leaves $74 less.',
      empty:
        'With the calendar empty, Standard earns $74 more a job. It is priced $25 less, and pays 16.4 h against 24.3 h.',
    });
  });

  it('earns more either way when the job leaves more, too', () => {
    const told = worth(standard, fast(1212, 3275));
    expect(told).toMatchObject({
      full: expect.stringMatching(/^With the calendar full, Fast earns \$496 more a crew-day/),
      empty:
        'With the calendar empty, Fast earns $138 more a job. It is priced $400 more, and pays 24.3 h against 16.4 h.',
    });
  });

  it('and one that earns the same is said to', () => {
    const told = worth(standard, { ...standard, title: 'Twin' });
    expect(told).toMatchObject({
      full: 'With the calendar full they earn the same a crew-day.',
      empty: 'With the calendar empty they earn the same a job.',
    });
  });

  it('is told before overhead, the day and the job', () => {
    const told = worth(standard, fast(1000, 2900));
    const labels = told.kind === 'worth' ? told.rows.map(({ label }) => label) : [];
    expect(labels.filter((label) => label.endsWith('contribution a crew-day, before overhead'))).toHaveLength(1);
    expect(labels.filter((label) => label.endsWith('contribution of the job, before overhead'))).toHaveLength(1);
  });

  it('shows a loss with its sign', () => {
    const told = worth(standard, fast(-200, 1500));
    expect(told.kind === 'worth' && told.rows.map(({ second }) => second)).toContain('−$200');
  });
});

it('nothing is said of an option whose contribution cannot be worked out', () => {
  expect(worth(standard, { title: 'Broken', results: smallWorth({ price: 1 }, 'contribution') })).toMatchObject({
    kind: 'incomplete',
  });
});
