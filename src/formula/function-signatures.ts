import { didYouMean } from '../units/nearest-word.ts';
import { isPoint, multiplyUnits, one, parseUnit, rootOfUnit, type Unit } from '../units/unit.ts';
import { alikeArms, chosenArm, type Refuse } from './arms.ts';
import type { Checked, FunctionName, ValueType } from './checked-tree.ts';
import { nearestName } from './nearest-name.ts';
import { faulty, fits, isZero, numberIn, plainNumber, truth, typeWords } from './value-type.ts';

export interface FunctionSignature {
  readonly least: number;
  readonly most: number;
  /** Whether a whole column may, must or may never be the argument at this place (from 0). */
  column(place: number): 'may' | 'must' | 'never';
  /** The type of the answer; refuses arguments on the way. */
  answer(args: readonly Checked[], refuse: Refuse): ValueType;
  /** In words, what the arguments after the first `least` come in pairs of. */
  readonly pairs?: string;
}

const many = 30;
/** A choice has at most 100 options. */
const mostSwitched = 201;
const never = (): 'never' => 'never';
const may = (): 'may' => 'may';
const must = (): 'must' => 'must';

const serialDay = unitNamed('date');

export const functionSignatures: Readonly<Record<FunctionName, FunctionSignature>> = {
  IF: { least: 3, most: 3, column: never, answer: conditional },
  SWITCH: {
    least: 3,
    most: mostSwitched,
    pairs: 'a choice, and then a code and its arm',
    column: never,
    answer: chosenArm,
  },
  AND: { least: 1, most: many, column: never, answer: (args, refuse) => conditions(args, refuse) },
  OR: { least: 1, most: many, column: never, answer: (args, refuse) => conditions(args, refuse) },
  NOT: { least: 1, most: 1, column: never, answer: (args, refuse) => conditions(args, refuse) },
  ABS: { least: 1, most: 1, column: never, answer: size },
  SQRT: { least: 1, most: 1, column: never, answer: root },
  EXP: plain(1),
  LN: plain(1),
  PI: plain(0),
  SIN: plain(1),
  COS: plain(1),
  ACOS: plain(1),
  ROUND: { least: 2, most: 2, column: never, answer: roundedFirst },
  ROUNDUP: { least: 2, most: 2, column: never, answer: roundedFirst },
  ROUNDDOWN: { least: 2, most: 2, column: never, answer: roundedFirst },
  INT: { least: 1, most: 1, column: never, answer: sameAsFirst },
  DATE: { ...plain(3), answer: plainThen(numberIn(serialDay)) },
  WEEKDAY: { least: 1, most: 2, column: never, answer: weekday },
  SUM: { least: 1, most: many, column: may, answer: (args, refuse) => alike(args, refuse, 'points refused') },
  MIN: { least: 1, most: many, column: may, answer: (args, refuse) => alike(args, refuse) },
  MAX: { least: 1, most: many, column: may, answer: (args, refuse) => alike(args, refuse) },
  AVERAGE: { least: 1, most: many, column: may, answer: (args, refuse) => alike(args, refuse) },
  COUNT: { least: 1, most: many, column: may, answer: counted },
  SUMPRODUCT: { least: 2, most: many, column: must, answer: productOfColumns },
  SUMIFS: {
    least: 3,
    most: 31,
    pairs: 'a column and its criterion',
    column: (place) => (place % 2 === 0 && place > 0 ? 'never' : 'must'),
    answer: sumWhere,
  },
  COUNTIFS: {
    least: 2,
    most: many,
    pairs: 'a column and its criterion',
    column: (place) => (place % 2 === 0 ? 'must' : 'never'),
    answer: countWhere,
  },
  INDEX: { least: 2, most: 3, column: (place) => (place === 0 ? 'must' : 'never'), answer: atRow },
  MATCH: { least: 3, most: 3, column: (place) => (place === 1 ? 'must' : 'never'), answer: placeOf },
};

