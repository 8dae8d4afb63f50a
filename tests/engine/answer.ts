import { openWorkbook } from '../../src/engine/workbook.ts';
import type { CellValue } from '../../src/formula/cells.ts';
import type { Checked } from '../../src/formula/checked-tree.ts';
import { lineCell, type PlanParts, planOf } from './plan-builder.ts';

/** What one formula gives as a line beside the given lines and tables; a failure as `kind at place`. */
export function answer(formula: Checked, parts: PlanParts = {}): CellValue | string {
  const plan = planOf({ ...parts, lines: { ...parts.lines, answer: formula } });
  const workbook = openWorkbook(plan);
  const value = workbook.value(lineCell(plan, 'answer'));
  workbook.close();
  if (typeof value !== 'object') return value;
  const place = plan.cells[value.origin]?.place;
  const text = place?.kind === 'line' ? place.name : `${place?.table}.${place?.column}[${place?.row}]`;
  return `${value.kind} at ${text}`;
}
