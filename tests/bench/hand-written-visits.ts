import type { HandEntries } from './hand-written-entries.ts';
import { roundUp } from './hand-written-floor.ts';

export type HandDay = ReturnType<typeof dayByHand>;
export type PaidVisit = ReturnType<typeof paidVisit>;

/** The usual and the longest day, and when staying is worth more than another trip. */
export function dayByHand(entries: HandEntries, share: number, machineDay: number) {
  const crew = entries.usualCrew + entries.crewExtra;
  const loading = entries.shopTime * share;
  const away = loading + 2 * entries.driveTime;
  const trip = 2 * entries.milesOneWay * entries.truckRate + entries.tollsAndParking;
  const another =
    crew * away * (entries.labourRate + entries.overheadRate) +
    trip +
    entries.halfDay * (entries.equipmentDay + machineDay);
  const premium = crew * entries.labourRate * (entries.overtimeFactor - 1);
  const longest = entries.longestDay + entries.dayStretch;
  const worth = premium > 0 ? entries.overtimeAfterDay + another / premium : longest;
  const atMost = Math.max(entries.dayLength, Math.min(longest, worth));
  const staysUntil = entries.dayBegins + atMost - entries.driveTime;
  const coatUntil = Math.min(entries.latestCoatStart + entries.coatStartStretch, staysUntil);
  const [usual, most] = [entries.dayLength - away, atMost - away];
  const loadOut = share * entries.loadOut;
  return {
    crew,
    away,
    usual,
    most,
    nearlyFull: Math.min(usual / 2, entries.knownWithin * most),
    coatMargin: Math.max(0, staysUntil - coatUntil - loadOut),
    loadOut,
    again: share * entries.setUpFirst * entries.setUpShareLater + loadOut,
  };
}

interface Visit {
  readonly crew: number;
  readonly released: number;
  readonly setUp: number;
  readonly worked: number;
  readonly work: number;
  readonly wait: number;
  readonly fills: number;
}

/** What is paid for a visit, with the next trip as far as it is likely. */
export function paidVisit(entries: HandEntries, day: HandDay, visit: Visit) {
  const { crew, wait } = visit;
  const fixed = visit.setUp + day.loadOut;
  const inDays = (hours: number, most: number): number =>
    Math.max(Math.min(hours + wait, most), hours + Math.min(wait, day.again));
  const site = inDays(fixed + visit.work, day.most);
  const filled = inDays(fixed + visit.fills, day.most + day.nearlyFull);
  const behind = Math.max(0, (filled - day.most + day.nearlyFull) / day.usual);
  const whole = Math.floor(behind);
  const trips = 1 + whole + Math.min(1, ((behind - whole) * day.usual) / (2 * day.nearlyFull));
  const away = trips * day.away;
  const worked = visit.worked + crew * fixed;
  const { dayLength, halfDay, grace } = entries;
  return {
    worked,
    trips,
    paid: Math.max(worked, crew * (site - visit.released)) + crew * away,
    overtime: crew * Math.max(0, site + away - trips * entries.overtimeAfterDay),
    equipmentDays: Math.max(halfDay, (site + away) / dayLength),
    crewDays: Math.max(1, roundUp((site + away - grace) / dayLength / halfDay)) * halfDay,
  };
}
