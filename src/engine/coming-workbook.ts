import type { CellGraph } from '../formula/cell-graph.ts';
import type { CellPlan, CellValue } from '../formula/cells.ts';
import { closuresOf } from '../formula/closures.ts';
import { openWorkbook, type Workbook } from './workbook.ts';

/** Does work when there is nothing more pressing. */
export type Later = (work: () => void) => void;

/**
 * A workbook whose first values come from the closures, at a small part of the time that opening the engine takes. The
 * engine is opened `later`, or by the first change, and from then on all values are its own; both give the same.
 */
export function comingWorkbook(plan: CellPlan, graph: CellGraph, later: Later): Workbook {
  let first: readonly CellValue[] = closuresOf(plan, graph).values();
  let opened: Workbook | undefined;
  let closed = false;
  const engine = (): Workbook => {
    opened ??= openWorkbook(plan);
    first = [];
    return opened;
  };
  later(() => {
    if (!closed) engine();
  });
  return {
    value: (cell) => (opened === undefined ? (first[cell] ?? unknownCell(cell)) : opened.value(cell)),
    values: () => opened?.values() ?? first,
    setValue: (cell, value) => engine().setValue(cell, value),
    setValues: (entries) => engine().setValues(entries),
    close: () => {
      closed = true;
      opened?.close();
    },
  };
}

function unknownCell(cell: number): never {
  throw new Error(`the plan has no cell ${cell}`);
}
