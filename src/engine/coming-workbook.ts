import type { CellGraph } from '../formula/cell-graph.ts';
import type { CellPlan } from '../formula/cells.ts';
import { closuresOf } from '../formula/closures.ts';
import { openWorkbook, sameValue, unknownCell, type Workbook } from './workbook.ts';

/** Does work when there is nothing more pressing. */
export type Later = (work: () => void) => void;

/**
 * A workbook whose values come from the closures at once, at a small part of the time that the engine takes. The engine is
 * opened `later` and follows every change later, and what it gives stands from then on; both give the same.
 */
export function comingWorkbook(plan: CellPlan, graph: CellGraph, later: Later): Workbook {
  const closures = closuresOf(plan, graph);
  const values = closures.values();
  let engine: Workbook | undefined;
  let waiting = new Map<number, number | string>();
  let closed = false;

  /** The engine is opened, or given what was entered since; its values stand. */
  const follow = (): void => {
    if (closed) return;
    const opens = engine === undefined;
    engine ??= openWorkbook(plan);
    const entered = waiting;
    waiting = new Map();
    const changed = entered.size === 0 ? [] : engine.setValues(entered);
    for (const cell of opens ? values.keys() : changed) values[cell] = engine.value(cell);
  };
  later(follow);

  const setValues = (entries: ReadonlyMap<number, number | string>): readonly number[] => {
    if (waiting.size === 0) later(follow);
    for (const [cell, value] of entries) {
      closures.setValue(cell, value);
      waiting.set(cell, value);
    }
    return closures.recalculate().filter((cell) => {
      const value = closures.value(cell);
      if (sameValue(value, values[cell])) return false;
      values[cell] = value;
      return true;
    });
  };
  return {
    value: (cell) => values[cell] ?? unknownCell(cell),
    values: () => [...values],
    setValue: (cell, value) => setValues(new Map([[cell, value]])),
    setValues,
    close: () => {
      closed = true;
      engine?.close();
    },
  };
}
