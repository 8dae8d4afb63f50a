import type { CellValue } from '../formula/cells.ts';
import type { OptionPlan } from '../template/plan.ts';

/** The cells of one option, worked out by either evaluator. Cells are named by their index in the plan. */
export interface Workbook {
  value(cell: number): CellValue;
  values(): readonly CellValue[];
  /** Writes a number or a code into a cell. Answers the cells whose value is now another, this one included. */
  setValue(cell: number, value: number | string): readonly number[];
  /** The same for several cells, worked out once. */
  setValues(entries: ReadonlyMap<number, number | string>): readonly number[];
  close(): void;
}

/** Works out an option that was laid out; `option` is its id in the quote. */
export type OpenWorkbook = (planned: OptionPlan, option: string) => Workbook;

export function unknownCell(cell: number): never {
  throw new Error(`the plan has no cell ${cell}`);
}
