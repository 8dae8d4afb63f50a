import type { CellPlace, CellPlan, CellValue } from './cells.ts';
import type { Checked } from './checked-tree.ts';
import { type ClosureState, cellReading, emptyState, type Work } from './closure-state.ts';
import { workOf } from './closure-work.ts';
import { cellsRead } from './dependencies.ts';

/** Where a failure of the piece itself begins: in no cell. */
const nowhere = -1;

/** Works out a piece of a formula as it stands at a place. */
export type PartEvaluator = (tree: Checked, place: CellPlace) => CellValue;

/** A piece of a formula made ready at one place. */
interface ReadyPiece {
  readonly reads: readonly number[];
  readonly work: Work;
}

/** What pieces of a plan's formulas are worked out in. It holds nothing between two pieces: what they read is put there first. */
interface Bench {
  readonly state: ClosureState;
  /** Pieces by the row they stand in; lines stand in row -1. */
  readonly pieces: WeakMap<Checked, Map<number, ReadyPiece>>;
}

/** What is said of a quote is worked out anew at every edit, and its pieces are made ready once a plan. */
const benches = new WeakMap<CellPlan, Bench>();

/**
 * An evaluator of pieces of formulas over values that are worked out already, for explanations and for what checks say.
 * `read` gives each cell's value.
 */
export function partEvaluator(plan: CellPlan, read: (cell: number) => CellValue): PartEvaluator {
  const bench = benchOf(plan);
  const { state } = bench;
  return (tree, place) => {
    const { reads, work } = readyPiece(bench, tree, place, plan);
    for (const cell of reads) holdValue(state, cell, read(cell));
    return cellReading(work(), tree.type, state, nowhere, state.failure);
  };
}

function benchOf(plan: CellPlan): Bench {
  const known = benches.get(plan);
  if (known !== undefined) return known;
  const bench: Bench = { state: emptyState(plan), pieces: new WeakMap() };
  benches.set(plan, bench);
  return bench;
}

function readyPiece({ state, pieces }: Bench, tree: Checked, place: CellPlace, plan: CellPlan): ReadyPiece {
  const row = place.kind === 'cell' ? place.row : -1;
  const byRow = pieces.get(tree) ?? new Map<number, ReadyPiece>();
  const known = byRow.get(row);
  if (known !== undefined) return known;
  const piece = {
    reads: cellsRead(tree, place, plan),
    work: workOf(tree, { plan, state, place, cell: nowhere }),
  };
  pieces.set(tree, byRow.set(row, piece));
  return piece;
}

/** Puts a worked-out value where closures read it. */
export function holdValue(state: ClosureState, cell: number, value: CellValue): void {
  if (typeof value === 'number') state.raw[cell] = value;
  else if (typeof value === 'string') state.raw[cell] = state.codes.numberOf(value);
  else if (typeof value === 'boolean') state.raw[cell] = value ? 1 : 0;
  else {
    state.raw[cell] = Number.NaN;
    state.failures[cell] = value;
  }
}
