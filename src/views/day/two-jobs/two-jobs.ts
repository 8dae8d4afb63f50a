import { type Clock, readClock } from '../../../quote/clock.ts';
import { jobWork, type WorkBlock } from '../../../quote/job-work.ts';
import type { OptionResults } from '../../../quote/option-results.ts';
import type { CrewDay, Job } from '../../../trade/crew-day.ts';
import type { DayStep } from '../../../trade/day-steps.ts';
import type { PlannedDay } from '../../../trade/order-times.ts';
import { stackJobs } from '../../../trade/stack-jobs.ts';
import { whyNotStacked } from '../../../trade/stack-words.ts';
import {
  type ClockHour,
  clockHour,
  hours,
  hoursBetween,
  hoursText,
  later,
  timeOfDayText,
} from '../../../units/hours.ts';
import { lengthWords } from '../clock-words.ts';
import type { StripDay, StripLane, StripSpan } from '../strip/strip-geometry.ts';
import type { CrewSettings } from './crew-settings.ts';

/** An option of some quote as one of the day's jobs. */
export interface ChosenJob {
  readonly quote: string;
  readonly option: string;
  readonly results: OptionResults;
}

/** Two jobs on one day, or why not. */
export interface TwoJobsView {
  readonly verdict: 'one day' | 'not one day' | 'cannot be told';
  readonly blocks: readonly BlockRow[];
  readonly day: DayOfTwo | undefined;
  /** Why no order holds, or what else is to be said; a sentence each. */
  readonly reasons: readonly string[];
}

/** One block of work of one job. */
export interface BlockRow {
  readonly job: string;
  readonly block: string;
  readonly length: string;
  readonly grinder: string;
  /** The shortest and longest wait after it; a dash after the last. */
  readonly wait: string;
}

export interface DayOfTwo {
  readonly words: string;
  readonly strip: StripDay;
  readonly rows: readonly StepRow[];
}

export interface StepRow {
  readonly start: string;
  readonly finish: string;
  readonly words: string;
  readonly hours: string;
}

const shop = 'the shop';

/** The best order of two options' blocks for one crew. Nothing is stored and no price follows from it. */
export function twoJobs(chosen: readonly [ChosenJob, ChosenJob], settings: CrewSettings): TwoJobsView {
  const names = jobNames(chosen);
  const clocks = chosen.flatMap(({ results }, at): { name: string; clock: Clock }[] => {
    const reading = readClock(results);
    return reading.kind === 'clock' ? [{ name: names[at] ?? '', clock: reading.clock }] : [];
  });
  const [first, second] = clocks;
  if (first === undefined || second === undefined) return withoutTimes(chosen, names);
  const works = [workOf(first.name, first.clock), workOf(second.name, second.clock)];
  const jobs = works.map(({ job }) => job);
  const day = crewDay(clocks, settings);
  const slack = hours(settings.slack);
  const result = stackJobs(jobs, day, slack);
  const blocks = works.flatMap(({ job, blocks: own }) => own.map((block, at) => blockRow(job, block, at, own.length)));
  if (result.kind !== 'stacked')
    return { verdict: 'not one day', blocks, day: undefined, reasons: whyNotStacked(result, jobs, day, slack) };
  return {
    verdict: 'one day',
    blocks,
    day: dayOfTwo(result.day, jobs, result),
    reasons: lateCoats(result.day, works, latestCoatStart(chosen)),
  };
}

/** By the quotes where they differ, else by the systems, else the first and the second floor. */
export function jobNames([first, second]: readonly [ChosenJob, ChosenJob]): readonly [string, string] {
  if (first.quote !== second.quote) return [first.quote, second.quote];
  if (first.option !== second.option) return [first.option, second.option];
  return ['First floor', 'Second floor'];
}

function withoutTimes(chosen: readonly ChosenJob[], names: readonly string[]): TwoJobsView {
  const reasons = chosen.flatMap(({ results }, at): string[] => {
    const reading = readClock(results);
    if (reading.kind === 'clock') return [];
    const why = reading.kind === 'failed' ? reading.reason : 'Its sheets tell no times of day. A new quote tells them.';
    return [`${names[at]}: ${why}`];
  });
  return { verdict: 'cannot be told', blocks: [], day: undefined, reasons };
}

interface Work {
  readonly job: Job;
  readonly blocks: readonly WorkBlock[];
}

function workOf(name: string, clock: Clock): Work {
  const { blocks } = jobWork(clock);
  return { job: { name, site: name, blocks }, blocks };
}

