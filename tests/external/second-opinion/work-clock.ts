import { fixedShare, peopleOn } from './extra-work.ts';
import { measured } from './material-needs.ts';
import { numberIn, type PrintedQuote } from './printed-quote.ts';
import { wholeUp } from './products.ts';

/** A task as the trade plans it: labour hours, people at it, and whether it runs beside the one above. */
export interface PlannedTask {
  readonly task: string;
  readonly hours: number;
  readonly people: number;
  readonly visit: number;
  readonly beside: boolean;
  /** Once the one it runs beside is done, those who were at it join in. */
  readonly helped?: boolean;
  readonly included: boolean;
  readonly lays?: string;
  readonly over?: string;
  /** It takes its hours only where the coat's window is missed. */
  readonly ifMissed?: boolean;
}

/** When a coat takes the next one, in hours after it; without an end where it is broadcast to refusal. */
export interface Cure {
  readonly from: number;
  readonly until: number;
}

export interface TimedTask extends PlannedTask {
  readonly starts: number;
  readonly ends: number;
}

export interface PlannedVisit {
  readonly used: boolean;
  readonly worked: number;
  readonly onSite: number;
  readonly days: number;
  readonly paid: number;
  readonly daysCharged: number;
}

interface Visit {
  readonly planned: number;
  readonly crew: number;
  readonly setUp: number;
  readonly arrives: number;
  hours: number;
  clock: number;
  lastDone: number;
  /** Of loading out, what is done before its end. */
  readonly loaded: number;
}

interface Run {
  readonly whole: number;
  readonly toCoat: number;
  readonly coat: boolean;
}

/** Up to a quarter of an hour over costs neither a trip nor half a day. */
const grace = 0.25;

/** Follows a crew from hour to hour of the clock, and counts what it is paid for. Hours are from midnight of the first day. */
export class WorkClock {
  readonly tasks: TimedTask[] = [];
  private readonly quote: PrintedQuote;
  private readonly cures: ReadonlyMap<string, Cure>;
  private readonly laid = new Map<string, number>();
  private readonly made: Visit[] = [];
  private readonly share: number;
  private readonly from: number;
  private readonly until: number;
  private readonly latest: number;
  /** When everybody is free, and what is waited for after the task before. */
  private free: number;
  private waited = 0;
  private chain = { leadEnds: 0, leadPeople: 0, sideEnds: 0 };

  constructor(quote: PrintedQuote, cures: ReadonlyMap<string, Cure>) {
    this.quote = quote;
    this.cures = cures;
    this.share = fixedShare(measured(quote).area);
    const [begins, drive, stretch] = ['day_begins', 'drive_time', 'day_stretch'].map((name) => quote.entry(name));
    this.from = Number(begins) + Number(drive) + this.share * quote.entry('shop_time');
    this.until = Number(begins) + quote.entry('day_length') + Number(stretch) - Number(drive);
    this.latest = Math.min(quote.entry('latest_coat_start') + Number(stretch), this.until);
    this.free = this.from + this.setUp(true);
    this.open(1, this.free);
  }

  follow(tasks: readonly PlannedTask[]): void {
    for (const [at, task] of tasks.entries()) {
      if (task.included)
        this.tasks.push(
          task.beside && this.hasSomebodyFree(task)
            ? this.besideOthers(task)
            : this.next(task, this.runFrom(tasks, at)),
        );
      else this.tasks.push({ ...task, hours: 0, starts: Number.NaN, ends: Number.NaN });
    }
  }

  visits(): PlannedVisit[] {
    const none = { used: false, worked: 0, onSite: 0, days: 0, paid: 0, daysCharged: 0 };
    return Array.from({ length: 8 }, (_, at) => {
      const visit = this.made[at];
      return visit === undefined
        ? none
        : this.paidFor(at, visit, numberIn(this.quote.rows('trips')[at] ?? {}, 'released_hours'));
    });
  }

  private get dayOnSite(): number {
    return this.until - this.from;
  }

  private get visit(): Visit {
    const visit = this.made.at(-1);
    if (visit === undefined) throw new Error('Nobody has come yet');
    return visit;
  }

  private setUp(first: boolean): number {
    const usual = this.quote.entry('set_up_first');
    if (!first) return this.share * usual * this.quote.entry('set_up_share_later');
    // More people than usual mask and set up sooner, to two thirds of the usual.
    const [crew, more] = [this.quote.entry('usual_crew'), this.quote.entry('crew_extra')];
    const hands = this.share * Math.min(1, crew / (crew + more));
    return usual * Math.min(this.share, Math.max(0.67, hands));
  }

  private hasSomebodyFree({ visit }: PlannedTask): boolean {
    return visit === this.visit.planned && this.waited === 0 && this.visit.crew > 1;
  }

  private besideOthers(task: PlannedTask): TimedTask {
    const starts = this.chain.sideEnds;
    const ends = this.worksFrom(starts, this.besideFor(task, starts));
    this.chain.sideEnds = ends;
    return this.done({ ...task, starts, ends }, Math.max(this.free, ends), this.free);
  }

  /** Alone until the first is done, then with those who were at that. */
  private besideFor({ hours, people, helped }: PlannedTask, starts: number): number {
    const { leadEnds, leadPeople } = this.chain;
    const nights = (midnight(leadEnds) - midnight(starts)) / 24;
    const alone = Math.max(0, leadEnds - starts - nights * (24 - this.dayOnSite));
    if (helped !== true || hours <= people * alone) return hours / people;
    return alone + (hours - people * alone) / (people + leadPeople);
  }

