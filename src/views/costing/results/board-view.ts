import type { CellValue } from '../../../formula/cells.ts';
import type { ValueType } from '../../../formula/checked-tree.ts';
import { unitOf } from '../../../formula/value-type.ts';
import { cellOfLine } from '../../../quote/option-results.ts';
import type { ResultLine } from '../../../template/result-lines.ts';
import { type FormatOptions, formatNumber, formatQuantity, isMoney, unitSuffix } from '../../../units/format.ts';
import type { Measures } from '../../../units/measures.ts';
import { lineLabel, saidAs } from '../../parts/line-words.ts';
import type { NamedResults } from '../../parts/named-results.ts';
import { KeptViews } from '../kept-views.ts';

/** The results of a quote’s options beside each other. */
export interface BoardView {
  readonly options: readonly { readonly id: string; readonly title: string }[];
  readonly groups: readonly BoardGroup[];
}

/** Results that answer one question; the first group, of the price, has no title. */
export interface BoardGroup {
  readonly title: string;
  readonly rows: readonly BoardRow[];
}

export interface BoardRow {
  readonly line: string;
  readonly label: string;
  readonly values: readonly BoardValue[];
}

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
const order: readonly { readonly title: string; readonly lines: readonly (ResultLine | 'work_days')[] }[] = [
  { title: '', lines: ['price', 'price_per_sqft', 'list_price', 'tax', 'total', 'deposit'] },
  {
    title: 'Profit',
    lines: ['gross_profit', 'gross_margin', 'contribution', 'contribution_per_crew_day', 'profit', 'net_margin'],
  },
  { title: 'Crew time', lines: ['work_days', 'visits', 'crew_days', 'paid_hours', 'person_hours'] },
  {
    title: 'Job cost',
    lines: ['materials_cost', 'consumables_cost', 'labour_cost', 'equipment_cost', 'travel_cost', 'direct_cost'],
  },
  {
    title: 'Cost with overhead',
    lines: ['overhead_cost', 'contingency_cost', 'reserve_cost', 'full_cost', 'commission', 'fees'],
  },
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
  const rowOf = (line: string): BoardRow[] => {
    const values = options.flatMap((option) => {
      const found = standingValue(option, line);
      if (found === undefined) return [];
      const key = `${option.id} ${line}`;
      const earlier = before.get(key);
      kept.standing.set(key, found.value);
      const said = { measures, beside: options.length };
      const from = [found.cell, found.type, found.value, earlier, measures, options.length];
      return [kept.values.view(key, from, () => boardValue(option, line, found, earlier, said))];
    });
    if (values.length === 0) return [];
    const label = options[0] === undefined ? line : lineLabel(options[0].results, line, measures);
    return [kept.rows.view(line, [label, ...values], () => ({ line, label, values }))];
  };
  return {
    options: options.map(({ id, title }) => ({ id, title })),
    groups: order.map(({ title, lines }) => ({ title, rows: lines.flatMap(rowOf) })),
  };
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

/** Options beside each other that leave no room for cents. */
const many = 3;

function boardValue(
  { id }: NamedResults,
  line: string,
  { cell, type, value }: FoundValue,
  before: CellValue | undefined,
  { measures, beside }: { readonly measures: Measures; readonly beside: number },
): BoardValue {
  const unit = unitOf(type);
  if (typeof value !== 'number')
    return { optionId: id, cell, shown: 'incomplete', suffix: '', failed: true, delta: '' };
  const inDollars = isMoney(unit) && line !== 'price_per_sqft';
  const digits = (amount: number): FormatOptions => {
    const isWhole = inDollars && (beside >= many || (line === 'price' && Number.isInteger(amount)));
    return isWhole ? { digits: 0, measures } : saidAs(unit, measures);
  };
  const shown = formatNumber(value, unit, digits(value));
  const moved = typeof before === 'number' ? value - before : 0;
  const delta = moved === 0 ? '' : `${moved > 0 ? '+' : ''}${formatQuantity(moved, unit, digits(moved))}`;
  return { optionId: id, cell, shown, suffix: unitSuffix(unit, shown, measures), failed: false, delta };
}
