import type { CellPlace, CellPlan } from './cells.ts';
import type { Checked } from './checked-tree.ts';
import type { ClosureState, Work } from './closure-state.ts';

/** Where closures are built: the plan, the store, and the cell whose formula it is. */
export interface Bench {
  readonly plan: CellPlan;
  readonly state: ClosureState;
  readonly place: CellPlace;
  /** Index of the cell, where failures of its own begin. */
  readonly cell: number;
  /** Builds the closure of a part of the formula. */
  readonly build: (part: Checked) => Work;
}
