import { besideTakes, type Cure, type PlannedTask } from './planned-task.ts';

/** A task on the clock of its planned visit, if all of that is done in one go, without an end of the day. */
export interface Stretch {
  readonly task: PlannedTask;
  readonly visit: number;
  /** What it adds to the clock, and what is waited before it. */
  readonly adds: number;
  readonly waits: number;
  /** Into its visit when it begins: of work alone, and with waits. */
  readonly worked: number;
  readonly begins: number;
  /** From its start to the end of its run, which ends where the next coat is waited for. */
  leftOfRun: number;
}

/** The work that is planned, by visit. What stands below a later visit's task belongs to that visit. */
export class OneGo {
  readonly stretches: Stretch[] = [];
  private readonly cures: ReadonlyMap<string, Cure>;
  private readonly crewOn: (visit: number) => number;
  private visit = 1;
  private worked = 0;
  private now = 0;
  private waited = 0;
  /** How long the first of a chain takes, the people at it, and what is done beside it. */
  private chain = { lead: 0, people: 0, side: 0 };

  constructor(tasks: readonly PlannedTask[], cures: ReadonlyMap<string, Cure>, crewOn: (visit: number) => number) {
    this.cures = cures;
    this.crewOn = crewOn;
    for (const task of tasks.filter(({ included }) => included)) this.add(task);
    this.tellRuns();
  }

  of(task: PlannedTask): Stretch {
    const found = this.stretches.find((stretch) => stretch.task.task === task.task);
    if (found === undefined) throw new Error(`${task.task} is in no visit`);
    return found;
  }

  laying(coat: string | undefined): Stretch | undefined {
    return this.stretches.find(({ task }) => coat !== undefined && task.lays === coat);
  }

  private add(task: PlannedTask): void {
    const beside =
      task.beside && this.waited === 0 && task.visit === this.visit && this.crewOn(task.visit) > this.chain.people;
    if (task.visit > this.visit) this.comesAgain(task.visit);
    const waits = beside ? 0 : this.waitFor(task);
    const adds = beside ? this.besides(task) : this.leads(task);
    const { visit, worked, now } = this;
    this.stretches.push({ task, visit, adds, waits, worked, begins: now + waits, leftOfRun: 0 });
    this.worked += adds;
    this.now += waits + adds;
    this.waited = task.wait;
  }

  private comesAgain(visit: number): void {
    this.visit = visit;
    this.worked = 0;
    this.now = 0;
    this.waited = 0;
  }

  /** Only a coat of the same visit is waited for: a later visit is planned because the other cures in between. */
  private waitFor({ over }: PlannedTask): number {
    const below = this.laying(over);
    const cure = this.cures.get(over ?? '');
    if (below === undefined || cure === undefined || below.visit !== this.visit) return this.waited;
    return Math.max(this.waited, below.begins + below.adds + cure.from - this.now);
  }

  private leads({ hours, people, ifMissed }: PlannedTask): number {
    const lead = ifMissed === true ? 0 : hours / people;
    this.chain = { lead, people, side: 0 };
    return lead;
  }

  private besides(task: PlannedTask): number {
    const { lead, people, side } = this.chain;
    const done = side + besideTakes(task, this.crewOn(task.visit), { people, freeAfter: Math.max(0, lead - side) });
    this.chain = { lead, people, side: done };
    return Math.max(0, done - Math.max(lead, side));
  }

  /** From the last task up: a run begins where a coat is first gone over. */
  private tellRuns(): void {
    let left = 0;
    for (const [at, stretch] of [...this.stretches.entries()].reverse()) {
      left += stretch.adds;
      stretch.leftOfRun = left;
      const { over } = stretch.task;
      const first = this.stretches.findIndex(({ task }) => task.over === over) === at;
      if (over !== undefined && first) left = 0;
    }
  }
}
