import { closuresOf } from '../../src/formula/closures.ts';
import type { OptionResults } from '../../src/quote/option-results.ts';
import { entry, entryColumn, floor, formula, key, laid, table } from './sheets.ts';

type Numbers = Readonly<Record<string, number>>;
type Row = Readonly<Record<string, number | string | { readonly formula: string }>>;

/** The lines that a clock's readers want, each an entry that a test may change. */
const usualLines: Readonly<Record<string, readonly [string, number]>> = {
  day_begins: ['h', 7],
  loading_time: ['h', 0.5],
  drive_time: ['h', 0.5],
  site_until: ['h', 16.5],
  grind_rate: ['ft2/h', 100],
  coat_start_until: ['h', 24],
  last_coat_done: ['h', 16],
  walk_at: ['h', 22],
  furniture_at: ['h', 40],
  drive_at: ['h', 88],
  calendar_days: ['d', 1],
  visits: ['visit', 1],
  work_days: ['d', 1],
  start_chosen: ['1', 0],
  cars_park: ['1', 1],
  walk_hours: ['h', 6],
  drive_hours: ['h', 72],
  furnish_hours: ['h', 24],
};

const taskNumbers = ['include', 'people_at_it', 'visit_used', 'day_no', 'joined'];
const taskHours = ['start', 'finish', 'wait', 'elapsed', 'clock_added'];
const usualTask: Numbers = { include: 1, people_at_it: 2, visit_used: 1, day_no: 1 };
const rowOf = (name: string, of: string) => ({ name, label: name, rowOf: of, default: 'none', source: 'made up' });

interface SmallClock {
  readonly lines?: Numbers;
  readonly tasks?: readonly Row[];
  readonly coats?: readonly Row[];
  /** Lines that the sheet lacks. */
  readonly without?: readonly string[];
  /** A line that fails, by dividing by 0. */
  readonly failing?: string;
}

/** An option whose clock is typed in: what the readers of a clock are given, without the shipped formulas. */
export function smallClock({
  lines = {},
  tasks = [],
  coats = [],
  without = [],
  failing = '',
}: SmallClock): OptionResults {
  const own = Object.entries(usualLines).filter(([name]) => !without.includes(name) && name !== failing);
  const entries = own.map(([name, [unit, value]]) => entry(name, unit, lines[name] ?? value));
  const failed = failing === '' ? [] : [entry('nil', '1', 0), formula(failing, 'h', `${own[0]?.[0]} / nil`)];
  const sheet = floor(
    [...entries, ...failed, entry('start_date', 'date', '2026-01-19')],
    [coatTable(coats), taskTable(tasks), tripTable],
  );
  const found = laid([sheet]);
  if (found.faults.length > 0) throw new Error(found.faults.join('\n'));
  const closures = closuresOf(found.plan.plan, found.plan.graph);
  return { stack: found.stack, option: found.plan, read: (cell) => closures.value(cell) };
}

function coatTable(rows: readonly Row[]): ReturnType<typeof table> {
  const columns = [
    entryColumn('include', '1', 1),
    entryColumn('to_refusal', '1', 0),
    entryColumn('recoat_from', 'h', 3),
    entryColumn('recoat_until', 'h', 24),
  ];
  return table('coats', [key('coat'), ...columns], rows);
}

function taskTable(rows: readonly Row[]): ReturnType<typeof table> {
  const columns = [
    ...taskNumbers.map((name) => entryColumn(name, '1', usualTask[name] ?? 0)),
    ...taskHours.map((name) => entryColumn(name, 'h', 0)),
    { name: 'rate', label: 'rate', perRow: true, unit: 'ft2/h', default: 1, source: 'made up' },
    rowOf('lays', 'coats'),
    rowOf('over', 'coats'),
  ];
  return table('tasks', [key('task'), ...columns], rows);
}

const tripTable = table(
  'trips',
  [
    key('visit_code'),
    entryColumn('trip', '1', 1),
    entryColumn('used', '1', 1),
    entryColumn('arrives', 'h', 8),
    entryColumn('crew_here', 'person', 2),
    entryColumn('set_up_hours', 'h', 0.5),
    entryColumn('load_out_hours', 'h', 0.5),
    entryColumn('worked', 'h', 9),
    entryColumn('paid', 'h', 16),
    entryColumn('days_charged', 'crew_day', 1),
  ],
  [{ visit_code: 'one' }, { visit_code: 'two', trip: 2, used: 0 }],
);
