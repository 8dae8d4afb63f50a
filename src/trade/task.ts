import type { Given } from './given.ts';

/** A task in the order of the work. Hours, and people; 1 and 0 are yes and no. */
export interface Task {
  readonly name: string;
  readonly include: Given;
  /** Its work by one person at its rate, in usual circumstances. */
  readonly byRate: Given;
  /** Times the usual. */
  readonly factor: Given;
  readonly people: Given;
  /** The crew of the visit it is planned for. */
  readonly crewHere: Given;
  /** The visit it is planned for. */
  readonly visit: Given;
  /** Nothing after it begins sooner than this long after it. */
  readonly wait: Given;
  /** It may run beside the task above. */
  readonly beside: boolean;
  /** The task it comes after, `above` for none in particular. */
  readonly after: string;
  /** The coat it lays, `none` for none. */
  readonly lays: string;
  /** The coat it is done to, `none` for none. */
  readonly over: string;
  /** It abrades that coat, if the window for the next is over; by `factor` even if not. */
  readonly abrades: Given;
  /** Of a task beside another: those at that one help once they are free. */
  readonly helped: Given;
  readonly loadsOut: Given;
  readonly anotherDay: Given;
}

/** A coat, and when the next may follow: hours from its end. */
export interface Coat {
  readonly name: string;
  readonly recoatFrom: Given;
  readonly recoatUntil: Given;
  /** What is thrown into it to refusal holds the next coat: no window. */
  readonly toRefusal: Given;
}

/** The crew's day. Times of day are hours after its midnight. */
export interface Day {
  readonly clockDay: Given;
  readonly siteFrom: Given;
  /** The usual end on site. */
  readonly siteUntil: Given;
  /** The crew stays until then at the latest, for what is left of the work: later, another trip is cheaper. */
  readonly staysUntil: Given;
  readonly onSite: Given;
  readonly night: Given;
  readonly grace: Given;
  readonly coatStartUntil: Given;
  /** From the latest start of a coat to the latest end on site, loading out aside. */
  readonly coatMargin: Given;
  readonly visitBeginUntil: Given;
  readonly firstSetUp: Given;
  readonly laterSetUp: Given;
  readonly loadOut: Given;
  /** Within this much of its longest, over or under it, a day may be full or not. */
  readonly nearlyFull: Given;
  readonly longestOnSite: Given;
  /** Hours are known to within this share. */
  readonly knownWithin: Given;
  /** Free hands work beside the first. */
  readonly allBeside: Given;
}

/** Why a task begins when it does. */
export type Because =
  /** It is not done. */
  | 'left_out'
  /** The crew has set up. */
  | 'set_up'
  /** It runs beside the one above. */
  | 'beside'
  /** Those above are done. */
  | 'follows'
  /** What is above it must rest. */
  | 'rests'
  /** The coat takes it. */
  | 'coat_ready'
  /** A later visit, as planned. */
  | 'planned'
  /** The day would not hold what comes after the wait. */
  | 'wait_too_long'
  /** No coat starts that late. */
  | 'too_late'
  /** The day would not hold it and what belongs to it. */
  | 'day_too_short';

/** When a task is done, and by whom. Times are hours after midnight of the first day. */
export interface TaskTimes {
  readonly hours: Given;
  readonly elapsed: Given;
  readonly peopleAtIt: Given;
  readonly joined: Given;
  readonly leadPeople: Given;
  readonly ready: Given;
  readonly visitUsed: Given;
  readonly dayNo: Given;
  readonly start: Given;
  readonly finish: Given;
  readonly clockAdded: Given;
  readonly windowPassed: Given;
  /** The visit it belongs to as planned. */
  readonly planned: Given;
  /** Labour as a price carries it: abrading as far as a missed window is likely. */
  readonly likelyHours: Given;
  /** It adds to the clock of that visit, waits, nights and ends of days aside. */
  readonly onClock: Given;
  /** Waited before it, if all of that visit is one go. */
  readonly paidWait: Given;
  /** It adds to what the visit fills of a day: at least its time on the clock, more where a coat must start in time. */
  readonly fills: Given;
  readonly because: Because | object;
}
