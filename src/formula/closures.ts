import { type CellGraph, graphOf } from './cell-graph.ts';
import { cellWork } from './cell-work.ts';
import type { CellPlan, CellValue } from './cells.ts';
import { type ClosureState, cellReading, emptyState, type Work } from './closure-state.ts';
import { StaleSteps } from './stale-steps.ts';

/** A plan's formulas as JavaScript closures: the second evaluator, made for thousands of answers. */
export interface Closures {
  /** Gives an entry cell another number or code; `recalculate` makes it felt. */
  setValue(cell: number, value: number | string): void;
  /**
   * Works out again the formulas that new values lead to, and no others. Answers the cells given since the last time or worked
   * out to something else; a failed cell that was looked at again is always among them.
   */
  recalculate(): readonly number[];
  /** What a cell reads: the 15-digit reading of a number, a code, a truth, or its failure. */
  value(cell: number): CellValue;
  values(): CellValue[];
}

type AcyclicGraph = Extract<CellGraph, { kind: 'graph' }>;

/** Builds and runs the closures of a plan. Throws when the plan has a cycle: compiling refuses those before. */
export function closuresOf(plan: CellPlan, graph: CellGraph = graphOf(plan)): Closures {
  if (graph.kind === 'cycle') throw new Error('The plan has a cycle');
  return new PlanClosures(plan, graph);
}

class PlanClosures implements Closures {
  private readonly plan: CellPlan;
  private readonly state: ClosureState;
  private readonly order: readonly number[];
  private readonly work: readonly Work[];
  /** For each cell, the steps of `order` that read it. */
  private readonly readers: readonly (readonly number[])[];
  private readonly stale: StaleSteps;
  /** Cells that are another since the last recalculation. */
  private moved: number[] = [];

  constructor(plan: CellPlan, graph: AcyclicGraph) {
    this.plan = plan;
    this.state = emptyState(plan);
    this.order = graph.order;
    const stepOf = new Int32Array(plan.cells.length);
    graph.order.forEach((cell, step) => {
      stepOf[cell] = step;
    });
    this.readers = graph.readBy.map((readers) => readers.map((reader) => stepOf[reader] ?? 0));
    this.stale = new StaleSteps(graph.order.length);
    plan.cells.forEach((cell, index) => {
      const { content } = cell;
      if (content.kind === 'number' || content.kind === 'code') this.setValue(index, content.value);
    });
    this.work = graph.order.map((cell) => cellWork(cell, plan, this.state));
    this.recalculate();
  }

  setValue(cell: number, value: number | string): void {
    const raw = typeof value === 'string' ? this.state.codes.numberOf(value) : value;
    if (raw === this.state.raw[cell]) return;
    this.state.raw[cell] = raw;
    this.moved.push(cell);
    this.markReaders(cell);
  }

  recalculate(): readonly number[] {
    const { state, order, work, stale, moved } = this;
    this.moved = [];
    for (let step = stale.next(); step !== -1; step = stale.next()) {
      const cell = order[step] ?? 0;
      const before = state.raw[cell];
      const value = work[step]?.() ?? Number.NaN;
      state.raw[cell] = value;
      if (Number.isNaN(value)) state.failures[cell] = state.failure;
      // A failure never equals itself: its readers look again, since it may begin elsewhere now.
      if (value === before) continue;
      moved.push(cell);
      this.markReaders(cell);
    }
    return moved;
  }

  value(cell: number): CellValue {
    const planned = this.plan.cells[cell];
    if (planned === undefined) throw new Error(`The plan has no cell ${cell}`);
    if (planned.content.kind === 'operator') return 0;
    const { raw, failures } = this.state;
    return cellReading(raw[cell] ?? Number.NaN, planned.type, this.state, cell, failures[cell]);
  }

  values(): CellValue[] {
    return this.plan.cells.map((_, cell) => this.value(cell));
  }

  private markReaders(cell: number): void {
    const readers = this.readers[cell] ?? [];
    for (let at = 0; at < readers.length; at += 1) this.stale.mark(readers[at] ?? 0);
  }
}
