import type { HandEntries, TaskEntry } from './hand-written-entries.ts';
import { type HandFloor, known, pitsInBase } from './hand-written-floor.ts';
import { dayByHand, type PaidVisit, paidVisit } from './hand-written-visits.ts';

export interface HandGrinding {
  readonly rate: number;
  readonly dayCost: number;
}

interface Task {
  readonly entry: TaskEntry;
  readonly include: number;
  readonly hours: number;
}

/** Paid hours, crew-days and visits from the task list, by the clock of each visit and how likely another trip is. */
export function hoursByHand(entries: HandEntries, floor: HandFloor, grinding: HandGrinding) {
  const tasks = [
    ...preparationTasks(entries, floor, grinding.rate),
    ...repairTasks(entries, floor),
    ...systemTasks(entries, floor),
    ...jointsAfter(entries),
  ];
  const crews = entries.releasedHours.map((_, at) => crewOf(entries, floor, at));
  const share = fixedShare(entries, floor);
  const day = dayByHand(entries, share, grinding.dayCost);
  const { worked, clock, waited, filled, used } = byVisit(tasks, crews, day.coatMargin);
  const visits = entries.releasedHours.flatMap((released, at) => {
    const crew = crews[at];
    if (!used[at] || crew === undefined) return [];
    const setUp = entries.setUpFirst * (at === 0 ? firstSetUpShare(entries, share) : share * entries.setUpShareLater);
    const [work, wait, fills] = [known(clock[at]), known(waited[at]), known(filled[at])];
    return [paidVisit(entries, day, { crew, released, setUp, worked: known(worked[at]), work, wait, fills })];
  });
  const total = (of: (visit: PaidVisit) => number): number => visits.reduce((sum, visit) => sum + of(visit), 0);
  const paid_hours = total(({ paid }) => paid);
  const roundTrips = total(({ trips }) => trips);
  const overtime = total((visit) => visit.overtime);
  const weeks = Math.max(1, roundTrips / entries.tripsAWeek);
  const ofWeek = Math.max(0, paid_hours - overtime - day.crew * entries.overtimeAfterWeek * weeks);
  return {
    person_hours: total((visit) => visit.worked),
    paid_hours,
    crew_days: total(({ crewDays }) => crewDays),
    visits: visits.length,
    roundTrips,
    equipmentDays: total(({ equipmentDays }) => equipmentDays),
    overtimeCost: (overtime + ofWeek) * entries.labourRate * (entries.overtimeFactor - 1),
  };
}

/** One person does the later visits of a small floor; on a larger one the others come for part of it. */
function crewOf(entries: HandEntries, { area }: HandFloor, visit: number): number {
  const crew = entries.usualCrew + entries.crewExtra;
  const { aloneUnder, crewFromTimes } = entries;
  const alone =
    aloneUnder === 0
      ? 0
      : Math.min(1, Math.max(0, (aloneUnder * crewFromTimes - area) / (aloneUnder * (crewFromTimes - 1))));
  return visit > 0 ? crew - Math.max(0, crew - 1) * alone : crew;
}

/** What setting up and loading take, of the usual: less on a small floor. */
function fixedShare({ smallFloorTo, usualFloorFrom, smallFloorShare }: HandEntries, { area }: HandFloor): number {
  if (area >= usualFloorFrom) return 1;
  if (area <= smallFloorTo) return smallFloorShare;
  return smallFloorShare + ((1 - smallFloorShare) * (area - smallFloorTo)) / (usualFloorFrom - smallFloorTo);
}

/** More people than usual mask and set up sooner. */
function firstSetUpShare({ usualCrew, crewExtra, leastSetUp }: HandEntries, share: number): number {
  const hands = (share * usualCrew) / Math.max(usualCrew, usualCrew + crewExtra);
  return Math.min(share, Math.max(leastSetUp, hands));
}