  /** What is done in one go from a task on: up to the next coat that is waited for. */
  private runFrom(tasks: readonly PlannedTask[], first: number): Run {
    const known = new Set(tasks.slice(0, first + 1).flatMap(({ over, included }) => (included && over ? [over] : [])));
    const run = { whole: 0, toCoat: 0, coat: false };
    for (const { task, hours, people, beside, included, over, lays, ifMissed, visit } of tasks.slice(first)) {
      if (!included || task === 'load_early' || task === 'fill_joints_after') continue;
      if (over !== undefined && !known.has(over)) break;
      run.coat ||= lays !== undefined;
      const alone = beside && peopleOn(visit, measured(this.quote).area, this.quote) > 1;
      const takes = alone || ifMissed === true ? 0 : hours / people;
      run.whole += takes;
      if (!run.coat) run.toCoat += takes;
    }
    return run;
  }

  private next(task: PlannedTask, run: Run): TimedTask {
    const cure = this.cures.get(task.over ?? '');
    const down = this.laid.get(task.over ?? '');
    const ready = Math.max(this.free + this.waited, cure === undefined || down === undefined ? 0 : down + cure.from);
    const length = task.hours / task.people;
    let starts = Math.max(this.free, ready);
    let counted = this.free;
    if (task.visit > this.visit.planned || (ready > this.free && this.isTooLateToWait(task, ready, run))) {
      starts = this.opensAt(ready);
      this.open(Math.max(task.visit, this.visit.planned), starts);
      counted = starts;
    } else if (
      toCoat(task) &&
      this.isTooLate(this.free, task.lays === undefined ? Math.min(length, this.dayOnSite) : this.andLoaded(run))
    ) {
      starts = midnight(this.free) + 24 + this.from;
      counted = starts;
    }
    const missed = cure !== undefined && down !== undefined && starts > down + cure.until;
    const hours = task.ifMissed && !missed ? 0 : task.hours;
    const ends = this.worksFrom(starts, hours / task.people);
    this.chain = { leadEnds: ends, leadPeople: task.people, sideEnds: starts };
    return this.done({ ...task, hours, starts, ends }, ends, counted);
  }

  /** Nobody waits unless the coat can be begun in time, laid, washed up after and loaded out that day. */
  private isTooLateToWait(task: PlannedTask, ready: number, run: Run): boolean {
    const today = midnight(this.free);
    const begins = ready + (task.over !== undefined && run.coat ? run.toCoat : 0);
    return begins > today + this.latest || (toCoat(task) && ready + this.andLoaded(run) > today + this.until + grace);
  }

  /** A run, of a day at most, and what of loading out is left after it. */
  private andLoaded({ whole }: Run): number {
    const left = this.share * this.quote.entry('load_out') - this.visit.loaded;
    return Math.min(whole, this.dayOnSite) + Math.max(0, left);
  }

  private isTooLate(time: number, length: number): boolean {
    const today = midnight(this.free);
    return time > today + this.latest || time + length > today + this.until + grace;
  }

  /** The first morning after, unless the coat is not ready by the middle of that day. */
  private opensAt(ready: number): number {
    let day = midnight(this.free) + 24;
    while (ready > day + (this.from + this.until) / 2) day += 24;
    return Math.max(ready, day + this.from + this.setUp(false));
  }

  private open(planned: number, starts: number): void {
    const setUp = this.setUp(this.made.length === 0);
    const crew = peopleOn(planned, measured(this.quote).area, this.quote);
    this.made.push({ planned, crew, setUp, arrives: starts - setUp, hours: 0, clock: 0, lastDone: starts, loaded: 0 });
  }

  private done(task: TimedTask, free: number, counted: number): TimedTask {
    const nights = (midnight(free) - midnight(counted)) / 24;
    this.visit.clock += free - counted - nights * (24 - this.dayOnSite);
    this.visit.hours += task.hours;
    this.visit.lastDone = free;
    this.free = free;
    this.waited = numberIn(this.quote.row('tasks', 'task', task.task), 'wait');
    if (task.lays !== undefined) this.laid.set(task.lays, task.ends);
    return task;
  }

  /** Works on through days and nights. */
  private worksFrom(starts: number, hours: number): number {
    let [now, left] = [starts, hours];
    let today = midnight(starts);
    while (now + left > today + this.until + grace + 1e-9) {
      left -= today + this.until - now;
      today += 24;
      now = today + this.from;
    }
    return now + left;
  }

  private paidFor(at: number, visit: Visit, released: number): PlannedVisit {
    const { crew } = visit;
    const fixed = visit.setUp + this.share * this.quote.entry('load_out');
    const [worked, onSite] = [visit.hours + crew * fixed, visit.clock + fixed];
    const late = visit.arrives - midnight(visit.arrives) - this.from;
    const byHours = wholeUp((late + onSite - grace) / this.dayOnSite);
    const filled = Math.max((midnight(visit.lastDone) - midnight(visit.arrives)) / 24 + 1, byHours);
    const nextComes = this.made[at + 1]?.arrives ?? Number.POSITIVE_INFINITY;
    const days = Math.min(filled, (midnight(nextComes) - midnight(visit.arrives)) / 24);
    const away = days * (this.share * this.quote.entry('shop_time') + 2 * this.quote.entry('drive_time'));
    const [day, half] = [this.quote.entry('day_length'), this.quote.entry('half_day')];
    return {
      used: true,
      worked,
      onSite,
      days,
      paid: Math.max(worked, crew * (onSite - released)) + crew * away,
      daysCharged: Math.max(1, wholeUp((onSite + away - grace) / day / half)) * half,
    };
  }
}

function toCoat({ lays, over }: PlannedTask): boolean {
  return lays !== undefined || over !== undefined;
}

function midnight(time: number): number {
  return Math.floor(time / 24) * 24;
}
