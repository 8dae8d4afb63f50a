import { roundDownTo, roundTo, roundUpTo, wholePart } from '../units/decimal-rounding.ts';
import { serialDayOf, weekdayOf } from './calendar.ts';
import type { Checked, FunctionName } from './checked-tree.ts';
import type { Bench } from './closure-bench.ts';
import { average, columnsOf, count, extreme, lookUp, place, productSum, sum, sumWhere } from './closure-columns.ts';
import { fail, type Work } from './closure-state.ts';

type Call = Extract<Checked, { kind: 'call' }>;

/** Functions of numbers alone. */
const ofNumbers: Readonly<Partial<Record<FunctionName, (a: number, b: number, c: number) => number>>> = {
  NOT: (a) => 1 - a,
  ABS: Math.abs,
  SQRT: Math.sqrt,
  EXP: Math.exp,
  LN: Math.log,
  SIN: Math.sin,
  COS: Math.cos,
  ACOS: Math.acos,
  ROUND: roundTo,
  ROUNDUP: roundUpTo,
  ROUNDDOWN: roundDownTo,
  INT: wholePart,
  DATE: serialDayOf,
  WEEKDAY: weekdayOf,
};

/** Builds the closure of a function call. */
export function functionWork(call: Call, bench: Bench): Work {
  const answer = ofNumbers[call.name];
  if (answer !== undefined) return applied(call, bench, answer);
  switch (call.name) {
    case 'IF':
      return conditional(scalars(call, bench));
    case 'SWITCH':
      return chosen(call, bench);
    case 'AND':
      return junction(scalars(call, bench), 0);
    case 'OR':
      return junction(scalars(call, bench), 1);
    case 'PI':
      return () => Math.PI;
    default:
      return columnFunction(call, bench);
  }
}

function columnFunction(call: Call, bench: Bench): Work {
  const columns = columnsOf(call.args, bench);
  switch (call.name) {
    case 'SUM':
      return sum(columns, bench);
    case 'MIN':
      return extreme(columns, bench, Math.min);
    case 'MAX':
      return extreme(columns, bench, Math.max);
    case 'COUNT':
      return count(columns, bench);
    case 'AVERAGE':
      return average(columns, bench);
    case 'SUMPRODUCT':
      return productSum(columns, bench);
    case 'SUMIFS':
      return sumWhere(columns[0], columns.slice(1), call.args.slice(1), bench);
    case 'COUNTIFS':
      return sumWhere(undefined, columns, call.args, bench);
    case 'INDEX':
      return lookUp(columns, bench);
    case 'MATCH':
      return place(columns, bench);
    default:
      throw new Error(`No closure is known for ${call.name}`);
  }
}

function scalars(call: Call, bench: Bench): Work[] {
  return call.args.map((argument) => bench.build(argument));
}

function conditional([condition, yes, no]: readonly Work[]): Work {
  if (!condition || !yes || !no) throw new Error('IF without its three arguments');
  return () => {
    const holds = condition();
    if (Number.isNaN(holds)) return holds;
    return holds === 1 ? yes() : no();
  };
}

function chosen({ args }: Call, bench: Bench): Work {
  const [choice, ...pairs] = args;
  if (choice === undefined) throw new Error('SWITCH without a choice');
  const { state, cell } = bench;
  const byCode = bench.build(choice);
  const arms = new Map<number, Work>();
  for (let place = 0; place + 1 < pairs.length; place += 2) {
    const [code, arm] = [pairs[place], pairs[place + 1]];
    if (code?.kind === 'code' && arm !== undefined) arms.set(state.codes.numberOf(code.value), bench.build(arm));
  }
  return () => {
    const code = byCode();
    if (Number.isNaN(code)) return code;
    return arms.get(code)?.() ?? fail(state, 'notFound', cell);
  };
}

/** AND and OR: all arguments are worked out, and the first that failed is the answer. */
function junction(args: readonly Work[], deciding: 0 | 1): Work {
  return () => {
    let answer: number = 1 - deciding;
    for (const argument of args) {
      const holds = argument();
      if (Number.isNaN(holds)) return holds;
      if (holds === deciding) answer = deciding;
    }
    return answer;
  };
}

/** A function of numbers: the first argument that failed is the answer; what is not a finite number fails here. */
function applied(call: Call, bench: Bench, answer: (a: number, b: number, c: number) => number): Work {
  const [first, second, third] = scalars(call, bench);
  if (first === undefined) throw new Error(`${call.name} without an argument`);
  const { state, cell } = bench;
  const finish = (result: number): number => (Number.isFinite(result) ? result + 0 : fail(state, 'undefined', cell));
  if (second === undefined) {
    const single = answer as (a: number) => number;
    return () => {
      const a = first();
      return Number.isNaN(a) ? a : finish(single(a));
    };
  }
  return () => {
    const a = first();
    if (Number.isNaN(a)) return a;
    const b = second();
    if (Number.isNaN(b)) return b;
    const c = third === undefined ? 0 : third();
    return Number.isNaN(c) ? c : finish(answer(a, b, c));
  };
}