/** Hours worked and hours on the clock of each visit, and whether there is anything to do in it. */
function byVisit(tasks: readonly Task[], crews: readonly number[], coatMargin: number) {
  const visits = crews.length;
  const worked = new Array<number>(visits).fill(0);
  const clock = new Array<number>(visits).fill(0);
  const waited = new Array<number>(visits).fill(0);
  const filled = new Array<number>(visits).fill(0);
  const used = new Array<boolean>(visits).fill(false);
  /** What stands below a later visit's task belongs to that visit. */
  let planned = 1;
  let lead = 0;
  let side = 0;
  let visitAbove = 0;
  let leadPeople = 0;
  for (const { entry, include, hours } of tasks) {
    planned = Math.max(planned, include * entry.visit);
    const at = planned - 1;
    const crew = known(crews[at]);
    const people = peopleAt(entry, crew);
    const before = Math.max(lead, side);
    const joined = entry.beside === 'above' && entry.visit === visitAbove && crew > leadPeople;
    const alone = joined ? Math.max(0, lead - side) : 0;
    const elapsed =
      joined && entry.helped === 1 && hours > people * alone
        ? alone + (hours - people * alone) / (people + leadPeople)
        : hours / people;
    side = joined ? side + elapsed : 0;
    if (!joined) {
      lead = elapsed;
      leadPeople = people;
    }
    const added = joined ? Math.max(lead, side) - before : elapsed;
    worked[at] = (worked[at] ?? 0) + hours;
    const begins = clock[at] ?? 0;
    clock[at] = begins + added;
    waited[at] = (waited[at] ?? 0) + include * entry.wait;
    const inTime = include === 1 && entry.lays ? begins + coatMargin : 0;
    filled[at] = Math.max(filled[at] ?? 0, begins + added, inTime);
    if (include === 1) used[at] = true;
    visitAbove = entry.visit;
  }
  return { worked, clock, waited, filled, used };
}

/** Where a formula says how many, it is the crew of the visit; two at most at skims and the like. */
function peopleAt({ people, most }: TaskEntry, crew: number): number {
  return Number.isNaN(people) ? Math.min(most, crew) : people;
}

function task(entry: TaskEntry, quantity: number, rate: number, include: number, factor: number): Task {
  return { entry, include, hours: ((include * quantity) / rate) * factor };
}

function preparationTasks(entries: HandEntries, floor: HandFloor, grindRate: number): Task[] {
  const grind = known(entries.tasks.grind);
  const edge = known(entries.tasks.edge_grind);
  const walls = known(entries.tasks.stem_wall);
  const { stemWallLength } = entries;
  const height = Math.max(1, entries.stemWallHeight / entries.stemWallUsualHeight);
  return [
    task(grind, floor.area, grindRate, grind.include, entries.grindFactor),
    task(edge, floor.edge, entries.edgeRate, edge.include, edge.factor),
    task(walls, stemWallLength, entries.stemWallRate, stemWallLength > 0 ? 1 : 0, height),
  ];
}

function repairTasks(entries: HandEntries, floor: HandFloor): Task[] {
  const { crackLength, jointLength, jointTreatment, spallCount } = entries;
  const pits = entries.pittedArea - pitsInBase(entries, floor);
  const skimmed = entries.repairFinish === 'skimmed' ? 1 : 0;
  const row = (key: string, quantity: number, rate: number, include?: number, factor?: number): Task => {
    const entry = known(entries.tasks[key]);
    return task(entry, quantity, rate, include ?? entry.include, factor ?? entry.factor);
  };
  return [
    row('fill_cracks', crackLength, entries.crackRate),
    row('shave_cracks', crackLength, entries.shaveRate),
    row('fill_joints', jointLength, entries.jointRate, jointTreatment === 'fill_flush' ? 1 : 0),
    row('patch_spalls', spallCount, entries.spallRate, spallCount > 0 ? 1 : 0, entries.spallFactor),
    row('skim_pits', pits, entries.pitRate, pits > 0 ? 1 : 0),
    row('skim_cracks', crackLength, entries.skimRate, skimmed),
    row('shave_again', crackLength, entries.secondShaveRate, skimmed),
    row('prime_spots', crackLength, entries.primeRate, skimmed),
  ];
}

/** Joints filled once the floor is coated. */
function jointsAfter({ tasks, jointLength, jointRate, jointTreatment }: HandEntries): Task[] {
  const entry = known(tasks.fill_joints_after);
  return [task(entry, jointLength, jointRate, jointTreatment === 'fill_after' ? 1 : 0, entry.factor)];
}

function systemTasks(entries: HandEntries, { area }: HandFloor): Task[] {
  const { tasks, coats, washToolsTime, carsPark } = entries;
  const row = (key: string, quantity: number, include?: number): Task => {
    const entry = known(tasks[key]);
    return task(entry, quantity, entry.rate, include ?? entry.include, entry.factor);
  };
  if (entries.system === 'solid') {
    return [
      row('vacuum', area),
      row('lay_first_colour', area),
      row('wash_first_colour', washToolsTime),
      row('lay_second_colour', area),
      row('wash_second_colour', washToolsTime),
      row('lay_wear_coat', area, carsPark),
      row('wash_wear_coat', washToolsTime, carsPark),
    ];
  }
  const secondClear = known(coats.second_clear).include;
  return [
    row('vacuum', area),
    row('lay_base', area),
    row('broadcast_flake', area),
    row('wash_base', washToolsTime),
    row('scrape', area),
    row('lay_clear', area),
    row('wash_clear', washToolsTime),
    row('lay_second_clear', area, secondClear),
    row('wash_second_clear', washToolsTime, secondClear),
  ];
}
