import { closuresOf } from '../../src/formula/closures.ts';
import type { OptionResults } from '../../src/quote/option-results.ts';
import { entry, floor, formula, laid } from './sheets.ts';

const names = ['price', 'contribution', 'crew_days', 'paid_hours', 'contribution_per_crew_day'];

/** An option that has only what it is worth, typed in; one line may fail, by dividing by 0. */
export function smallWorth(values: Readonly<Record<string, number>>, failing = ''): OptionResults {
  const lines = names.map((name) =>
    name === failing ? formula(name, '1', 'nil / nil') : entry(name, '$', values[name] ?? 0),
  );
  const found = laid([floor([entry('nil', '$', 0), ...lines])]);
  if (found.faults.length > 0) throw new Error(found.faults.join('\n'));
  const closures = closuresOf(found.plan.plan, found.plan.graph);
  return { stack: found.stack, option: found.plan, read: (cell) => closures.value(cell) };
}
