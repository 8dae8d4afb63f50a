import { describe, expect, it } from 'vitest';
import { type CrewSettings, usualSettings } from '../../../../src/views/day/two-jobs/crew-settings.ts';
import { type ChosenJob, jobNames, twoJobs } from '../../../../src/views/day/two-jobs/two-jobs.ts';
import { smallClock } from '../../../helpers/small-clock.ts';

type Lines = Readonly<Record<string, number>>;

/**
 * A floor of two blocks with a cure of 3 h between, half an hour of each block being setting up or loading out. Two of them,
 * 4.5 and 2 h and 3.5 and 1.5 h, half an hour apart, end 13 h after the first begins: worked out by hand.
 */
function floorOf(
  name: string,
  first: number,
  second: number,
  lines: Lines = {},
  coat: Lines = { to_refusal: 1 },
): ChosenJob {
  const laid = 8.5 + first - 0.5;
  const tasks = [
    { task: 'lay_base', start: 8.5, finish: laid, elapsed: first - 0.5, clock_added: first - 0.5, lays: 'base' },
    {
      ...{ task: 'lay_clear', start: laid + 3, finish: laid + 3 + second - 0.5, over: 'base' },
      ...{ elapsed: second - 0.5, clock_added: second - 0.5, lays: 'clear' },
    },
  ];
  const coats = [{ coat: 'base', ...coat }, { coat: 'clear' }];
  return { quote: name, option: 'Fast', results: smallClock({ tasks, coats, lines }) };
}

const crew: CrewSettings = { ...usualSettings, travel: 0.5, shift: 12 };

const jobs = (lines: Lines = {}, coat?: Lines): [ChosenJob, ChosenJob] => [
  floorOf('A', 4.5, 2, lines, coat),
  floorOf('B', 3.5, 1.5, lines, coat),
];

describe('two floors on a day of 16 h, half an hour from the shop and from each other', () => {
  const { verdict, day, blocks, reasons } = twoJobs(jobs(), { ...crew, shift: 16 });

  it('are done A, B, A, B from 8 am to 9 pm, the crew back at the shop at 9:30 pm', () => {
    expect(verdict).toBe('one day');
    expect(day?.rows.map(({ start, words }) => `${start} ${words}`)).toEqual([
      '7:30 am Drive to A',
      '8 am A: base',
      '12:30 pm Drive to B',
      '1 pm B: base',
      '4:30 pm Drive to A',
      '5 pm A: clear',
      '7 pm Drive to B',
      '7:30 pm B: clear',
      '9 pm Drive to the shop',
    ]);
    expect(day?.words).toMatch(/^Both fit one day: back at the shop at 9:30 pm, 1.5 h before the end of the shift\./);
    expect(reasons).toEqual([]);
  });

  it('are four blocks, the first of each with a wait of 3 h and no end to it', () => {
    expect(blocks.map(({ job, block, length, wait }) => [job, block, length, wait])).toEqual([
      ['A', 'base', '4.5 h', 'at least 3 h'],
      ['A', 'clear', '2 h', '–'],
      ['B', 'base', '3.5 h', 'at least 3 h'],
      ['B', 'clear', '1.5 h', '–'],
    ]);
  });

  it('are drawn with a lane each, the cure of A hatched from 12:30 pm to 5 pm', () => {
    const [a, b, between] = day?.strip.lanes ?? [];
    expect(a?.spans.map(({ tone, from, to }) => [tone, from, to])).toEqual([
      ['coat', 8, 12.5],
      ['wait', 12.5, 17],
      ['coat', 17, 19],
    ]);
    expect(b?.spans).toHaveLength(3);
    expect(between?.spans.every(({ words }) => words === 'Drive')).toBe(true);
  });
});

it('on a day of 12 h they are refused, with the order that comes nearest and its end', () => {
  const { verdict, day, reasons } = twoJobs(jobs(), crew);
  expect(verdict).toBe('not one day');
  expect(day).toBeUndefined();
  expect(reasons).toEqual([
    'No order ends by 7 pm with 1 h to spare: the best (A: base, B: base, A: clear, B: clear) ends 9:30 pm.',
  ]);
});

it('a window of 3 h, which the drive there and back leaves no time in, is a reason of its own', () => {
  const { reasons } = twoJobs(jobs({}, { recoat_until: 3 }), { ...crew, shift: 16 });
  expect(reasons.join(' ')).toMatch(/comes .* too late: it must follow within 3 h/);
});

it('a coat that starts after the firm’s latest start of a coat, 3:30 pm, is said to', () => {
  const late = twoJobs(jobs({ coat_start_until: 15.5 }), { ...crew, shift: 16 });
  expect(late.verdict).toBe('one day');
  expect(late.reasons).toEqual([
    'A: the clear starts at 5 pm, after the latest start of a coat on its sheet, 3:30 pm.',
    'B: the clear starts at 7:30 pm, after the latest start of a coat on its sheet, 3:30 pm.',
  ]);
});

it('of a sheet without times nothing can be told', () => {
  const [a] = jobs();
  const b: ChosenJob = { quote: 'B', option: 'Old', results: smallClock({ without: ['day_begins'] }) };
  expect(twoJobs([a, b], crew)).toMatchObject({
    verdict: 'cannot be told',
    reasons: ['B: Its sheets tell no times of day. A new quote tells them.'],
  });
});

describe('jobs are called', () => {
  const [a, b] = jobs();

  it('by their quotes, else their systems, else first and second', () => {
    expect(jobNames([a, b])).toEqual(['A', 'B']);
    expect(jobNames([a, { ...a, option: 'Standard' }])).toEqual(['Fast', 'Standard']);
    expect(jobNames([a, a])).toEqual(['First floor', 'Second floor']);
  });
});
