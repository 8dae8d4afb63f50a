import { nearestWord } from '../units/nearest-word.ts';
import { parseUnit, sameUnit } from '../units/unit.ts';
import type { ComposedSheet } from './composed-sheet.ts';
import type { DeclaredNames } from './declared-names.ts';
import type { LineFile } from './line-schema.ts';
import type { SheetFault } from './sheet-fault.ts';

/** What a result answers; faces and the command line show those of a group together. */
export type ResultGroup = 'job cost' | 'overhead' | 'price' | 'share of price' | 'profit' | 'crew time';

interface ListedResult {
  readonly unit: string;
  readonly group: ResultGroup;
}

/** The lines every system defines, from what is spent to what is left; comparison, jobs and paper read them by name. */
const listed = {
  materials_cost: { unit: '$', group: 'job cost' },
  consumables_cost: { unit: '$', group: 'job cost' },
  labour_cost: { unit: '$', group: 'job cost' },
  equipment_cost: { unit: '$', group: 'job cost' },
  travel_cost: { unit: '$', group: 'job cost' },
  direct_cost: { unit: '$', group: 'job cost' },
  overhead_cost: { unit: '$', group: 'overhead' },
  contingency_cost: { unit: '$', group: 'overhead' },
  reserve_cost: { unit: '$', group: 'overhead' },
  full_cost: { unit: '$', group: 'overhead' },
  list_price: { unit: '$', group: 'price' },
  price: { unit: '$', group: 'price' },
  price_per_sqft: { unit: '$/ft2', group: 'price' },
  tax: { unit: '$', group: 'price' },
  total: { unit: '$', group: 'price' },
  deposit: { unit: '$', group: 'price' },
  commission: { unit: '$', group: 'share of price' },
  fees: { unit: '$', group: 'share of price' },
  gross_profit: { unit: '$', group: 'profit' },
  gross_margin: { unit: '%', group: 'profit' },
  contribution: { unit: '$', group: 'profit' },
  contribution_per_crew_day: { unit: '$/crew_day', group: 'profit' },
  profit: { unit: '$', group: 'profit' },
  net_margin: { unit: '%', group: 'profit' },
  person_hours: { unit: 'h', group: 'crew time' },
  paid_hours: { unit: 'h', group: 'crew time' },
  crew_days: { unit: 'crew_day', group: 'crew time' },
  visits: { unit: 'visit', group: 'crew time' },
} as const satisfies Readonly<Record<string, ListedResult>>;

export type ResultLine = keyof typeof listed;

export const resultLines: readonly ResultLine[] = Object.keys(listed).filter(isResultLine);

export function resultUnit(line: ResultLine): string {
  return listed[line].unit;
}

/** The result lines of some groups, in the order of the list. */
export function resultsIn(...groups: readonly ResultGroup[]): readonly ResultLine[] {
  return resultLines.filter((line) => groups.includes(listed[line].group));
}

function isResultLine(name: string): name is ResultLine {
  return name in listed;
}

/** A fault for each result line a system lacks, or has in another unit. */
export function resultLineFaults(system: ComposedSheet, names: DeclaredNames): SheetFault[] {
  const own = new Map(
    [...names.lines.values()].flatMap(({ layer, line }) => (layer === 'system' ? [[line.name, line] as const] : [])),
  );
  const path = `system ${system.id}`;
  return resultLines.flatMap((name): SheetFault[] => {
    if (names.broken.has(name)) return [];
    const line = own.get(name);
    if (line !== undefined) return hasUnit(line, resultUnit(name)) ? [] : [{ path, reason: otherUnit(name) }];
    const near = nearestWord(name, [...own.keys()]);
    const hint = near === undefined ? '' : ` There is “${near}”.`;
    return [{ path, reason: `The system lacks the result line “${name}”.${hint}` }];
  });
}

function otherUnit(name: ResultLine): string {
  return `The result line “${name}” must be in ${resultUnit(name)}.`;
}

/** A unit that cannot be read is told where it stands. */
function hasUnit(line: LineFile, wanted: string): boolean {
  const [has, wants] = [parseUnit('unit' in line ? (line.unit ?? '1') : '1'), parseUnit(wanted)];
  return has.kind !== 'unit' || (wants.kind === 'unit' && sameUnit(has.unit, wants.unit));
}
