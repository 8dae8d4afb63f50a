import type { CellValue } from '../../formula/cells.ts';
import type { ValueType } from '../../formula/checked-tree.ts';
import { unitOf } from '../../formula/value-type.ts';
import { cellOfLine } from '../../quote/option-results.ts';
import type { ResultLine } from '../../template/result-lines.ts';
import { formatNumber, formatQuantity, isMoney, unitSuffix } from '../../units/format.ts';
import type { Measures } from '../../units/measures.ts';
import type { NamedResults } from '../parts/named-results.ts';
import { lineLabel } from '../parts/shown-line.ts';
import { KeptViews } from './kept-views.ts';

/** The results of a quote's options beside each other. */
export interface BoardView {
  readonly options: readonly { readonly id: string; readonly title: string }[];
  readonly rows: readonly BoardRow[];
}

export type BoardRow =
  | { readonly kind: 'heading'; readonly title: string }
  | { readonly kind: 'line'; readonly line: string; readonly label: string; readonly values: readonly BoardValue[] };

export interface BoardValue {
  readonly optionId: string;
  readonly cell: number;
  readonly shown: string;
  readonly suffix: string;
  readonly failed: boolean;
  /** How far the last change moved it, as in “+$84.00”; empty when it did not. */
  readonly delta: string;
}

/** Every result line, in the order an owner reads: price, profit, days, hours, costs. */
const order: readonly (ResultLine | 'work_days' | { readonly heading: string })[] = [
  'price',
  'price_per_sqft',
  'list_price',
  'tax',
  'total',
  'deposit',
  { heading: 'Profit' },
  'gross_profit',
  'gross_margin',
  'contribution',
  'contribution_per_crew_day',
  'profit',
  'net_margin',
  { heading: 'Crew time' },
  'work_days',
  'visits',
  'crew_days',
  'paid_hours',
  'person_hours',
  { heading: 'Job cost' },
  'materials_cost',
  'consumables_cost',
  'labour_cost',
  'equipment_cost',
  'travel_cost',
  'direct_cost',
  { heading: 'Cost with overhead' },
  'overhead_cost',
  'contingency_cost',
  'reserve_cost',
  'full_cost',
  'commission',
  'fees',
];

/** What was made of the board before, to be given again where nothing of it changed. */
export interface KeptBoard {
  readonly rows: KeptViews<BoardRow>;
  readonly values: KeptViews<BoardValue>;
  /** What stands on it, by option and line. */
  readonly standing: Map<string, CellValue>;
}

export function emptyBoard(): KeptBoard {
  return { rows: new KeptViews(), values: new KeptViews(), standing: new Map() };
}

/**
 * `before` is what stood on the board before the last change, to show how far each value moved. Numbers are in `measures`.
 * What is the same as in `kept` is the same object.
 */
export function boardView(
  options: readonly NamedResults[],
  before: KeptBoard['standing'],
  kept: KeptBoard = emptyBoard(),
  measures: Measures = 'us',
): BoardView {
  const rows = order.flatMap((entry): BoardRow[] => {
    if (typeof entry === 'object') {
      const { heading } = entry;
      return [kept.rows.view(heading, [], () => ({ kind: 'heading', title: heading }))];
    }
    const values = options.flatMap((option) => {
      const found = standingValue(option, entry);
      if (found === undefined) return [];
      const key = `${option.id} ${entry}`;
      const earlier = before.get(key);
      kept.standing.set(key, found.value);
      const from = [found.cell, found.type, found.value, earlier, measures];
      return [kept.values.view(key, from, () => boardValue(option, entry, found, earlier, measures))];
    });
    if (values.length === 0) return [];
    const label = options[0] === undefined ? entry : lineLabel(options[0].results, entry, measures);
    return [kept.rows.view(entry, [label, ...values], () => ({ kind: 'line', line: entry, label, values }))];
  });
  return { options: options.map(({ id, title }) => ({ id, title })), rows };
}

interface FoundValue {
  readonly cell: number;
  readonly type: ValueType;
  readonly value: CellValue;
}

function standingValue({ results }: NamedResults, line: string): FoundValue | undefined {
  const cell = cellOfLine(results, line);
  const type = cell === undefined ? undefined : results.option.plan.cells[cell]?.type;
  return cell === undefined || type === undefined ? undefined : { cell, type, value: results.read(cell) };
}

function boardValue(
  { id }: NamedResults,
  line: string,
  { cell, type, value }: FoundValue,
  before: CellValue | undefined,
  measures: Measures,
): BoardValue {
  const unit = unitOf(type);
  if (typeof value !== 'number') {
    return { optionId: id, cell, shown: 'incomplete', suffix: '', failed: true, delta: '' };
  }
  const whole = isMoney(unit) && Number.isInteger(value) && line === 'price';
  const shown = formatNumber(value, unit, whole ? { digits: 0, measures } : { measures });
  const moved = typeof before === 'number' ? value - before : 0;
  const delta = moved === 0 ? '' : `${moved > 0 ? '+' : ''}${formatQuantity(moved, unit, { measures })}`;
  return { optionId: id, cell, shown, suffix: unitSuffix(unit, shown, measures), failed: false, delta };
}
