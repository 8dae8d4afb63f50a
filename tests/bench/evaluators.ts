import { openWorkbook } from '../../src/engine/workbook.ts';
import { placeText } from '../../src/formula/cell-name.ts';
import type { CellValue } from '../../src/formula/cells.ts';
import { closuresOf } from '../../src/formula/closures.ts';
import { lineCell } from '../../src/formula/dependencies.ts';
import { Disagreement } from './agreement.ts';
import type { BenchQuote } from './bench-quote.ts';
import { handEntriesOf } from './hand-written-entries.ts';
import { priceByHand } from './hand-written-quote.ts';
import { millisecondsOf, randomFrom, type Timing, timingOf } from './timing.ts';

export interface RepricedEntry {
  readonly what: string;
  readonly lines: readonly ('target_margin' | 'resin_waste')[];
}

export const repricedEntries: readonly RepricedEntry[] = [
  { what: 'target margin and resin waste', lines: ['target_margin', 'resin_waste'] },
  { what: 'resin waste alone', lines: ['resin_waste'] },
  { what: 'target margin alone', lines: ['target_margin'] },
];

export interface MeasuredEvaluators {
  /** A thousand repricings each. */
  readonly workbook: Timing;
  readonly closures: Timing;
  readonly hand: Timing;
  readonly compared: number;
}

const repricings = 1000;
const rounds = 5;
const warmUp = 1;

/** Reprices the first option with random entries by both evaluators and by hand; then again, comparing every cell. */
export function measureEvaluators(bench: BenchQuote, { lines }: RepricedEntry, seed: number): MeasuredEvaluators {
  const [option] = bench.options;
  if (option === undefined) throw new Error('The quote has no option');
  const results = bench.results(option);
  const { plan, graph } = results.option;
  const workbook = openWorkbook(plan);
  const closures = closuresOf(plan, graph);
  const entries = handEntriesOf(results, option.system);
  const random = randomFrom(seed);
  const draws = Array.from({ length: repricings }, () => ({
    target_margin: 0.3 + 0.3 * random(),
    resin_waste: 0.02 + 0.1 * random(),
  }));
  const cells = lines.map((line) => [line, lineCell(line, plan)] as const);
  const byWorkbook = (draw: Draw) => workbook.setValues(new Map(cells.map(([line, cell]) => [cell, draw[line]])));
  const byClosures = (draw: Draw) => {
    for (const [line, cell] of cells) closures.setValue(cell, draw[line]);
    closures.recalculate();
  };
  const byHand = (draw: Draw): number => {
    if (lines.includes('target_margin')) entries.targetMargin = draw.target_margin;
    if (lines.includes('resin_waste')) entries.resinWaste = draw.resin_waste;
    return priceByHand(entries).price;
  };
  const timings = timedByTurns(draws, { workbook: byWorkbook, closures: byClosures, hand: byHand });
  let compared = 0;
  for (const draw of draws) {
    byWorkbook(draw);
    byClosures(draw);
    compared += mustBeEqual(workbook.values(), closures.values(), (cell) => placeText(plan.cells[cell]?.place));
    const price = closures.value(lineCell('price', plan));
    if (price !== byHand(draw))
      throw new Disagreement(`The price is ${JSON.stringify(price)}, by hand ${byHand(draw)}`);
  }
  workbook.close();
  return { workbook: timings('workbook'), closures: timings('closures'), hand: timings('hand'), compared };
}

interface Draw {
  readonly target_margin: number;
  readonly resin_waste: number;
}

/** Each way reprices all draws in turn, so that what else the machine does meets them alike. */
function timedByTurns<Way extends string>(draws: readonly Draw[], ways: Record<Way, (draw: Draw) => unknown>) {
  const times = new Map<(draw: Draw) => unknown, number[]>();
  for (let round = -warmUp; round < rounds; round += 1) {
    for (const reprice of Object.values<(draw: Draw) => unknown>(ways)) {
      const took = millisecondsOf(() => {
        for (const draw of draws) reprice(draw);
      });
      if (round >= 0) times.set(reprice, [...(times.get(reprice) ?? []), took]);
    }
  }
  return (way: Way): Timing => timingOf(times.get(ways[way]) ?? []);
}

/** How many cells were compared; throws at the first that differs. */
function mustBeEqual(
  left: readonly CellValue[],
  right: readonly CellValue[],
  nameOf: (cell: number) => string,
): number {
  if (left.length !== right.length) throw new Disagreement('The evaluators have different numbers of cells');
  for (const [cell, value] of left.entries()) {
    if (same(value, right[cell])) continue;
    throw new Disagreement(
      `${nameOf(cell)} is ${JSON.stringify(value)} by the workbook and ${JSON.stringify(right[cell])} by the closures`,
    );
  }
  return left.length;
}

function same(left: CellValue, right: CellValue | undefined): boolean {
  if (typeof left !== 'object' || typeof right !== 'object') return Object.is(left, right);
  return left.kind === right.kind && left.origin === right.origin;
}
