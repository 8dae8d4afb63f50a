import { unitOf } from '../../formula/value-type.ts';
import { lineValue, type OptionResults } from '../../quote/option-results.ts';
import { formatQuantity } from '../../units/format.ts';
import type { Measures } from '../../units/measures.ts';
import { lineLabel, saidAs } from '../parts/line-words.ts';

/** What an owner looks at beside a price, dollars first and points second. */
export function ownerFigures(
  results: OptionResults,
  measures: Measures,
): { readonly label: string; readonly value: string }[] {
  return [
    'gross_profit',
    'gross_margin',
    'contribution_per_crew_day',
    'above_walk_away',
    'profit',
    'net_margin',
  ].flatMap((name) => {
    const line = results.stack.lines.get(name);
    if (line === undefined) return [];
    const value = lineValue(results, name);
    const unit = unitOf(line.type);
    const shown = typeof value === 'number' ? formatQuantity(value, unit, saidAs(unit, measures)) : 'incomplete';
    return [{ label: lineLabel(results, name, measures), value: shown }];
  });
}
