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
  readonly siteUntil: Given;
  readonly onSite: Given;
  readonly night: Given;
  readonly grace: Given;
  readonly coatStartUntil: Given;
  readonly visitBeginUntil: Given;
  readonly firstSetUp: Given;
  readonly laterSetUp: Given;
  readonly loadOut: Given;
  /** Free hands work beside the first. */
  readonly allBeside: Given;
}

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
}
