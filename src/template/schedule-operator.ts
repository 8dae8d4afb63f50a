import { BegunFailure, type OperatorInput, type OperatorOutput } from '../formula/operator.ts';
import { BegunHere, type Given } from '../trade/given.ts';
import { schedule } from '../trade/schedule.ts';
import type { Coat, Day, Task, TaskTimes } from '../trade/task.ts';
import { codes, type OperatorContract, type OperatorRead, type OperatorResult } from './operator-contract.ts';

const taskColumns = {
  task: codes,
  include: '1',
  by_rate: 'h',
  factor: '1',
  people: 'person',
  crew_here: 'person',
  visit: '1',
  wait: 'h',
  beside: codes,
  after: codes,
  lays: codes,
  over: codes,
  abrades: '1',
  helped: '1',
  loads_out: '1',
  another_day: '1',
} as const;

const coatColumns = { coat: codes, recoat_from: 'h', recoat_until: 'h', to_refusal: '1' } as const;

const dayLines = {
  clock_day: 'h',
  site_from: 'h',
  site_until: 'h',
  stays_until: 'h',
  on_site_day: 'h',
  night: 'h',
  grace_hours: 'h',
  coat_start_until: 'h',
  coat_margin: 'h',
  visit_begin_until: 'h',
  first_set_up: 'h',
  later_set_up: 'h',
  loading_out: 'h',
  nearly_full: 'h',
  longest_on_site: 'h',
  hours_known_within: '%',
  all_beside: '1',
} as const;

const results = {
  task_hours: ['hours', 'h'],
  elapsed: ['elapsed', 'h'],
  people_at_it: ['peopleAtIt', 'person'],
  joined: ['joined', '1'],
  lead_people: ['leadPeople', 'person'],
  ready: ['ready', 'h'],
  visit_used: ['visitUsed', '1'],
  day_no: ['dayNo', '1'],
  start: ['start', 'h'],
  finish: ['finish', 'h'],
  clock_added: ['clockAdded', 'h'],
  window_passed: ['windowPassed', '1'],
  planned: ['planned', '1'],
  likely_hours: ['likelyHours', 'h'],
  on_clock: ['onClock', 'h'],
  paid_wait: ['paidWait', 'h'],
  fills: ['fills', 'h'],
  because: ['because', codes],
} as const satisfies Readonly<Record<string, readonly [keyof TaskTimes, string]>>;

const resultColumns = Object.entries(results);

/** The crew's day (`trade/schedule.ts`) over a table of tasks, a table of coats and the lines of a day. */
export const scheduleContract: OperatorContract = {
  name: 'schedule',
  reads: [
    ...Object.entries(taskColumns).map(([column, unit]): OperatorRead => ({ kind: 'column', column, unit })),
    ...Object.entries(coatColumns).map(
      ([column, unit]): OperatorRead => ({ kind: 'column', table: 'coats', column, unit }),
    ),
    ...Object.entries(dayLines).map(([line, unit]): OperatorRead => ({ kind: 'line', line, unit })),
  ],
  gives: resultColumns.map(([column, [, unit]]): OperatorResult => ({ column, unit })),
  work: (inputs) => {
    const read = new InputsByName(inputs);
    const times = schedule(tasksOf(read), coatsOf(read), dayOf(read));
    return resultColumns.map(([, [result]]) => times.map((row) => outputOf(row[result])));
  },
};

const inputAt = new Map(
  [...Object.keys(taskColumns), ...Object.keys(coatColumns), ...Object.keys(dayLines)].map((name, at) => [name, at]),
);

/** Inputs by the names in the contract. */
class InputsByName {
  private readonly inputs: readonly (readonly OperatorInput[])[];

  constructor(inputs: readonly (readonly OperatorInput[])[]) {
    this.inputs = inputs;
  }

  rows(name: string): number {
    return this.column(name).length;
  }

  number(name: string, row = 0): Given {
    const input = this.column(name)[row];
    if (typeof input === 'number' || typeof input === 'object') return input;
    throw new Error(`The operator reads no number “${name}”`);
  }

  code(name: string, row: number): string {
    const input = this.column(name)[row];
    if (typeof input === 'string') return input;
    throw new Error(`The operator reads no code “${name}”`);
  }

  private column(name: string): readonly OperatorInput[] {
    return this.inputs[inputAt.get(name) ?? -1] ?? [];
  }
}

function tasksOf(read: InputsByName): Task[] {
  return Array.from({ length: read.rows('task') }, (_, row) => ({
    name: read.code('task', row),
    include: read.number('include', row),
    byRate: read.number('by_rate', row),
    factor: read.number('factor', row),
    people: read.number('people', row),
    crewHere: read.number('crew_here', row),
    visit: read.number('visit', row),
    wait: read.number('wait', row),
    beside: read.code('beside', row) === 'above',
    after: read.code('after', row),
    lays: read.code('lays', row),
    over: read.code('over', row),
    abrades: read.number('abrades', row),
    helped: read.number('helped', row),
    loadsOut: read.number('loads_out', row),
    anotherDay: read.number('another_day', row),
  }));
}

function coatsOf(read: InputsByName): Coat[] {
  return Array.from({ length: read.rows('coat') }, (_, row) => ({
    name: read.code('coat', row),
    recoatFrom: read.number('recoat_from', row),
    recoatUntil: read.number('recoat_until', row),
    toRefusal: read.number('to_refusal', row),
  }));
}

function dayOf(read: InputsByName): Day {
  return {
    clockDay: read.number('clock_day'),
    siteFrom: read.number('site_from'),
    siteUntil: read.number('site_until'),
    staysUntil: read.number('stays_until'),
    onSite: read.number('on_site_day'),
    night: read.number('night'),
    grace: read.number('grace_hours'),
    coatStartUntil: read.number('coat_start_until'),
    coatMargin: read.number('coat_margin'),
    visitBeginUntil: read.number('visit_begin_until'),
    firstSetUp: read.number('first_set_up'),
    laterSetUp: read.number('later_set_up'),
    loadOut: read.number('loading_out'),
    nearlyFull: read.number('nearly_full'),
    longestOnSite: read.number('longest_on_site'),
    knownWithin: read.number('hours_known_within'),
    allBeside: read.number('all_beside'),
  };
}

function outputOf(given: Given | string): OperatorOutput {
  if (!(given instanceof BegunHere)) return given;
  const column = resultColumns.findIndex(([, [result]]) => result === given.result);
  return new BegunFailure(given.kind, column, given.task);
}
