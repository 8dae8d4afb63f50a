import type { CellValue } from '../formula/cells.ts';
import { cellsRead } from '../formula/dependencies.ts';
import { failureText } from '../formula/failure-text.ts';
import { type ClockHour, clockHour, type Hours, hours } from '../units/hours.ts';
import { cellOfColumn, cellOfLine, definitionAt, explainedPlan, type OptionResults } from './option-results.ts';

/** When an option's work is done: its tasks and visits as the sheet's clock has them. */
export interface Clock {
  /** Those that are done at all, in sheet order. */
  readonly tasks: readonly ClockTask[];
  readonly visits: readonly ClockVisit[];
  readonly day: ClockDay;
}

export interface ClockTask {
  /** Its row in the table of tasks. */
  readonly row: string;
  readonly label: string;
  readonly visit: number;
  /** 1 for the first day. */
  readonly day: number;
  readonly start: ClockHour;
  readonly finish: ClockHour;
  readonly people: number;
  /** Nothing after it begins sooner than this long after it. */
  readonly wait: Hours;
  /** It runs beside the one above. */
  readonly beside: boolean;
  /** By the clock, nights left out. */
  readonly takes: Hours;
  /** What the clock of the visit grows by: less than it takes where it runs beside the one above. */
  readonly added: Hours;
  /** The coat it lays. */
  readonly lays?: string;
  /** The coat it is done to. */
  readonly over?: Over;
  /** It goes at the grinder's rate. */
  readonly grinds: boolean;
  /** Why it begins when it does; left out where the quote's sheets do not say. */
  readonly because?: string;
}

export interface Over {
  readonly coat: string;
  /** From the finish of that coat: no sooner. */
  readonly from: Hours;
  /** From the finish of that coat, after which it must be abraded. Left out: no end to it. */
  readonly until?: Hours;
}

export interface ClockVisit {
  readonly visit: number;
  readonly crew: number;
  /** On site, on its first day. */
  readonly arrives: ClockHour;
  readonly setUp: Hours;
  readonly loadOut: Hours;
  readonly worked: Hours;
  readonly paid: Hours;
  readonly crewDays: number;
}

/** What every day is like, in hours from its midnight. */
export interface ClockDay {
  readonly begins: ClockHour;
  readonly loading: Hours;
  readonly drive: Hours;
  /** When the crew leaves the site on a day that does not end the work. */
  readonly leaves: ClockHour;
  /** No coat starts later. */
  readonly coatsUntil?: ClockHour;
}

export type ClockReading =
  | { readonly kind: 'clock'; readonly clock: Clock }
  /** The quote's templates tell no times. */
  | { readonly kind: 'absent' }
  | { readonly kind: 'failed'; readonly reason: string };

const tasksRead = [
  ...['include', 'visit_used', 'day_no', 'start', 'finish', 'wait', 'lays', 'over'],
  ...['people_at_it', 'joined', 'elapsed', 'clock_added'],
];
const coatsRead = ['include', 'recoat_from', 'recoat_until', 'to_refusal'];
const tripsRead = [
  ...['trip', 'used', 'arrives', 'crew_here', 'set_up_hours', 'load_out_hours'],
  ...['worked', 'paid', 'days_charged'],
];
const linesRead = ['day_begins', 'loading_time', 'drive_time', 'site_until'];

/** Reads an option's clock. Hours are from midnight of the first day. */
export function readClock(results: OptionResults): ClockReading {
  if (!hasClock(results)) return { kind: 'absent' };
  const reader = new CellReader(results);
  const clock = { tasks: tasksOf(results, reader), visits: visitsOf(results, reader), day: dayOf(results, reader) };
  return reader.failed === undefined ? { kind: 'clock', clock } : { kind: 'failed', reason: reader.failed };
}

function hasClock(results: OptionResults): boolean {
  const { lines, tables } = results.option.plan;
  const has = (table: string, columns: readonly string[]): boolean =>
    columns.every((column) => tables.get(table)?.columns.has(column));
  return (
    has('tasks', tasksRead) &&
    has('coats', coatsRead) &&
    has('trips', tripsRead) &&
    linesRead.every((line) => lines.has(line))
  );
}

/** Reads cells as numbers and remembers, in words, the first that failed. */
class CellReader {
  failed: string | undefined;
  private readonly results: OptionResults;

  constructor(results: OptionResults) {
    this.results = results;
  }

  line(name: string): number {
    return this.number(cellOfLine(this.results, name));
  }

  at(table: string, column: string, row: number): number {
    return this.number(cellOfColumn(this.results, table, column, row));
  }

