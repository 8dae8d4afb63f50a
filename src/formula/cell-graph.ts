import type { CellPlan } from './cells.ts';
import { cellsFeeding, isWorkedOut } from './dependencies.ts';

/** Which cell reads which, and an order in which all can be worked out. */
export type CellGraph =
  | {
      readonly kind: 'graph';
      /** Cells that are worked out, each after all it reads. */
      readonly order: readonly number[];
      /** For each cell, the cells it is worked out from. */
      readonly reads: readonly (readonly number[])[];
      /** For each cell, the cells that are worked out from it. */
      readonly readBy: readonly (readonly number[])[];
    }
  /** The cells of one cycle, each read by the one before it, first and last the same. */
  | { readonly kind: 'cycle'; readonly path: readonly number[] };

export function graphOf(plan: CellPlan): CellGraph {
  const reads = plan.cells.map((cell) => cellsFeeding(cell, plan));
  const walk = new DepthFirst(reads);
  const order: number[] = [];
  for (let start = 0; start < plan.cells.length; start += 1) {
    const cycle = walk.from(start, (done) => {
      const cell = plan.cells[done];
      if (cell !== undefined && isWorkedOut(cell)) order.push(done);
    });
    if (cycle !== undefined) return { kind: 'cycle', path: cycle };
  }
  return { kind: 'graph', order, reads, readBy: turnedRound(reads) };
}

function turnedRound(reads: readonly (readonly number[])[]): number[][] {
  const readBy: number[][] = reads.map(() => []);
  reads.forEach((sources, reader) => {
    for (const source of sources) readBy[source]?.push(reader);
  });
  return readBy;
}

/** Depth-first search with its own stack, so that a long chain of cells cannot exhaust the call stack. */
class DepthFirst {
  private readonly reads: readonly (readonly number[])[];
  private readonly state: Uint8Array;

  constructor(reads: readonly (readonly number[])[]) {
    this.reads = reads;
    this.state = new Uint8Array(reads.length);
  }

  /** Visits all that `start` leads to, telling `done` of each after all it reads; gives the path of a cycle if there is one. */
  from(start: number, done: (cell: number) => void): number[] | undefined {
    if (this.state[start] !== 0) return undefined;
    const path = [{ cell: start, next: 0 }];
    this.state[start] = 1;
    for (let top = path.at(-1); top !== undefined; top = path.at(-1)) {
      const source = this.reads[top.cell]?.[top.next];
      top.next += 1;
      if (source === undefined) {
        this.state[top.cell] = 2;
        done(top.cell);
        path.pop();
      } else if (this.state[source] === 1) {
        const begin = path.findIndex((step) => step.cell === source);
        return [...path.slice(begin).map((step) => step.cell), source];
      } else if (this.state[source] === 0) {
        this.state[source] = 1;
        path.push({ cell: source, next: 0 });
      }
    }
    return undefined;
  }
}
