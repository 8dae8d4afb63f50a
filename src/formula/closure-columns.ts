import { add, compareNumbers } from '../units/cell-arithmetic.ts';
import { wholePart } from '../units/decimal-rounding.ts';
import type { Checked } from './checked-tree.ts';
import type { Bench } from './closure-bench.ts';
import { type ClosureState, fail, readCell, type Work } from './closure-state.ts';
import { cellsInRange } from './dependencies.ts';

/** An argument of a function that takes columns: a column's cells, or one value. */
export type Argument =
  | { readonly kind: 'column'; readonly cells: readonly number[] }
  | { readonly kind: 'value'; readonly work: Work };

export function columnsOf(args: readonly Checked[], bench: Bench): Argument[] {
  return args.map((argument) =>
    argument.kind === 'range'
      ? { kind: 'column', cells: cellsInRange(argument, bench.place, bench.plan) }
      : { kind: 'value', work: bench.build(argument) },
  );
}

function finished(value: number, { state, cell }: Bench): number {
  return Number.isFinite(value) ? value + 0 : fail(state, 'undefined', cell);
}

/** Adds left to right; a column is summed by itself first and stands left of what came before, as in the engine. */
export function sum(args: readonly Argument[], bench: Bench): Work {
  const { state } = bench;
  return () => {
    let total = 0;
    for (const argument of args) {
      if (argument.kind === 'value') {
        const value = argument.work();
        if (Number.isNaN(value)) return value;
        total = add(total, value);
        continue;
      }
      let own = 0;
      for (const cell of argument.cells) {
        const value = readCell(state, cell);
        if (Number.isNaN(value)) return value;
        own = add(own, value);
      }
      total = add(own, total);
    }
    return finished(total, bench);
  };
}

/** MIN and MAX; of nothing 0. */
export function extreme(args: readonly Argument[], { state }: Bench, pick: (a: number, b: number) => number): Work {
  return () => {
    let found: number | undefined;
    for (const argument of args) {
      if (argument.kind === 'value') {
        const value = argument.work();
        if (Number.isNaN(value)) return value;
        found = found === undefined ? value : pick(found, value);
        continue;
      }
      for (const cell of argument.cells) {
        const value = readCell(state, cell);
        if (Number.isNaN(value)) return value;
        found = found === undefined ? value : pick(found, value);
      }
    }
    return found ?? 0;
  };
}

/** How many numbers there are; a failed one does not count, and does not fail the count. */
export function count(args: readonly Argument[], { state }: Bench): Work {
  return () => {
    let counted = 0;
    for (const argument of args) {
      const values =
        argument.kind === 'value' ? [argument.work()] : argument.cells.map((cell) => readCell(state, cell));
      counted += values.filter((value) => !Number.isNaN(value)).length;
    }
    return counted;
  };
}

/** The plain sum over the count: unlike SUM it reads no small difference as 0, as in the engine. */
export function average(args: readonly Argument[], bench: Bench): Work {
  const { state, cell } = bench;
  if (args.every((argument) => argument.kind === 'column' && argument.cells.length === 0)) {
    return () => fail(state, 'notFound', cell);
  }
  return () => {
    let total = 0;
    let counted = 0;
    for (const argument of args) {
      let own = 0;
      const failed = eachValue(argument, bench, (value) => {
        own += value;
        counted += 1;
      });
      if (failed) return Number.NaN;
      total = own + total;
    }
    return counted === 0 ? fail(state, 'division', cell) : finished(total / counted, bench);
  };
}

/** Sees each value of an argument in order; true, with the failure set, as soon as one failed. */
function eachValue(argument: Argument, { state }: Bench, see: (value: number) => void): boolean {
  if (argument.kind === 'value') {
    const value = argument.work();
    if (!Number.isNaN(value)) see(value);
    return Number.isNaN(value);
  }
  for (const cell of argument.cells) {
    const value = readCell(state, cell);
    if (Number.isNaN(value)) return true;
    see(value);
  }
  return false;
}

