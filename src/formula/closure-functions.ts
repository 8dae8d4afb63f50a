import { roundDownTo, roundTo, roundUpTo, wholePart } from '../units/decimal-rounding.ts';
import { serialDayOf, weekdayOf } from './calendar.ts';
import type { Checked } from './checked-tree.ts';
import type { Bench } from './closure-bench.ts';
import { average, columnsOf, count, extreme, lookUp, place, productSum, sum, sumWhere } from './closure-columns.ts';
import { fail, type Work } from './closure-state.ts';

type Call = Extract<Checked, { kind: 'call' }>;

/** Builds the closure of a function call. */
export function functionWork(call: Call, bench: Bench): Work {
  switch (call.name) {
    case 'IF':
      return conditional(scalars(call, bench));
    case 'AND':
      return junction(scalars(call, bench), 0);
    case 'OR':
      return junction(scalars(call, bench), 1);
    case 'NOT':
      return applied(call, bench, (a) => 1 - a);
    case 'ABS':
      return applied(call, bench, Math.abs);
    case 'SQRT':
      return applied(call, bench, Math.sqrt);
    case 'EXP':
      return applied(call, bench, Math.exp);
    case 'LN':
      return applied(call, bench, Math.log);
    case 'PI':
      return () => Math.PI;
    case 'SIN':
      return applied(call, bench, Math.sin);
    case 'COS':
      return applied(call, bench, Math.cos);
    case 'ACOS':
      return applied(call, bench, Math.acos);
    case 'ROUND':
      return applied(call, bench, roundTo);
    case 'ROUNDUP':
      return applied(call, bench, roundUpTo);
    case 'ROUNDDOWN':
      return applied(call, bench, roundDownTo);
    case 'INT':
      return applied(call, bench, wholePart);
    case 'DATE':
      return applied(call, bench, serialDayOf);
    case 'WEEKDAY':
      return applied(call, bench, weekdayOf);
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
