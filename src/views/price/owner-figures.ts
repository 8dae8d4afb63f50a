import { unitOf } from '../../formula/value-type.ts';
import { KeptByCells } from '../../quote/kept-by-cells.ts';
import { lineValue, type OptionResults } from '../../quote/option-results.ts';
import { formatQuantity } from '../../units/format.ts';
import type { Measures } from '../../units/measures.ts';
import { lineLabel, saidAs } from '../parts/line-words.ts';

export interface OwnerFigure {
  readonly label: string;
  readonly value: string;
}

/** Dollars first and points second. */
const figures = [
  'gross_profit',
  'gross_margin',
  'contribution_per_crew_day',
  'above_walk_away',
  'profit',
  'net_margin',
];
const keptFigures = new KeptByCells<readonly OwnerFigure[]>();

/** What an owner looks at beside a price. */
export function ownerFigures(results: OptionResults, measures: Measures): readonly OwnerFigure[] {
  return keptFigures.of(results, measures, [], () => figures.flatMap((name) => figure(name, results, measures) ?? []));
}

function figure(name: string, results: OptionResults, measures: Measures): OwnerFigure | undefined {
  const line = results.stack.lines.get(name);
  if (line === undefined) return undefined;
  const value = lineValue(results, name);
  const unit = unitOf(line.type);
  const shown = typeof value === 'number' ? formatQuantity(value, unit, saidAs(unit, measures)) : 'incomplete';
  return { label: lineLabel(results, name, measures), value: shown };
}
