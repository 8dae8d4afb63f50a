import type { CellValue } from '../../../formula/cells.ts';
import { unitOf } from '../../../formula/value-type.ts';
import { KeptByCells } from '../../../quote/kept-by-cells.ts';
import { cellOfLine, type OptionResults } from '../../../quote/option-results.ts';
import { type ResultLine, resultsIn } from '../../../template/result-lines.ts';
import { type FormatOptions, formatNumber, formatQuantity, isMoney, unitSuffix } from '../../../units/format.ts';
import type { Measures } from '../../../units/measures.ts';
import { lineLabel, saidAs } from '../../parts/line-words.ts';
import type { NamedResults } from '../../parts/named-results.ts';

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
  readonly value: CellValue;
  readonly shown: string;
  readonly suffix: string;
  readonly failed: boolean;
  /** How far the last change moved it, as in “+$84.00”; empty when it did not. */
  readonly delta: string;
}

/** What an owner reads first. */
const foremost: readonly ResultLine[] = ['price', 'price_per_sqft'];

/** Every result line, in the order an owner reads: price, profit, days, hours, costs. */
const order: readonly { readonly title: string; readonly lines: readonly (ResultLine | 'work_days')[] }[] = [
  { title: '', lines: [...foremost, ...resultsIn('price').filter((line) => !foremost.includes(line))] },
  { title: 'Profit', lines: resultsIn('profit') },
  { title: 'Crew time', lines: ['work_days', ...resultsIn('crew time').toReversed()] },
  { title: 'Job cost', lines: resultsIn('job cost') },
  { title: 'Cost with overhead', lines: resultsIn('overhead', 'share of price') },
];

const keptRows = new KeptByCells<BoardRow>();
const keptValues = new KeptByCells<BoardValue | undefined>();

/** `before` is the board before the last change, to show how far each value moved. Numbers are in `measures`. */
export function boardView(
  options: readonly NamedResults[],
  before: BoardView | undefined,
  measures: Measures = 'us',
): BoardView {
  const earlier = valuesOn(before);
  const beside = options.length;
  const rowOf = (line: string): BoardRow[] => {
    const values = options.flatMap(({ id, results }) => {
      const was = earlier.get(`${id} ${line}`);
      const made = (): BoardValue | undefined => boardValue(id, results, line, was, { measures, beside });
      return keptValues.of(results, line, [id, was, measures, beside], made) ?? [];
    });
    const [first] = options;
    if (first === undefined || values.length === 0) return [];
    const label = lineLabel(first.results, line, measures);
    return [keptRows.of(first.results, line, [label, ...values], () => ({ line, label, values }))];
  };
  return {
    options: options.map(({ id, title }) => ({ id, title })),
    groups: order.map(({ title, lines }) => ({ title, rows: lines.flatMap(rowOf) })),
  };
}

function valuesOn(board: BoardView | undefined): ReadonlyMap<string, CellValue> {
  const rows = board?.groups.flatMap((group) => group.rows) ?? [];
  return new Map(
    rows.flatMap(({ line, values }) => values.map(({ optionId, value }) => [`${optionId} ${line}`, value] as const)),
  );
}

/** Whether a number moved that `before` did not show: rows that a change left alone are the same objects. */
export function movesOn(board: BoardView, before: BoardView | undefined): boolean {
  const shown = new Set<BoardRow>(before?.groups.flatMap(({ rows }) => rows));
  return board.groups.some(({ rows }) =>
    rows.some((row) => !shown.has(row) && row.values.some(({ delta }) => delta !== '')),
  );
}

/** Options beside each other that leave no room for cents. */
const many = 3;

function boardValue(
  optionId: string,
  results: OptionResults,
  line: string,
  before: CellValue | undefined,
  { measures, beside }: { readonly measures: Measures; readonly beside: number },
): BoardValue | undefined {
  const cell = cellOfLine(results, line);
  const type = cell === undefined ? undefined : results.option.plan.cells[cell]?.type;
  if (cell === undefined || type === undefined) return undefined;
  const value = results.read(cell);
  if (typeof value !== 'number')
    return { optionId, cell, value, shown: 'incomplete', suffix: '', failed: true, delta: '' };
  const unit = unitOf(type);
  const inDollars = isMoney(unit) && line !== 'price_per_sqft';
  const digits = (amount: number): FormatOptions => {
    const isWhole = inDollars && (beside >= many || (line === 'price' && Number.isInteger(amount)));
    return isWhole ? { digits: 0, measures } : saidAs(unit, measures);
  };
  const shown = formatNumber(value, unit, digits(value));
  const moved = typeof before === 'number' ? value - before : 0;
  const delta = moved === 0 ? '' : `${moved > 0 ? '+' : ''}${formatQuantity(moved, unit, digits(moved))}`;
  return { optionId, cell, value, shown, suffix: unitSuffix(unit, shown, measures), failed: false, delta };
}
