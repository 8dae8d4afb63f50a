import type { Timing } from './timing.ts';

/** One line of the report. */
export interface ReportRow {
  readonly what: string;
  readonly timing: Timing;
  readonly budget: Budget;
  /** The hand-written quote doing the same. */
  readonly hand: Timing;
  /** The other evaluator doing the same, where there is one. */
  readonly closures?: Timing;
}

export type Budget =
  | { readonly kind: 'time'; readonly median: number; readonly p99?: number }
  /** At least so many times faster than the workbook, by medians. */
  | { readonly kind: 'times faster'; readonly least: number }
  | { readonly kind: 'none' };

const heads = ['what', 'median', 'p99', 'budget', 'over hand-written', 'workbook / closures', 'verdict'];

/** As wide as the longest of the report, so that each row can be printed as soon as it is measured. */
const widths = [66, 10, 10, 14, 17, 19, 7];

/** The heads of the report and a rule below them. */
export function headLines(): string {
  return `${inColumns(heads)}\n${widths.map((width) => '-'.repeat(width)).join('  ')}`;
}

export function rowLine(row: ReportRow): string {
  return inColumns(cellsOf(row));
}

function inColumns(cells: readonly string[]): string {
  const padded = cells.map((cell, column) =>
    column === 0 ? cell.padEnd(widths[column] ?? 0) : cell.padStart(widths[column] ?? 0),
  );
  return padded.join('  ').trimEnd();
}

/** Lines of cells, the first being heads, as text in columns. */
export function alignedTable(lines: readonly (readonly string[])[]): string {
  const widths = (lines[0] ?? []).map((_, column) => Math.max(...lines.map((line) => line[column]?.length ?? 0)));
  const written = lines.map((line) =>
    line.map((cell, column) => (column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0))),
  );
  const rule = widths.map((width) => '-'.repeat(width));
  return [written[0], rule, ...written.slice(1)].map((line) => line?.join('  ') ?? '').join('\n');
}

function cellsOf(row: ReportRow): string[] {
  const { timing, hand, closures } = row;
  return [
    row.what,
    duration(timing.median),
    timing.runs < 100 ? '' : duration(timing.p99),
    budgetText(row.budget),
    times(timing.median / hand.median),
    closures === undefined ? '' : times(timing.median / closures.median),
    verdict(row),
  ];
}

function verdict({ timing, budget, closures }: ReportRow): string {
  switch (budget.kind) {
    case 'time':
      return timing.median <= budget.median && timing.p99 <= (budget.p99 ?? Number.POSITIVE_INFINITY)
        ? 'within'
        : 'over';
    case 'times faster':
      if (closures === undefined) throw new Error('There is nothing to compare with');
      return timing.median / closures.median >= budget.least ? 'within' : 'over';
    case 'none':
      return '';
    default:
      return budget satisfies never;
  }
}

function budgetText(budget: Budget): string {
  switch (budget.kind) {
    case 'time':
      return `${budget.median} ms${budget.p99 === undefined ? '' : `, p99 ${budget.p99} ms`}`;
    case 'times faster':
      return `${budget.least} × faster`;
    case 'none':
      return '';
    default:
      return budget satisfies never;
  }
}

function duration(milliseconds: number): string {
  return milliseconds < 0.1 ? `${(milliseconds * 1000).toFixed(1)} µs` : `${milliseconds.toFixed(2)} ms`;
}

function times(ratio: number): string {
  return `${ratio < 100 ? ratio.toFixed(1) : Math.round(ratio)} ×`;
}
