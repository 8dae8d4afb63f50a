import type { CrewDay } from './crew-day.ts';
import { along } from './grinding.ts';
import type { OneGo, Stretch } from './one-go.ts';
import type { Cure } from './planned-task.ts';
import { numberIn, type PrintedQuote } from './printed-quote.ts';
import { wholeUp } from './products.ts';

/** A planned visit as the price carries it: it moves with the work, and not with the ends of days. */
export interface PaidVisit {
  readonly worked: number;
  readonly onSite: number;
  readonly trips: number;
  readonly paid: number;
  readonly overtime: number;
  readonly equipmentDays: number;
  readonly crewDays: number;
}

/** Up to a quarter of an hour over adds no half day. */
const grace = 0.25;

export class PaidVisits {
  private readonly quote: PrintedQuote;
  private readonly work: OneGo;
  private readonly day: CrewDay;
  private readonly cures: ReadonlyMap<string, Cure>;
  private readonly crewOn: (visit: number) => number;

  constructor(
    quote: PrintedQuote,
    work: OneGo,
    day: CrewDay,
    cures: ReadonlyMap<string, Cure>,
    crewOn: (visit: number) => number,
  ) {
    this.quote = quote;
    this.work = work;
    this.day = day;
    this.cures = cures;
    this.crewOn = crewOn;
  }

  /** By visit as planned; undefined where nothing is planned. */
  visits(): (PaidVisit | undefined)[] {
    return this.quote.rows('trips').map((row, at) => {
      const stretches = this.work.stretches.filter(({ visit }) => visit === at + 1);
      return stretches.length > 0 ? this.visit(at + 1, stretches, numberIn(row, 'released_hours')) : undefined;
    });
  }

  private visit(visit: number, stretches: readonly Stretch[], released: number): PaidVisit {
    const { day, quote } = this;
    const crew = this.crewOn(visit);
    const fixed = this.setUp(visit) + day.loadOut;
    const abrading = total(stretches.map((stretch) => this.likelyAbrading(stretch)));
    const abradingClock = total(stretches.map((stretch) => this.likelyAbrading(stretch) / stretch.task.people));
    const wait = total(stretches.map(({ waits }) => waits));
    const work = total(stretches.map(({ adds }) => adds));
    const onSite = this.withWaits(fixed + work + abradingClock, wait, day.longest);
    const trips = this.tripsFor(
      this.withWaits(fixed + this.fills(stretches) + abradingClock, wait, day.longest + day.unsure),
    );
    const shopToShop = onSite + trips * day.away;
    const labour = total(stretches.map(({ task }) => (task.ifMissed === true ? 0 : task.hours)));
    const worked = labour + abrading + crew * fixed;
    const [length, half] = [quote.entry('day_length'), quote.entry('half_day')];
    return {
      worked,
      onSite,
      trips,
      paid: Math.max(worked, crew * (onSite - released)) + crew * trips * day.away,
      overtime: crew * Math.max(0, shopToShop - trips * quote.entry('overtime_after_day')),
      equipmentDays: Math.max(half, shopToShop / length),
      crewDays: Math.max(1, wholeUp((shopToShop - grace) / length / half)) * half,
    };
  }

  private setUp(visit: number): number {
    return visit === 1 ? this.day.firstSetUp : this.day.laterSetUp;
  }

  /** Waits count while a day holds them; a longer visit has no less than that, or of its waits what coming again would take. */
  private withWaits(work: number, wait: number, mostOfDay: number): number {
    const { laterSetUp, loadOut } = this.day;
    const ofOneDay = Math.min(work + wait, mostOfDay);
    return Math.max(ofOneDay, work + Math.min(wait, laterSetUp + loadOut));
  }

  /** A day is full sooner where a coat must start in time: then from its start it holds what follows the latest start. */
  private fills(stretches: readonly Stretch[]): number {
    const { staysUntil, coatsUntil, loadOut } = this.day;
    const afterLatest = Math.max(0, staysUntil - coatsUntil - loadOut);
    return Math.max(
      ...stretches.map(
        ({ task, worked, adds }) => worked + (task.lays === undefined ? adds : Math.max(adds, afterLatest)),
      ),
    );
  }

  /** Whole trips, and the next from 0 to 1 as hours that are off either way run over the last day. */
  private tripsFor(hours: number): number {
    const { longest, usual, unsure } = this.day;
    let [trips, end] = [1, longest];
    while (hours >= end - unsure + usual) {
      trips += 1;
      end += usual;
    }
    return trips + along(hours, end - unsure, end + unsure);
  }

  /** Labour hours of abrading a coat, as far as its window is likely missed. */
  private likelyAbrading(stretch: Stretch): number {
    const { over, ifMissed, hours } = stretch.task;
    const until = this.cures.get(over ?? '')?.until ?? Number.POSITIVE_INFINITY;
    const below = this.work.laying(over);
    if (ifMissed !== true || below === undefined || until === Number.POSITIVE_INFINITY) return 0;
    const unsureOfWindow = this.quote.entry('hours_known_within') * until;
    return hours * along(this.waitedOn(stretch, below), until - unsureOfWindow, until);
  }

  /** From the coat to the abrading: over one night where that is another visit, over one more where the day is likely full. */
  private waitedOn(stretch: Stretch, below: Stretch): number {
    const { usual, longest, unsure, loadOut } = this.day;
    const intoDay = this.setUp(stretch.visit) + stretch.begins;
    const night = 24 - usual;
    const since =
      stretch.visit === below.visit ? stretch.begins - below.begins - below.adds : loadOut + night + intoDay;
    const runEnds = intoDay + stretch.leftOfRun + loadOut;
    return since + night * along(runEnds, longest - unsure, longest + unsure);
  }
}

function total(numbers: readonly number[]): number {
  return numbers.reduce((sum, each) => sum + each, 0);
}
