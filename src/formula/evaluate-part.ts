import type { CellPlace, CellPlan, CellValue } from './cells.ts';
import type { Checked } from './checked-tree.ts';
import { cellReading, emptyState } from './closure-state.ts';
import { workOf } from './closure-work.ts';

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
  plan.cells.forEach((_, cell) => {
    const value = read(cell);
    if (typeof value === 'number') state.raw[cell] = value;
    else if (typeof value === 'string') state.raw[cell] = state.codes.numberOf(value);
    else if (typeof value === 'boolean') state.raw[cell] = value ? 1 : 0;
    else {
      state.raw[cell] = Number.NaN;
      state.failures[cell] = value;
    }
  });
  return (tree, place) => {
    const raw = workOf(tree, { plan, state, place, cell: nowhere })();
    return cellReading(raw, tree.type, state, nowhere, state.failure);
  };
}
