import {
  ArraySize,
  CellError,
  ErrorType,
  FunctionPlugin,
  type ImplementedFunctions,
  SimpleRangeValue,
} from 'hyperformula';
import type { FailureKind } from '../formula/failure-kind.ts';
import { BegunFailure, type OperatorInput, type OperatorOutput } from '../formula/operator.ts';
import { scheduleContract } from '../template/schedule-operator.ts';
import type { CallNode, State, Value } from './plugin-types.ts';

/** A cell's value, or a scalar argument's. */
type Scalar = Exclude<Value, SimpleRangeValue>;

const errorOf: Readonly<Record<FailureKind, ErrorType>> = {
  division: ErrorType.DIV_BY_ZERO,
  notFound: ErrorType.NA,
  outside: ErrorType.REF,
  undefined: ErrorType.NUM,
};

/**
 * Operators of the language as functions that give an array: a column a result, a row a task. A failed input is passed on as the
 * error it is, so that it is told where it began.
 */
export class OperatorFunctions extends FunctionPlugin {
  static override implementedFunctions: ImplementedFunctions = {
    SCHEDULE: { method: 'schedule', sizeOfResultArrayMethod: 'scheduleSize' },
  };

  /** A name of our own is known to no language before it is told. */
  static readonly translations = { enGB: { SCHEDULE: 'SCHEDULE' } };

  schedule({ args }: CallNode, state: State): Value {
    const ranges = args.slice(0, -1).map((arg) => this.inputs(this.evaluateAst(arg, state)));
    const places = this.resultPlaces(args.at(-1), state);
    const columns = scheduleContract.work(ranges);
    const rows = columns[0]?.map((_, row) => columns.map((column) => this.output(column[row], places))) ?? [];
    return SimpleRangeValue.onlyValues(rows);
  }

  scheduleSize({ args: [tasks] }: CallNode, state: State): ArraySize {
    const { height } = tasks === undefined ? ArraySize.error() : this.arraySizeForAst(tasks, state);
    return new ArraySize(scheduleContract.gives.length, height);
  }

  /** The values of a column or a line; `""` stands for a column without rows. */
  private inputs(value: Value): OperatorInput[] {
    if (value === '') return [];
    const scalars = value instanceof SimpleRangeValue ? value.valuesFromTopLeftCorner() : [value];
    return scalars.map((scalar) => inputOf(scalar));
  }

  private output(output: OperatorOutput | undefined, places: ResultPlaces): Scalar {
    if (typeof output === 'number' || typeof output === 'string' || output instanceof CellError) return output;
    if (!(output instanceof BegunFailure)) throw new Error('An operator gave what is no value');
    const place = { sheet: places.sheet, col: places.columns[output.column] ?? 0, row: output.row };
    const begun = this.dependencyGraph.getCell(place);
    return new CellError(errorOf[output.kind], undefined, isFormula(begun) ? begun : undefined);
  }

  private resultPlaces(text: CallNode['args'][number] | undefined, state: State): ResultPlaces {
    const value = text === undefined ? '' : this.evaluateAst(text, state);
    const [sheet = '', columns = ''] = typeof value === 'string' ? value.split(':') : [];
    return { sheet: Number(sheet), columns: columns.split(',').map(Number) };
  }
}

/** Where the results of an operator stand, as HyperFormula counts: failures that begin in them are told there. */
interface ResultPlaces {
  readonly sheet: number;
  readonly columns: readonly number[];
}

type Vertex = ConstructorParameters<typeof CellError>[2];

function isFormula(vertex: object | undefined): vertex is Vertex {
  return vertex !== undefined && 'cellAddress' in vertex;
}

function inputOf(value: unknown): OperatorInput {
  if (typeof value === 'number' || typeof value === 'string' || value instanceof CellError) return value;
  if (typeof value === 'object' && value !== null && 'val' in value && typeof value.val === 'number') return value.val;
  throw new Error('An operator reads a cell that holds no value');
}
