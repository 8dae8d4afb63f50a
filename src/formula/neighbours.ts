import type { CellGraph } from './cell-graph.ts';
import type { CellPlan } from './cells.ts';
import { columnCells } from './dependencies.ts';
import type { PlannedOperator } from './operator.ts';

/** Cells from which one is made, and those that it goes into. */
export interface Neighbours {
  readonly from: readonly number[];
  readonly into: readonly number[];
}

/**
 * The neighbours of a cell as people see them: an operator is no cell of theirs. A result is made from what its own row and the
 * lines give the operator; what a row gives goes into the results of that row, and anything else into the first of each row's.
 */
export function neighboursOf(cell: number, plan: CellPlan, graph: CellGraph): Neighbours {
  if (graph.kind === 'cycle') return { from: [], into: [] };
  const operators = new Map([...plan.operators].map(([table, operator]) => [operator.cell, { table, operator }]));
  const from = (graph.reads[cell] ?? []).flatMap((source) => {
    const found = operators.get(source);
    return found === undefined ? [source] : readFor(cell, found.table, found.operator, plan);
  });
  const into = (graph.readBy[cell] ?? []).flatMap((reader) => {
    const found = operators.get(reader);
    return found === undefined ? [reader] : givenFrom(cell, found.table, found.operator, plan);
  });
  return { from, into };
}

function readFor(result: number, table: string, operator: PlannedOperator, plan: CellPlan): number[] {
  const row = rowIn(table, result, plan);
  const inputs = operator.inputs.flat();
  const own = inputs.filter((cell) => row !== undefined && rowIn(table, cell, plan) === row);
  return [...own, ...inputs.filter((cell) => plan.cells[cell]?.place.kind === 'line')];
}

function givenFrom(input: number, table: string, operator: PlannedOperator, plan: CellPlan): number[] {
  const row = rowIn(table, input, plan);
  const columns = operator.results.map((column) => columnCells(table, column, plan));
  return row === undefined ? [...(columns[0] ?? [])] : columns.flatMap((cells) => cells[row] ?? []);
}

function rowIn(table: string, cell: number, plan: CellPlan): number | undefined {
  const place = plan.cells[cell]?.place;
  return place?.kind === 'cell' && place.table === table ? place.row : undefined;
}
