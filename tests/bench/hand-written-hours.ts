import type { HandEntries, TaskEntry } from './hand-written-entries.ts';
import { type HandFloor, known, pitsInBase, roundUp } from './hand-written-floor.ts';

interface Task {
  readonly entry: TaskEntry;
  readonly include: number;
  readonly hours: number;
}

/** Paid hours, crew-days and visits from the task list, by the clock. */
export function hoursByHand(entries: HandEntries, floor: HandFloor, grindRate: number) {
  const tasks = [
    ...preparationTasks(entries, floor, grindRate),
    ...repairTasks(entries, floor),
    ...systemTasks(entries, floor),
  ];
  const crews = entries.releasedHours.map((_, at) => crewOf(entries, floor, at));
  const { worked, clock, used } = byVisit(tasks, crews);
  const { dayLength, halfDay, grace } = entries;
  const share = fixedShare(entries, floor);
  const awayADay = entries.shopTime * share + 2 * entries.driveTime;
  const onSiteDay = dayLength + entries.dayStretch - awayADay;
  const total = { person_hours: 0, paid_hours: 0, crew_days: 0, visits: 0, roundTrips: 0 };
  for (const [at, released] of entries.releasedHours.entries()) {
    const crew = crews[at];
    if (!used[at] || crew === undefined) continue;
    const setUp = entries.setUpFirst * (at === 0 ? firstSetUpShare(entries, share) : share * entries.setUpShareLater);
    const fixed = setUp + share * entries.loadOut;
    const work = (worked[at] ?? 0) + crew * fixed;
    const site = (clock[at] ?? 0) + fixed;
    const days = Math.max(1, roundUp(site / (onSiteDay + grace)));
    const away = days * awayADay;
    total.person_hours += work;
    total.paid_hours += Math.max(work, crew * (site - released)) + crew * away;
    total.crew_days += Math.max(1, roundUp((site + away - grace) / dayLength / halfDay)) * halfDay;
    total.visits += 1;
    total.roundTrips += days;
  }
  return total;
}

/** One person does the later visits of a small floor. */
function crewOf(entries: HandEntries, { area }: HandFloor, visit: number): number {
  const crew = entries.usualCrew + entries.crewExtra;
  return visit > 0 && area < entries.aloneUnder ? Math.min(1, crew) : crew;
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
function byVisit(tasks: readonly Task[], crews: readonly number[]) {
  const visits = crews.length;
  const worked = new Array<number>(visits).fill(0);
  const clock = new Array<number>(visits).fill(0);
  const used = new Array<boolean>(visits).fill(false);
  let lead = 0;
  let side = 0;
  let visitAbove = 0;
  let leadPeople = 0;
  for (const { entry, include, hours } of tasks) {
    const at = entry.visit - 1;
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
    clock[at] = (clock[at] ?? 0) + added + include * entry.wait;
    if (include === 1) used[at] = true;
    visitAbove = entry.visit;
  }
  return { worked, clock, used };
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
    row('fill_joints_after', jointLength, entries.jointRate, jointTreatment === 'fill_after' ? 1 : 0),
  ];
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