function unitNamed(text: string): Unit {
  const read = parseUnit(text);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.unit;
}

function plain(count: number): FunctionSignature {
  return {
    least: count,
    most: count,
    column: never,
    answer: plainThen(plainNumber),
  };
}

/** Takes plain numbers and gives a value of one type. */
function plainThen(type: ValueType): FunctionSignature['answer'] {
  return (args, refuse) => {
    for (const argument of args) wantPlain(argument, refuse);
    return type;
  };
}

function wantPlain(argument: Checked, refuse: Refuse): void {
  if (!fits(argument, one)) refuse(argument, `A plain number is wanted here, not ${typeWords(argument.type)}.`);
}

function wantNumber(argument: Checked, refuse: Refuse): Unit | undefined {
  if (argument.type.kind === 'number') return argument.type.unit;
  if (argument.type.kind !== 'faulty') refuse(argument, `A number is wanted here, not ${typeWords(argument.type)}.`);
  return undefined;
}

function conditions(args: readonly Checked[], refuse: Refuse): ValueType {
  for (const argument of args) wantTruth(argument, refuse);
  return truth;
}

function wantTruth(argument: Checked, refuse: Refuse): void {
  if (argument.type.kind === 'truth' || argument.type.kind === 'faulty') return;
  const hint = argument.type.kind === 'number' ? ' Compare it, as in … = 1.' : '';
  refuse(argument, `A condition is wanted here, not ${typeWords(argument.type)}.${hint}`);
}

function conditional(args: readonly Checked[], refuse: Refuse): ValueType {
  const [condition, yes, no] = args;
  if (condition === undefined || yes === undefined || no === undefined) return faulty;
  wantTruth(condition, refuse);
  return alikeArms([yes, no], refuse, 'Both arms of IF');
}

function sameAsFirst(args: readonly Checked[], refuse: Refuse): ValueType {
  const [first] = args;
  if (first === undefined) return faulty;
  const unit = wantNumber(first, refuse);
  return unit === undefined ? faulty : numberIn(unit);
}

function size(args: readonly Checked[], refuse: Refuse): ValueType {
  const [first] = args;
  const type = sameAsFirst(args, refuse);
  if (first === undefined || type.kind !== 'number' || !isPoint(type.unit)) return type;
  refuse(first, `${typeWords(type)} is a point on a scale and has no size.`);
  return faulty;
}

function roundedFirst(args: readonly Checked[], refuse: Refuse): ValueType {
  const [, digits] = args;
  if (digits !== undefined) wantPlain(digits, refuse);
  return sameAsFirst(args, refuse);
}

function root(args: readonly Checked[], refuse: Refuse): ValueType {
  const [first] = args;
  const unit = first && wantNumber(first, refuse);
  if (first === undefined || unit === undefined) return faulty;
  const half = isPoint(unit) ? undefined : rootOfUnit(unit);
  if (half === undefined) refuse(first, `There is no square root of ${typeWords(first.type)}.`);
  return half === undefined ? faulty : numberIn(half);
}

function weekday(args: readonly Checked[], refuse: Refuse): ValueType {
  const [day, start] = args;
  if (day !== undefined && !fits(day, serialDay)) refuse(day, `A date is wanted here, not ${typeWords(day.type)}.`);
  if (start !== undefined) wantPlain(start, refuse);
  return plainNumber;
}

/** All arguments in one unit; zeros take the unit of the rest. */
function alike(args: readonly Checked[], refuse: Refuse, points?: 'points refused'): ValueType {
  const units = args.map((argument) => wantNumber(argument, refuse));
  if (units.includes(undefined)) return faulty;
  const leader = args.findIndex((argument) => !isZero(argument));
  const unit = units[Math.max(0, leader)];
  if (unit === undefined) return faulty;
  for (const argument of args) {
    if (points && isPoint(unit)) refuse(argument, `${typeWords(argument.type)} cannot be added up.`);
    else if (!fits(argument, unit))
      refuse(argument, `${typeWords(numberIn(unit))} is wanted here, not ${typeWords(argument.type)}.`);
  }
  return numberIn(unit);
}

