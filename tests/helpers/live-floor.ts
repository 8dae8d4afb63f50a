import type { CellContent, CellValue, PlannedCell } from '../../src/formula/cells.ts';
import { type Closures, closuresOf } from '../../src/formula/closures.ts';
import type { OptionPlan } from '../../src/template/plan.ts';
import { engineValues, formulasOf } from './engine-values.ts';

/** Numbers and codes to stand in cells that have no formula. */
export type CellValues = ReadonlyMap<number, number | string>;

/**
 * A floor that is laid out and compiled once, on which other numbers and choices are set: many times quicker than laying
 * out the cells anew for each floor that differs in nothing else. That it reads as one laid out for the values does is
 * tested in live-floor.test.ts.
 */
export class LiveFloor {
  /** As it was laid out. */
  readonly option: OptionPlan;
  private closures: Closures | undefined;
  private formulas: string | undefined;
  /** Cells that are set to something else than they were laid out with. */
  private moved: readonly number[] = [];

  constructor(option: OptionPlan) {
    this.option = option;
  }

  /** The same cells with these values in place of their own. */
  optionWith(values: CellValues): OptionPlan {
    const { option } = this;
    const cells = [...option.plan.cells];
    for (const [cell, value] of values) {
      const planned: PlannedCell | undefined = cells[cell];
      if (planned === undefined || !('value' in planned.content)) throw new Error(`Cell ${cell} takes no value`);
      cells[cell] = { ...planned, content: contentOf(value) };
    }
    return { ...option, plan: { ...option.plan, cells } };
  }

  /** What every cell reads, by the closures. */
  valuesWith(values: CellValues): readonly CellValue[] {
    const closures = this.closures ?? closuresOf(this.option.plan, this.option.graph);
    this.closures = closures;
    for (const cell of this.moved) {
      const content = this.option.plan.cells[cell]?.content;
      if (content !== undefined && 'value' in content) closures.setValue(cell, content.value);
    }
    for (const [cell, value] of values) closures.setValue(cell, value);
    this.moved = [...values.keys()];
    closures.recalculate();
    return closures.values();
  }

  /** What every cell reads, by the engine. */
  engineValuesWith(values: CellValues): readonly CellValue[] {
    this.formulas ??= formulasOf(this.option.plan);
    return engineValues(this.optionWith(values).plan, this.formulas);
  }
}

function contentOf(value: number | string): CellContent {
  return typeof value === 'number' ? { kind: 'number', value } : { kind: 'code', value };
}
