import { openWorkbook } from '../engine/workbook.ts';
import type { CellPlan, CellValue } from '../formula/cells.ts';
import type { Evaluate } from '../quote/price-option.ts';
import { stackOf } from '../template/stack-of.ts';
import { loadTemplates, type ShippedTemplates } from './load-templates.ts';

/** What the command line prices with. Whoever prices many floors hands in means that keep what they have in common. */
export interface PricingMeans {
  readonly templates: () => ShippedTemplates;
  readonly compile: typeof stackOf;
  readonly evaluate: Evaluate;
}

/** Everything read, compiled and opened anew, for the one price a program prints. */
export const freshMeans: PricingMeans = { templates: loadTemplates, compile: stackOf, evaluate: workedOut };

/** By the engine of record. */
function workedOut(plan: CellPlan): readonly CellValue[] {
  const workbook = openWorkbook(plan);
  const values = workbook.values();
  workbook.close();
  return values;
}
