import type { CellPlan, CellValue } from '../formula/cells.ts';
import type { CompiledStack } from '../template/compiled-stack.ts';
import type { ProductRow, StackEntries } from '../template/entries.ts';
import { planOption } from '../template/plan.ts';
import type { SheetFault } from '../template/sheet-fault.ts';
import type { OptionResults } from './option-results.ts';

/** Works out every cell of a plan, in the plan's order. */
export type Evaluate = (plan: CellPlan) => readonly CellValue[];

export type PricedOption =
  | { readonly kind: 'priced'; readonly results: OptionResults }
  | { readonly kind: 'refused'; readonly faults: readonly SheetFault[] };

/** Prices one compiled stack with what is entered over it. A price list's products come by code. */
export function priceOption(
  stack: CompiledStack,
  entries: StackEntries,
  products: ReadonlyMap<string, ProductRow>,
  evaluate: Evaluate,
): PricedOption {
  const option = planOption(stack, entries, products);
  if (option.faults.length > 0) return { kind: 'refused', faults: option.faults };
  const values = evaluate(option.plan);
  const read = (cell: number): CellValue => {
    const value = values[cell];
    if (value === undefined) throw new Error(`The plan has no cell ${cell}`);
    return value;
  };
  return { kind: 'priced', results: { stack: option.stack, option, read } };
}
