import type { CellGraph } from './cell-graph.ts';
import { cellWork } from './cell-work.ts';
import type { CellPlan, CellValue } from './cells.ts';
import { cellReading, emptyState } from './closure-state.ts';
import { holdValue } from './evaluate-part.ts';

/** The formulas through which some cells of a plan lead to one of its results. */
export interface Route {
  readonly plan: CellPlan;
  readonly tried: readonly number[];
  readonly result: number;
  /** Cells that lie between, each after all it reads, `result` last. */
  readonly between: readonly number[];
  /** What those read besides. */
  readonly beside: readonly number[];
}

/** Other numbers tried in some cells, and what they would make of one result. */
export interface Trial {
  /** Tries a number in one of the route's `tried` cells, in place of what its formula gives. */
  setValue(cell: number, value: number): void;
  result(): CellValue;
}

/** The route from `tried` to `result`. Throws when the plan has a cycle: compiling refuses those before. */
export function routeBetween(plan: CellPlan, graph: CellGraph, tried: readonly number[], result: number): Route {
  if (graph.kind === 'cycle') throw new Error('The plan has a cycle');
  const reached = new Set(tried);
  for (const cell of graph.order) if (graph.reads[cell]?.some((source) => reached.has(source))) reached.add(cell);
  const wanted = new Set([result]);
  const fixed = new Set(tried);
  for (const cell of graph.order.toReversed()) {
    if (wanted.has(cell) && !fixed.has(cell)) for (const source of graph.reads[cell] ?? []) wanted.add(source);
  }
  const between = graph.order.filter((cell) => reached.has(cell) && wanted.has(cell) && !fixed.has(cell));
  const passed = new Set(between);
  const beside = [...new Set(between.flatMap((cell) => graph.reads[cell] ?? []))].filter((cell) => !passed.has(cell));
  return { plan, tried, result, between, beside };
}

/** A trial over values that are worked out already, as `read` gives them: only formulas on the route are worked out again. */
export function trialOf({ plan, tried, result, between, beside }: Route, read: (cell: number) => CellValue): Trial {
  const state = emptyState(plan);
  for (const cell of [...beside, ...tried, result]) holdValue(state, cell, read(cell));
  const steps = between.map((cell) => ({ cell, work: cellWork(cell, plan, state) }));
  return {
    setValue(cell, value) {
      state.raw[cell] = value;
    },
    result() {
      for (const { cell, work } of steps) {
        const raw = work();
        state.raw[cell] = raw;
        if (Number.isNaN(raw)) state.failures[cell] = state.failure;
      }
      const type = plan.cells[result]?.type ?? { kind: 'truth' };
      return cellReading(state.raw[result] ?? Number.NaN, type, state, result, state.failures[result]);
    },
  };
}
