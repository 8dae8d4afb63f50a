import type { CellPlan } from '../formula/cells.ts';
import { countReads } from '../formula/dependencies.ts';
import type { FaultReporter } from './sheet-fault.ts';
import { sheetLimits } from './sheet-limits.ts';

/** Before anything walks the formulas: how many there are, and how many cells they read. */
export function tellTooMuch(plan: CellPlan, report: FaultReporter): void {
  let formulas = 0;
  let reads = 0;
  for (const { content } of plan.cells) {
    if (content.kind !== 'formula') continue;
    formulas += 1;
    if (formulas <= sheetLimits.formulas) reads += countReads(content.tree, plan);
  }
  if (formulas > sheetLimits.formulas)
    report('', `A quote has at most ${sheetLimits.formulas} formulas, and this one has ${formulas}.`);
  if (reads > sheetLimits.cellsRead)
    report('', `The formulas of a quote read at most ${sheetLimits.cellsRead} cells, and these read ${reads}.`);
}
