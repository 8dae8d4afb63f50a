/** A task as the trade plans it: labour hours, people at it, and whether it runs beside the one above. */
export interface ListedTask {
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

export interface PlannedTask extends ListedTask {
  /** Where it runs beside another, all who are free are at it. */
  readonly byAllFree: boolean;
  /** Hours on site after it in which nothing is done. */
  readonly wait: number;
}

/** When a coat takes the next one, in hours after it; without an end where it is broadcast to refusal. */
export interface Cure {
  readonly from: number;
  readonly until: number;
}

/** What one task runs beside, and how many are at that. */
export interface Lead {
  readonly people: number;
  /** Hours until those who are at it are free, from the start of the one beside. */
  readonly freeAfter: number;
}

function handsBeside({ people, byAllFree, helped }: PlannedTask, crew: number, lead: Lead): number {
  return byAllFree || helped === true ? Math.max(people, crew - lead.people) : people;
}

/** Alone until the first is done, then with those who were at that. */
export function besideTakes(task: PlannedTask, crew: number, lead: Lead): number {
  const people = handsBeside(task, crew, lead);
  if (task.helped !== true || task.hours <= people * lead.freeAfter) return task.hours / people;
  return lead.freeAfter + (task.hours - people * lead.freeAfter) / (people + lead.people);
}