  code(table: string, column: string, row: number): string {
    const value = this.value(cellOfColumn(this.results, table, column, row));
    return typeof value === 'string' ? value : '';
  }

  private number(cell: number | undefined): number {
    const value = this.value(cell);
    if (typeof value === 'number') return value;
    this.failed ??= this.reason(value);
    return 0;
  }

  private value(cell: number | undefined): CellValue | undefined {
    return cell === undefined ? undefined : this.results.read(cell);
  }

  private reason(value: CellValue | undefined): string {
    if (typeof value !== 'object') return 'The clock cannot be worked out.';
    return failureText(value, explainedPlan(this.results), (place) => {
      const label = definitionAt(this.results, place)?.label ?? 'A number';
      return place.kind === 'line'
        ? label
        : `${label} of ${this.results.option.rows.get(place.table)?.[place.row]?.label}`;
    });
  }
}

function tasksOf(results: OptionResults, reader: CellReader): ClockTask[] {
  const rows = results.option.rows.get('tasks') ?? [];
  return rows.flatMap(({ id, label }, row): ClockTask[] => {
    const at = (column: string): number => reader.at('tasks', column, row);
    const [included, elapsed] = [at('include'), at('elapsed')];
    if (included === 0 || elapsed === 0) return [];
    const joined = at('joined') === 1;
    const lays = coatLabel(results, reader.code('tasks', 'lays', row));
    const over = overOf(results, reader, row);
    const because = reader.code('tasks', 'because', row);
    return [
      {
        row: id,
        label,
        visit: at('visit_used'),
        day: at('day_no'),
        start: clockHour(at('start')),
        finish: clockHour(at('finish')),
        people: at('people_at_it'),
        wait: hours(at('wait')),
        beside: joined,
        takes: hours(elapsed),
        // What the clock grows by holds the wait before a task too, but beside another there is none.
        added: hours(joined ? at('clock_added') : elapsed),
        grinds: grinds(results, row),
        ...(lays !== undefined && { lays }),
        ...(over !== undefined && { over }),
        ...(because !== '' && { because }),
      },
    ];
  });
}

function overOf(results: OptionResults, reader: CellReader, row: number): Over | undefined {
  const code = reader.code('tasks', 'over', row);
  const coat = coatLabel(results, code);
  const at = coatRow(results, code);
  if (coat === undefined || at < 0 || reader.at('coats', 'include', at) === 0) return undefined;
  const from = hours(reader.at('coats', 'recoat_from', at));
  // What is thrown to refusal gives the next coat its hold: no window.
  const thrown = reader.at('coats', 'to_refusal', at) === 1;
  return thrown ? { coat, from } : { coat, from, until: hours(reader.at('coats', 'recoat_until', at)) };
}

function coatRow(results: OptionResults, code: string): number {
  return (results.option.rows.get('coats') ?? []).findIndex(({ id }) => id === code);
}

function coatLabel(results: OptionResults, code: string): string | undefined {
  return results.option.rows.get('coats')?.[coatRow(results, code)]?.label;
}

/** A task whose rate reads that of the grinder. */
function grinds(results: OptionResults, row: number): boolean {
  const { plan } = results.option;
  const rate = plan.cells[cellOfColumn(results, 'tasks', 'rate', row) ?? -1];
  const grinder = cellOfLine(results, 'grind_rate');
  if (rate?.content.kind !== 'formula' || grinder === undefined) return false;
  return cellsRead(rate.content.tree, rate.place, plan).includes(grinder);
}

function visitsOf(results: OptionResults, reader: CellReader): ClockVisit[] {
  return (results.option.rows.get('trips') ?? []).flatMap((_, row): ClockVisit[] => {
    const at = (column: string): number => reader.at('trips', column, row);
    if (at('used') === 0) return [];
    return [
      {
        visit: at('trip'),
        crew: at('crew_here'),
        arrives: clockHour(at('arrives')),
        setUp: hours(at('set_up_hours')),
        loadOut: hours(at('load_out_hours')),
        worked: hours(at('worked')),
        paid: hours(at('paid')),
        crewDays: at('days_charged'),
      },
    ];
  });
}

function dayOf(results: OptionResults, reader: CellReader): ClockDay {
  const [begins, drive] = [reader.line('day_begins'), reader.line('drive_time')];
  return {
    begins: clockHour(begins),
    loading: hours(reader.line('loading_time')),
    drive: hours(drive),
    leaves: clockHour(reader.line('site_until')),
    ...(results.option.plan.lines.has('coat_start_until') && {
      coatsUntil: clockHour(reader.line('coat_start_until')),
    }),
  };
}