function counted(args: readonly Checked[], refuse: Refuse): ValueType {
  alike(args, refuse);
  return plainNumber;
}

function productOfColumns(args: readonly Checked[], refuse: Refuse): ValueType {
  sameTable(args, refuse);
  let unit: Unit = one;
  for (const argument of args) {
    const next = wantNumber(argument, refuse);
    if (next === undefined) return faulty;
    if (isPoint(next)) refuse(argument, `${typeWords(argument.type)} cannot be multiplied.`);
    else unit = multiplyUnits(unit, next);
  }
  return numberIn(unit);
}

function sumWhere(args: readonly Checked[], refuse: Refuse): ValueType {
  const [summed, ...pairs] = args;
  if (summed === undefined) return faulty;
  criteria(pairs, refuse);
  sameTable(
    args.filter((argument) => argument.kind === 'range'),
    refuse,
  );
  return alike([summed], refuse, 'points refused');
}

function countWhere(args: readonly Checked[], refuse: Refuse): ValueType {
  criteria(args, refuse);
  sameTable(
    args.filter((argument) => argument.kind === 'range'),
    refuse,
  );
  return plainNumber;
}

function criteria(pairs: readonly Checked[], refuse: Refuse): void {
  for (let place = 0; place + 1 < pairs.length; place += 2) {
    const [column, criterion] = [pairs[place], pairs[place + 1]];
    if (column !== undefined && criterion !== undefined) wantComparable(criterion, column, refuse);
  }
}

/** The columns must have equally many rows, which only columns of one table surely have. */
function sameTable(columns: readonly Checked[], refuse: Refuse): void {
  const [first] = columns;
  for (const column of columns) {
    if (first?.kind !== 'range' || column.kind !== 'range') continue;
    if (column.table !== first.table || column.rows !== first.rows)
      refuse(column, 'All columns here must be of one table.');
  }
}

function atRow(args: readonly Checked[], refuse: Refuse): ValueType {
  const [column, row, across] = args;
  if (column === undefined || row === undefined) return faulty;
  wantPlain(row, refuse);
  if (across !== undefined && !(across.kind === 'number' && across.value === 1))
    refuse(across, 'A column is one wide: 1 is wanted here.');
  return column.type;
}

function placeOf(args: readonly Checked[], refuse: Refuse): ValueType {
  const [sought, column, kind] = args;
  if (sought === undefined || column === undefined || kind === undefined) return faulty;
  if (!(kind.kind === 'number' && kind.value === 0)) refuse(kind, 'MATCH looks for an equal value: 0 is wanted here.');
  wantComparable(sought, column, refuse);
  return plainNumber;
}

/** Refuses a comparison of two values that are not of one kind and unit, or of a code with codes it is not among. */
export function wantComparable(value: Checked, other: Checked, refuse: Refuse): void {
  const [a, b] = [value.type, other.type];
  if (a.kind === 'faulty' || b.kind === 'faulty') return;
  if (a.kind === 'code' && b.kind === 'code') {
    if (a.codes && b.codes && !a.codes.some((code) => b.codes?.includes(code)))
      refuse(value, other.kind === 'code' ? neverAmong(b.codes, a.codes) : neverAmong(a.codes, b.codes));
    return;
  }
  if (a.kind === 'number' && b.kind === 'number' && (fits(value, b.unit) || fits(other, a.unit))) return;
  refuse(value, `${typeWords(a)} cannot be compared with ${typeWords(b)}.`);
}

function neverAmong(codes: readonly string[], known: readonly string[]): string {
  const [code = ''] = codes;
  const near = codes.length === 1 ? nearestName(code, known) : undefined;
  return `“${codes.join('”, “')}” ${codes.length === 1 ? 'is' : 'are'} never among ${known.join(', ')}.${didYouMean(near)}`;
}
