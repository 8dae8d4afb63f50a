import { addressCells } from '../../src/engine/cell-addresses.ts';
import { formulaText } from '../../src/engine/emit-cell.ts';
import type { Workbook } from '../../src/engine/option-workbook.ts';
import { openWorkbook } from '../../src/engine/workbook.ts';
import { placeText } from '../../src/formula/cell-name.ts';
import type { CellPlan, CellValue } from '../../src/formula/cells.ts';

interface KeptWorkbook {
  readonly workbook: Workbook;
  /** What stands in the cells without a formula. */
  readonly written: Map<number, number | string>;
}

/** The oldest is closed for a new one; each holds some megabytes. */
const mostKept = 24;
const kept = new Map<string, KeptWorkbook>();

/**
 * What the engine gives for every cell of a plan. Reading the formulas is nearly all of its work, so that a plan of the
 * same cells and formulas as an earlier one is worked out in that one's workbook, with the values that differ written in,
 * as an edit does in the app. That this gives what a workbook built afresh gives is tested in tests/engine.
 */
export function engineValues(plan: CellPlan, formulas = formulasOf(plan)): readonly CellValue[] {
  const open = kept.get(formulas) ?? opened(plan);
  // Put last again, as the one used last.
  kept.delete(formulas);
  kept.set(formulas, open);
  for (const [oldest, { workbook }] of kept) {
    if (kept.size <= mostKept) break;
    workbook.close();
    kept.delete(oldest);
  }
  const changed = [...valuesIn(plan)].filter(([cell, value]) => !Object.is(open.written.get(cell), value));
  if (changed.length > 0) open.workbook.setValues(new Map(changed));
  for (const [cell, value] of changed) open.written.set(cell, value);
  return open.workbook.values();
}

function opened(plan: CellPlan): KeptWorkbook {
  return { workbook: openWorkbook(plan), written: valuesIn(plan) };
}

/** Every cell with its formula: what decides that two plans differ in nothing but values. */
export function formulasOf(plan: CellPlan): string {
  const addresses = addressCells(plan);
  const cells = plan.cells.map(({ place, content }) => {
    const text = content.kind === 'formula' ? formulaText(content.tree, place, plan, addresses) : content.kind;
    return `${placeText(place)} ${text}`;
  });
  return [...[...plan.tables].map(([table, { rows }]) => `${table} ${rows}`), ...cells].join('\n');
}

function valuesIn(plan: CellPlan): Map<number, number | string> {
  return new Map(
    plan.cells.flatMap(({ content }, cell) => ('value' in content ? [[cell, content.value] as const] : [])),
  );
}
