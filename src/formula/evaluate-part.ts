import type { CellPlace, CellPlan, CellValue } from './cells.ts';
import type { Checked } from './checked-tree.ts';
import { type ClosureState, cellReading, emptyState } from './closure-state.ts';
import { workOf } from './closure-work.ts';
import { cellsRead } from './dependencies.ts';

/** Where a failure of the piece itself begins: in no cell. */
const nowhere = -1;

/** Works out a piece of a formula as it stands at a place. */
export type PartEvaluator = (tree: Checked, place: CellPlace) => CellValue;

/**
 * An evaluator of pieces of formulas over values that are worked out already, for explanations and for what checks say.
 * `read` gives each cell's value.
 */
export function partEvaluator(plan: CellPlan, read: (cell: number) => CellValue): PartEvaluator {
  const state = emptyState(plan);
  const held = new Uint8Array(plan.cells.length);
  return (tree, place) => {
    for (const cell of cellsRead(tree, place, plan)) {
      if (held[cell] === 0) holdValue(state, cell, read(cell));
      held[cell] = 1;
    }
    const raw = workOf(tree, { plan, state, place, cell: nowhere })();
    return cellReading(raw, tree.type, state, nowhere, state.failure);
  };
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
