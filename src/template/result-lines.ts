import { nearestWord } from '../units/nearest-word.ts';
import type { ComposedSheet } from './composed-sheet.ts';
import type { DeclaredNames } from './declared-names.ts';
import type { SheetFault } from './sheet-fault.ts';

/** The lines every system defines; comparison, jobs and paper read them by name. */
export const resultLines = [
  'materials_cost',
  'consumables_cost',
  'labour_cost',
  'equipment_cost',
  'travel_cost',
  'direct_cost',
  'overhead_cost',
  'contingency_cost',
  'reserve_cost',
  'full_cost',
  'list_price',
  'price',
  'price_per_sqft',
  'tax',
  'total',
  'deposit',
  'commission',
  'fees',
  'gross_profit',
  'gross_margin',
  'contribution',
  'contribution_per_crew_day',
  'profit',
  'net_margin',
  'person_hours',
  'paid_hours',
  'crew_days',
  'visits',
] as const;

export type ResultLine = (typeof resultLines)[number];

/** A fault for each result line a system lacks. */
export function missingResultLines(system: ComposedSheet, names: DeclaredNames): SheetFault[] {
  const own = [...names.lines.values()].filter((line) => line.layer === 'system').map((line) => line.line.name);
  return resultLines
    .filter((name) => !own.includes(name) && !names.broken.has(name))
    .map((name) => {
      const near = nearestWord(name, own);
      const hint = near === undefined ? '' : ` There is “${near}”.`;
      return { path: `system ${system.id}`, reason: `The system lacks the result line “${name}”.${hint}` };
    });
}