export function productSum(args: readonly Argument[], bench: Bench): Work {
  const columns = args.map(cellsOf);
  const rows = columns[0]?.length ?? 0;
  return () => {
    let total = 0;
    for (let row = 0; row < rows; row += 1) {
      let product = 1;
      for (const column of columns) {
        const value = readCell(bench.state, column[row] ?? -1);
        if (Number.isNaN(value)) return value;
        product *= value;
      }
      total += product;
    }
    return finished(total, bench);
  };
}

/** SUMIFS over `summed`, or COUNTIFS when that is undefined. `pairs` are column, criterion, column, criterion, … */
export function sumWhere(
  summed: Argument | undefined,
  pairs: readonly Argument[],
  written: readonly Checked[],
  bench: Bench,
): Work {
  const { state } = bench;
  const values = summed === undefined ? undefined : cellsOf(summed);
  const conditions = pairs.flatMap((pair, place): Condition[] =>
    place % 2 === 0
      ? [{ cells: cellsOf(pair), criterion: workIn(pairs[place + 1]), ofCodes: written[place]?.type.kind === 'code' }]
      : [],
  );
  const rows = conditions[0]?.cells.length ?? 0;
  // Counted, here and below, for this is the innermost loop of a repricing and iterators are slow in it.
  const sought = new Array<number>(conditions.length).fill(0);
  return () => {
    for (let place = 0; place < conditions.length; place += 1) {
      const criterion = conditions[place]?.criterion() ?? 0;
      if (Number.isNaN(criterion)) return criterion;
      sought[place] = criterion;
    }
    let total = 0;
    for (let row = 0; row < rows; row += 1) {
      const met = meetsAll(state, conditions, sought, row);
      if (Number.isNaN(met)) return met;
      if (met === 0) continue;
      const value = values === undefined ? 1 : readCell(state, values[row] ?? -1);
      if (Number.isNaN(value)) return value;
      total = add(total, value);
    }
    return finished(total, bench);
  };
}

interface Condition {
  readonly cells: readonly number[];
  readonly criterion: Work;
  readonly ofCodes: boolean;
}

/** 1 when a row meets all conditions, 0 when not, NaN when a cell that decides it failed. */
function meetsAll(
  state: ClosureState,
  conditions: readonly Condition[],
  sought: readonly number[],
  row: number,
): number {
  for (let place = 0; place < conditions.length; place += 1) {
    const condition = conditions[place];
    if (condition === undefined) continue;
    const value = readCell(state, condition.cells[row] ?? -1);
    if (Number.isNaN(value)) return value;
    const wanted = sought[place] ?? 0;
    if (condition.ofCodes ? value !== wanted : compareNumbers(value, wanted) !== 0) return 0;
  }
  return 1;
}

/** INDEX: the cell in a row of a column; a row that is no whole number is read as the whole number below it. */
export function lookUp([column, row]: readonly Argument[], { state, cell }: Bench): Work {
  const cells = column === undefined ? [] : cellsOf(column);
  const work = workIn(row);
  return () => {
    const wanted = work();
    if (Number.isNaN(wanted)) return wanted;
    if (cells.length === 0) return fail(state, 'notFound', cell);
    const found = cells[wholePart(wanted) - 1];
    return found === undefined ? fail(state, 'outside', cell) : readCell(state, found);
  };
}

/** MATCH for an equal value: exactly equal, numbers too. */
export function place([sought, column]: readonly Argument[], { state, cell }: Bench): Work {
  const work = workIn(sought);
  const cells = column === undefined ? [] : cellsOf(column);
  return () => {
    const wanted = work();
    if (Number.isNaN(wanted)) return wanted;
    for (let row = 0; row < cells.length; row += 1) {
      const value = readCell(state, cells[row] ?? -1);
      if (Number.isNaN(value) || value === wanted) return Number.isNaN(value) ? value : row + 1;
    }
    return fail(state, 'notFound', cell);
  };
}

function cellsOf(argument: Argument): readonly number[] {
  if (argument.kind === 'column') return argument.cells;
  throw new Error('A column was wanted, and one value is given');
}

function workIn(argument: Argument | undefined): Work {
  if (argument?.kind === 'value') return argument.work;
  throw new Error('One value was wanted, and a column is given');
}
