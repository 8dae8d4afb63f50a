import { add, compareNumbers, subtract } from '../units/cell-arithmetic.ts';
import { columnName } from './cell-name.ts';
import { productKey, productTable } from './cells.ts';
import type { Checked } from './checked-tree.ts';
import type { Bench } from './closure-bench.ts';
import { functionWork } from './closure-functions.ts';
import { type ClosureState, fail, readCell, type Work } from './closure-state.ts';
import { cellIn, columnCells, lineCell } from './dependencies.ts';

/** Builds the closure of a checked tree standing at `place` in the cell `cell`, where failures of its own begin. */
export function workOf(tree: Checked, at: Omit<Bench, 'build'>): Work {
  const bench: Bench = { ...at, build: (part) => build(part, bench) };
  return build(tree, bench);
}

function build(tree: Checked, bench: Bench): Work {
  const { plan, state } = bench;
  switch (tree.kind) {
    case 'number':
      return constant(tree.value);
    case 'code':
      return constant(state.codes.numberOf(tree.value));
    case 'line':
      return reading(state, lineCell(tree.name, plan));
    case 'cell':
      return reading(state, cellIn(tree, bench.place, plan));
    case 'range':
      throw new Error(`${columnName(tree.table, tree.column)} stands where one value is wanted`);
    case 'productField':
      return fieldWork(tree, bench);
    case 'unary': {
      const operand = bench.build(tree.operand);
      return tree.operator === '+' ? operand : () => 0 - operand();
    }
    case 'binary':
      return binaryWork(tree, bench);
    case 'call':
      return functionWork(tree, bench);
    default:
      return tree satisfies never;
  }
}

function constant(value: number): Work {
  return () => value;
}

function reading(state: ClosureState, cell: number): Work {
  return () => readCell(state, cell);
}

function fieldWork(tree: Extract<Checked, { kind: 'productField' }>, bench: Bench): Work {
  const { state, cell } = bench;
  const product = bench.build(tree.product);
  const keys = columnCells(productTable, productKey, bench.plan);
  const fields = columnCells(productTable, tree.field, bench.plan);
  return () => {
    const code = product();
    if (Number.isNaN(code)) return code;
    for (let row = 0; row < keys.length; row += 1) {
      if (state.raw[keys[row] ?? -1] === code) return readCell(state, fields[row] ?? -1);
    }
    return fail(state, 'notFound', cell);
  };
}

function binaryWork(tree: Extract<Checked, { kind: 'binary' }>, bench: Bench): Work {
  const left = bench.build(tree.left);
  const right = bench.build(tree.right);
  const { state, cell } = bench;
  /** Runs both sides, the left one's failure first, and fails where the answer is not a finite number. */
  const both =
    (answer: (a: number, b: number) => number): Work =>
    () => {
      const a = left();
      if (Number.isNaN(a)) return a;
      const b = right();
      if (Number.isNaN(b)) return b;
      const result = answer(a, b);
      return Number.isFinite(result) ? result + 0 : fail(state, 'undefined', cell);
    };
  switch (tree.operator) {
    case '+':
      return sumWork(left, right, bench);
    case '-':
      return differenceWork(left, right, bench);
    case '*':
      return productWork(left, right, bench);
    case '/':
      return divisionWork(left, right, bench);
    case '^':
      return both((a, b) => a ** b);
    default:
      return both(comparison(tree.operator, tree.left.type.kind === 'code'));
  }
}

// Spelt out, one closure an operator: calling the operator through a shared closure took a tenth of a repricing.

function sumWork(left: Work, right: Work, { state, cell }: Bench): Work {
  return () => {
    const a = left();
    if (Number.isNaN(a)) return a;
    const b = right();
    if (Number.isNaN(b)) return b;
    const sum = add(a, b);
    return Number.isFinite(sum) ? sum + 0 : fail(state, 'undefined', cell);
  };
}

function differenceWork(left: Work, right: Work, { state, cell }: Bench): Work {
  return () => {
    const a = left();
    if (Number.isNaN(a)) return a;
    const b = right();
    if (Number.isNaN(b)) return b;
    const difference = subtract(a, b);
    return Number.isFinite(difference) ? difference + 0 : fail(state, 'undefined', cell);
  };
}

function productWork(left: Work, right: Work, { state, cell }: Bench): Work {
  return () => {
    const a = left();
    if (Number.isNaN(a)) return a;
    const b = right();
    if (Number.isNaN(b)) return b;
    const product = a * b;
    return Number.isFinite(product) ? product + 0 : fail(state, 'undefined', cell);
  };
}

function divisionWork(left: Work, right: Work, { state, cell }: Bench): Work {
  return () => {
    const a = left();
    if (Number.isNaN(a)) return a;
    const b = right();
    if (Number.isNaN(b)) return b;
    if (b === 0) return fail(state, 'division', cell);
    const quotient = a / b;
    return Number.isFinite(quotient) ? quotient + 0 : fail(state, 'undefined', cell);
  };
}

type Comparison = '=' | '<>' | '<' | '<=' | '>' | '>=';

function comparison(operator: Comparison, ofCodes: boolean): (a: number, b: number) => number {
  if (ofCodes) return operator === '=' ? (a, b) => (a === b ? 1 : 0) : (a, b) => (a === b ? 0 : 1);
  switch (operator) {
    case '=':
      return (a, b) => (compareNumbers(a, b) === 0 ? 1 : 0);
    case '<>':
      return (a, b) => (compareNumbers(a, b) === 0 ? 0 : 1);
    case '<':
      return (a, b) => (compareNumbers(a, b) < 0 ? 1 : 0);
    case '<=':
      return (a, b) => (compareNumbers(a, b) <= 0 ? 1 : 0);
    case '>':
      return (a, b) => (compareNumbers(a, b) > 0 ? 1 : 0);
    case '>=':
      return (a, b) => (compareNumbers(a, b) >= 0 ? 1 : 0);
    default:
      return operator satisfies never;
  }
}
