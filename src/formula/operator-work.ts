import type { CellPlace, CellPlan, Failure } from './cells.ts';
import { type ClosureState, fail, type Work } from './closure-state.ts';
import { columnCells } from './dependencies.ts';
import { BegunFailure, type OperatorInput, type OperatorOutput, type PlannedOperator } from './operator.ts';

/** The closure of an operator's own cell: gives another number whenever one of its results is another. */
export function operatorWork(table: string, plan: CellPlan, state: ClosureState): Work {
  const operator = operatorOf(table, plan);
  const ofCodes = operator.inputs.map(([cell]) => plan.cells[cell ?? -1]?.type.kind === 'code');
  let revision = 0;
  return () => {
    const inputs = operator.inputs.map((cells, name) =>
      cells.map((cell) => inputOf(state, cell, ofCodes[name] === true)),
    );
    const outputs = operator.work(inputs);
    if (!isSame(outputs, state.outputs.get(table) ?? [])) revision += 1;
    state.outputs.set(table, outputs);
    return revision;
  };
}

/** The closure of a result: what the operator of its table gave for its column and row. */
export function resultWork(place: CellPlace, plan: CellPlan, state: ClosureState): Work {
  if (place.kind !== 'cell') throw new Error(`${place.name} is a line, and no operator gives it`);
  const { table, row } = place;
  const operator = operatorOf(table, plan);
  const column = operator.results.indexOf(place.column);
  return () => {
    const output = state.outputs.get(table)?.[column]?.[row];
    if (typeof output === 'number') return output;
    if (typeof output === 'string') return state.codes.numberOf(output);
    if (output instanceof BegunFailure) {
      const cells = columnCells(table, operator.results[output.column] ?? place.column, plan);
      return fail(state, output.kind, cells[output.row] ?? -1);
    }
    state.failure = output !== undefined && isFailure(output) ? output : undefined;
    return Number.NaN;
  };
}

function operatorOf(table: string, plan: CellPlan): PlannedOperator {
  const operator = plan.operators.get(table);
  if (operator === undefined) throw new Error(`The table ${table} has no operator`);
  return operator;
}

function inputOf(state: ClosureState, cell: number, isCode: boolean): OperatorInput {
  const raw = state.raw[cell] ?? Number.NaN;
  if (Number.isNaN(raw)) return state.failures[cell] ?? { kind: 'undefined', origin: cell };
  return isCode ? state.codes.codeOf(raw) : raw;
}

function isFailure(output: object): output is Failure {
  return 'kind' in output && 'origin' in output;
}

type Outputs = readonly (readonly OperatorOutput[])[];

/** A failure counts as another each time, since it may begin elsewhere now. */
function isSame(outputs: Outputs, before: Outputs): boolean {
  return outputs.every((column, at) =>
    column.every((output, row) => typeof output !== 'object' && output === before[at]?.[row]),
  );
}