/** The crew loads once for both, and starts and ends at the shop. */
function crewDay(clocks: readonly { readonly name: string; readonly clock: Clock }[], settings: CrewSettings): CrewDay {
  const begins = clockHour(Math.min(...clocks.map(({ clock }) => clock.day.begins)));
  const loading = hours(Math.max(...clocks.map(({ clock }) => clock.day.loading)));
  const [first = '', second = ''] = clocks.map(({ name }) => name);
  return {
    starts: later(begins, loading),
    endsBy: later(begins, hours(settings.shift)),
    grinders: settings.grinders,
    drives: [
      ...clocks.map(({ name, clock }) => ({ between: [shop, name] as const, length: clock.day.drive })),
      { between: [first, second], length: hours(settings.travel) },
    ],
    startsAt: shop,
    endsAt: shop,
  };
}

function blockRow({ name }: Job, block: WorkBlock, at: number, of: number): BlockRow {
  const { least, most } = block.cure;
  const wait = most === undefined ? `at least ${lengthWords(least)}` : `${lengthWords(least)} to ${lengthWords(most)}`;
  return {
    job: name,
    block: block.name,
    length: lengthWords(block.length),
    grinder: block.grinder ? 'yes' : 'no',
    wait: at === of - 1 ? '–' : wait,
  };
}

function dayOfTwo(day: PlannedDay, jobs: readonly Job[], counts: { orders: number; holding: number }): DayOfTwo {
  const spare = `${hoursText(hours(Math.round(day.spare * 100) / 100))} before the end of the shift`;
  const words =
    `Both fit one day: back at ${shop} at ${timeOfDayText(day.ends)}, ${spare}. ` +
    `${counts.holding} of ${counts.orders} orders hold; this one ends first. ` +
    `${lengthWords(day.working)} at work, ${lengthWords(day.driving)} driving, ${lengthWords(day.waiting)} waiting.`;
  return { words, strip: stripOf(day, jobs), rows: day.steps.map(stepRow) };
}

function stepRow(step: DayStep): StepRow {
  const { starts, finishes } = step;
  return {
    start: timeOfDayText(starts),
    finish: timeOfDayText(finishes),
    words: stepWords(step),
    hours: lengthWords(hoursBetween(starts, finishes)),
  };
}

function stepWords(step: DayStep): string {
  switch (step.kind) {
    case 'work':
      return `${step.job}: ${step.block}`;
    case 'drive':
      return `Drive to ${step.to}`;
    case 'wait':
      return `Wait at ${step.site}`;
    default:
      return step satisfies never;
  }
}

/** A lane for each job, its cures hatched, and one for the crew between them. */
function stripOf({ steps }: PlannedDay, jobs: readonly Job[]): StripDay {
  const lanes = jobs.map(({ name }): StripLane => ({ name, spans: jobSpans(name, steps) }));
  const between = steps.flatMap((step): StripSpan[] =>
    step.kind === 'work'
      ? []
      : [{ tone: 'light', from: step.starts, to: step.finishes, words: step.kind === 'drive' ? 'Drive' : 'Wait' }],
  );
  return { title: 'One crew, one day', midnight: clockHour(0), lanes: [...lanes, { name: 'Between', spans: between }] };
}

function jobSpans(job: string, steps: readonly DayStep[]): StripSpan[] {
  const own = steps.flatMap((step) => (step.kind === 'work' && step.job === job ? [step] : []));
  return own.flatMap(({ block, starts, finishes }, at): StripSpan[] => {
    const before = own[at - 1];
    const work: StripSpan = { tone: 'coat', from: starts, to: finishes, words: capitalized(block) };
    const cured: StripSpan[] =
      before === undefined ? [] : [{ tone: 'wait', from: before.finishes, to: starts, words: 'Cure' }];
    return [...cured, work];
  });
}

function capitalized(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The latest start of a coat by the sheets, a longer day counted in, the earlier of the two; undefined where they tell none. */
function latestCoatStart(chosen: readonly ChosenJob[]): ClockHour | undefined {
  const told = chosen.flatMap(({ results }) => {
    const cell = results.option.plan.lines.get('coat_start_until');
    const value = cell === undefined ? undefined : results.read(cell);
    return typeof value === 'number' ? [value] : [];
  });
  return told.length === 0 ? undefined : clockHour(Math.min(...told));
}

/** Coats that would start later than the firm lets a coat start. The order holds all the same, so it is only said. */
function lateCoats({ steps }: PlannedDay, works: readonly Work[], latest: ClockHour | undefined): string[] {
  if (latest === undefined) return [];
  return works.flatMap(({ job, blocks }) => {
    const own = steps.filter((step) => step.kind === 'work' && step.job === job.name);
    return own.flatMap((step, at): string[] => {
      const after = blocks[at]?.lastCoatAfter;
      if (after === undefined || hoursBetween(latest, later(step.starts, after)) <= 0) return [];
      const starts = timeOfDayText(later(step.starts, after));
      return [
        `${job.name}: the ${blocks[at]?.name} starts at ${starts}, after the latest start of a coat on its sheet, ${timeOfDayText(latest)}.`,
      ];
    });
  });
}
