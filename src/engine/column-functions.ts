import {
  CellError,
  EmptyValue,
  ErrorType,
  FunctionPlugin,
  type ImplementedFunctions,
  SimpleRangeValue,
} from 'hyperformula';
import { wholePart } from '../units/decimal-rounding.ts';
import type { CallNode, State, Value } from './plugin-types.ts';

/** A cell's value, or a scalar argument's. */
type Scalar = Exclude<Value, SimpleRangeValue>;

interface Condition {
  readonly column: readonly Scalar[];
  readonly criterion: Scalar;
}

/**
 * SUMIFS, COUNTIFS, MATCH and INDEX in place of HyperFormula's own. Those cannot be kept: SUMIFS and COUNTIFS answer
 * from a stale cache after some edits (tests/engine/workbook.test.ts has one), INDEX(column, 2.5) is the first
 * row, and a failed cell is skipped in a column of two rows but not of one. Here a failed cell that the answer depends
 * on is the answer.
 */
export class ColumnFunctions extends FunctionPlugin {
  static override implementedFunctions: ImplementedFunctions = {
    SUMIFS: { method: 'sumIfs' },
    COUNTIFS: { method: 'countIfs' },
    MATCH: { method: 'match' },
    INDEX: { method: 'index' },
  };

  sumIfs(call: CallNode, state: State): Value {
    const [values = [], ...rest] = call.args.map((arg) => this.column(this.evaluateAst(arg, state)));
    const conditions = conditionsOf(rest);
    if (conditions instanceof CellError) return conditions;
    if (conditions.some(({ column }) => column.length !== values.length)) return unequalColumns();
    let sum = 0;
    for (const row of this.rowsMeeting(conditions)) {
      if (row instanceof CellError) return row;
      const value = values[row];
      if (value instanceof CellError) return value;
      const number = numberIn(value);
      if (number !== undefined) sum = this.arithmeticHelper.addWithEpsilonRaw(sum, number);
    }
    return sum;
  }

  countIfs(call: CallNode, state: State): Value {
    const conditions = conditionsOf(call.args.map((arg) => this.column(this.evaluateAst(arg, state))));
    if (conditions instanceof CellError) return conditions;
    if (conditions.some(({ column }) => column.length !== conditions[0]?.column.length)) return unequalColumns();
    let count = 0;
    for (const row of this.rowsMeeting(conditions)) {
      if (row instanceof CellError) return row;
      count += 1;
    }
    return count;
  }

  match(call: CallNode, state: State): Value {
    const [key, column] = this.twoArguments(call, state);
    if (key[0] instanceof CellError) return key[0];
    const wanted = plain(key[0]);
    for (const [row, cell] of column.entries()) {
      if (cell instanceof CellError) return cell;
      if (cell !== EmptyValue && plain(cell) === wanted) return row + 1;
    }
    return new CellError(ErrorType.NA);
  }

  index(call: CallNode, state: State): Value {
    const [column, row] = this.twoArguments(call, state);
    if (row[0] instanceof CellError) return row[0];
    if (column[0] === EmptyValue) return new CellError(ErrorType.NA);
    const number = numberIn(row[0]);
    if (number === undefined) return new CellError(ErrorType.VALUE);
    return column[wholePart(number) - 1] ?? new CellError(ErrorType.REF);
  }

  private twoArguments(call: CallNode, state: State): readonly [readonly Scalar[], readonly Scalar[]] {
    const [first = [], second = []] = call.args.map((arg) => this.column(this.evaluateAst(arg, state)));
    return [first, second];
  }

  /** HyperFormula hands a range of one cell over as that cell's value. */
  private column(value: Value): readonly Scalar[] {
    return value instanceof SimpleRangeValue ? value.valuesFromTopLeftCorner() : [value];
  }

  /** The rows that meet all conditions, from the top; a failed condition cell ends them. */
  private *rowsMeeting(conditions: readonly Condition[]): Generator<number | CellError> {
    const rows = conditions[0]?.column.length ?? 0;
    for (let row = 0; row < rows; row += 1) {
      const met = this.meetsAll(conditions, row);
      if (met instanceof CellError) {
        yield met;
        return;
      }
      if (met) yield row;
    }
  }

  private meetsAll(conditions: readonly Condition[], row: number): boolean | CellError {
    for (const { column, criterion } of conditions) {
      const cell = column[row];
      if (cell instanceof CellError) return cell;
      if (cell === undefined || !this.equal(cell, criterion)) return false;
    }
    return true;
  }

  private equal(cell: Scalar, criterion: Scalar): boolean {
    const left = numberIn(cell);
    const right = numberIn(criterion);
    if (left !== undefined && right !== undefined) return this.arithmeticHelper.floatCmp(left, right) === 0;
    return cell !== EmptyValue && cell === criterion;
  }
}

function conditionsOf(args: readonly (readonly Scalar[])[]): readonly Condition[] | CellError {
  const conditions: Condition[] = [];
  for (let i = 0; i + 1 < args.length; i += 2) {
    const criterion = args[i + 1]?.[0];
    if (criterion instanceof CellError) return criterion;
    if (criterion !== undefined) conditions.push({ column: args[i] ?? [], criterion });
  }
  return conditions;
}

function unequalColumns(): CellError {
  return new CellError(ErrorType.VALUE, 'Columns of unequal length.');
}

/** The number in a value; a date's is inside an object. */
function numberIn(value: Scalar | undefined): number | undefined {
  if (typeof value === 'number') return value;
  return typeof value === 'object' && 'val' in value ? value.val : undefined;
}

function plain(value: Scalar | undefined): Scalar | undefined {
  return numberIn(value) ?? value;
}
