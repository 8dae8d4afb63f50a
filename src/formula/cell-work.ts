import type { CellPlan } from './cells.ts';
import type { ClosureState, Work } from './closure-state.ts';
import { workOf } from './closure-work.ts';
import { operatorWork, resultWork } from './operator-work.ts';

/** The closure of a cell that is worked out: its formula, the operator of a table, or a result of that. */
export function cellWork(cell: number, plan: CellPlan, state: ClosureState): Work {
  const planned = plan.cells[cell];
  switch (planned?.content.kind) {
    case 'formula':
      return workOf(planned.content.tree, { plan, state, place: planned.place, cell });
    case 'operator':
      return operatorWork(planned.content.table, plan, state);
    case 'result':
      return resultWork(planned.place, plan, state);
    default:
      throw new Error(`Cell ${cell} is not worked out`);
  }
}
