import type { CrewDay } from './crew-day.ts';
import type { OneGo } from './one-go.ts';
import { besideTakes, type Cure, type PlannedTask } from './planned-task.ts';
import { numberIn, type PrintedQuote } from './printed-quote.ts';
import { wholeUp } from './products.ts';

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

/** Follows a crew from hour to hour of the clock, through days and nights. Hours are from midnight of the first day. */
export class WorkClock {
  readonly tasks: TimedTask[] = [];
  private readonly quote: PrintedQuote;
  private readonly day: CrewDay;
  private readonly work: OneGo;
  private readonly cures: ReadonlyMap<string, Cure>;
  private readonly crewOn: (visit: number) => number;
  private readonly laid = new Map<string, number>();
  private readonly made: Visit[] = [];
  /** When everybody is free, what is waited for after the task before, and until when. */
  private free: number;
  private waited = 0;
  private restsUntil = 0;
  private chain = { leadEnds: 0, leadPeople: 0, sideEnds: 0 };

  constructor(
    quote: PrintedQuote,
    day: CrewDay,
    work: OneGo,
    cures: ReadonlyMap<string, Cure>,
    crewOn: (visit: number) => number,
  ) {
    this.quote = quote;
    this.day = day;
    this.work = work;
    this.cures = cures;
    this.crewOn = crewOn;
    this.free = day.arrives + day.firstSetUp;
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

  private get visit(): Visit {
    const visit = this.made.at(-1);
    if (visit === undefined) throw new Error('Nobody has come yet');
    return visit;
  }

  private hasSomebodyFree({ visit }: PlannedTask): boolean {
    return visit === this.visit.planned && this.waited === 0 && this.visit.crew > this.chain.leadPeople;
  }

  private besideOthers(task: PlannedTask): TimedTask {
    const { sideEnds: starts, leadEnds, leadPeople } = this.chain;
    const nights = (midnight(leadEnds) - midnight(starts)) / 24;
    const freeAfter = Math.max(0, leadEnds - starts - nights * (24 - this.day.usual));
    const takes = besideTakes(task, this.visit.crew, { people: leadPeople, freeAfter });
    const ends = this.worksFrom(task, starts, takes);
    this.chain.sideEnds = ends;
    return this.done({ ...task, starts, ends }, Math.max(this.free, ends), this.free);
  }

  /** What is done in one go from a task on: up to the next coat that is waited for. */
  private runFrom(tasks: readonly PlannedTask[], first: number): Run {
    const known = new Set(tasks.slice(0, first + 1).flatMap(({ over, included }) => (included && over ? [over] : [])));
    const run = { whole: 0, toCoat: 0, coat: false };
    for (const { task, hours, people, beside, included, over, lays, ifMissed, visit } of tasks.slice(first)) {
      if (!included || task === 'load_early' || task === 'fill_joints_after') continue;
      if (over !== undefined && !known.has(over)) break;
      run.coat ||= lays !== undefined;
      const alone = beside && this.crewOn(visit) > 1;
      const takes = alone || ifMissed === true ? 0 : hours / people;
      run.whole += takes;
      if (!run.coat) run.toCoat += takes;
    }
    return run;
  }

  private next(task: PlannedTask, run: Run): TimedTask {
    const cure = this.cures.get(task.over ?? '');
    const down = this.laid.get(task.over ?? '');
    const ready = Math.max(this.free, this.restsUntil, cure === undefined || down === undefined ? 0 : down + cure.from);
    const length = task.hours / task.people;
    let starts = Math.max(this.free, ready);
    let counted = this.free;
    if (task.visit > this.visit.planned || (ready > this.free && this.isTooLateToWait(task, ready, run))) {
      starts = this.opensAt(ready);
      this.open(Math.max(task.visit, this.visit.planned), starts);
      counted = starts;
    } else if (
      toCoat(task) &&
      this.isTooLate(this.free, task.lays === undefined ? Math.min(length, this.day.usual) : this.andLoaded(run))
    ) {
      starts = midnight(this.free) + 24 + this.day.arrives;
      counted = starts;
    }
    const missed = cure !== undefined && down !== undefined && starts > down + cure.until;
    const hours = task.ifMissed && !missed ? 0 : task.hours;
    const ends = this.worksFrom(task, starts, hours / task.people);
    this.chain = { leadEnds: ends, leadPeople: task.people, sideEnds: starts };
    return this.done({ ...task, hours, starts, ends }, ends, counted);
  }

  /** Nobody waits unless the coat can be begun in time, laid, washed up after and loaded out that day. */
  private isTooLateToWait(task: PlannedTask, ready: number, run: Run): boolean {
    const today = midnight(this.free);
    const begins = ready + (task.over !== undefined && run.coat ? run.toCoat : 0);
    return (
      begins > today + this.day.coatsUntil ||
      (toCoat(task) && ready + this.andLoaded(run) > today + this.day.staysUntil + grace)
    );
  }

  /** A run, of a day at most, and what of loading out is left after it. */
  private andLoaded({ whole }: Run): number {
    const left = this.day.loadOut - this.visit.loaded;
    return Math.min(whole, this.day.usual) + Math.max(0, left);
  }

  private isTooLate(time: number, length: number): boolean {
    const today = midnight(this.free);
    return time > today + this.day.coatsUntil || time + length > today + this.day.staysUntil + grace;
  }

  /** The first morning after, unless the coat is not ready by the middle of that day. */
  private opensAt(ready: number): number {
    let day = midnight(this.free) + 24;
    while (ready > day + (this.day.arrives + this.day.leaves) / 2) day += 24;
    return Math.max(ready, day + this.day.arrives + this.day.laterSetUp);
  }

  private open(planned: number, starts: number): void {
    const setUp = this.made.length === 0 ? this.day.firstSetUp : this.day.laterSetUp;
    const crew = this.crewOn(planned);
    this.made.push({ planned, crew, setUp, arrives: starts - setUp, hours: 0, clock: 0, lastDone: starts, loaded: 0 });
  }

  private done(task: TimedTask, free: number, counted: number): TimedTask {
    const nights = (midnight(free) - midnight(counted)) / 24;
    this.visit.clock += free - counted - nights * (24 - this.day.usual);
    this.visit.hours += task.hours;
    this.visit.lastDone = free;
    this.free = free;
    this.waited = task.wait;
    this.restsUntil = Math.max(this.restsUntil, task.ends + task.wait);
    if (task.lays !== undefined) this.laid.set(task.lays, task.ends);
    return task;
  }

  /**
   * Works on through days and nights. A day ends at the usual time; but where what is left of the run can be done by the hour
   * to which staying is worth it, the crew stays for it.
   */
  private worksFrom(task: PlannedTask, starts: number, hours: number): number {
    const over = grace + 1e-9;
    const leftOfRun = Math.max(hours, this.work.of(task).leftOfRun + this.day.loadOut);
    let [now, worked] = [starts, 0];
    let today = midnight(starts);
    while (
      now + hours - worked > today + this.day.leaves + over &&
      now + leftOfRun - worked > today + this.day.staysUntil + over
    ) {
      worked += today + this.day.leaves - now;
      today += 24;
      now = today + this.day.arrives;
    }
    return now + hours - worked;
  }

  private paidFor(at: number, visit: Visit, released: number): PlannedVisit {
    const { crew } = visit;
    const fixed = visit.setUp + this.day.loadOut;
    const [worked, onSite] = [visit.hours + crew * fixed, visit.clock + fixed];
    const late = visit.arrives - midnight(visit.arrives) - this.day.arrives;
    const stays = this.day.staysUntil - this.day.leaves;
    const byHours = wholeUp((late + onSite - grace - stays) / this.day.usual);
    const filled = Math.max((midnight(visit.lastDone) - midnight(visit.arrives)) / 24 + 1, byHours);
    const nextComes = this.made[at + 1]?.arrives ?? Number.POSITIVE_INFINITY;
    const days = Math.min(filled, (midnight(nextComes) - midnight(visit.arrives)) / 24);
    const away = days * this.day.away;
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
