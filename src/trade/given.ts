import { compareNumbers } from '../units/cell-arithmetic.ts';

/** A number, or how it failed: whatever object stands for that where the numbers come from, passed on as it came. */
export type Given = number | object;

export type FailureKind = 'division' | 'notFound' | 'undefined';

/** A failure that begins here, in one result of one task (counted from 0). */
export class BegunHere {
  readonly kind: FailureKind;
  readonly task: number;
  readonly result: string;

  constructor(kind: FailureKind, task: number, result: string) {
    this.kind = kind;
    this.task = task;
    this.result = result;
  }
}

/** Leaves the working out of a number for the failure it meets. */
class Met {
  readonly failure: object;
  constructor(failure: object) {
    this.failure = failure;
  }
}

class Begins {
  readonly kind: FailureKind;
  constructor(kind: FailureKind) {
    this.kind = kind;
  }
}

/** The number that is given; where there is none, what is being worked out fails as it did. */
export function known(given: Given): number {
  if (typeof given === 'number') return given;
  throw new Met(given);
}

/** What is being worked out has no answer. */
export function fails(kind: FailureKind): never {
  throw new Begins(kind);
}

export function quotient(dividend: number, divisor: number): number {
  return divisor === 0 ? fails('division') : dividend / divisor;
}

/** The number that `work` gives, or how it fails: `task` and `result` say where, should the failure begin there. */
export function worked(task: number, result: string, work: () => number): Given {
  const given = told(task, result, work);
  if (typeof given === 'object') return given;
  return Number.isFinite(given) ? given + 0 : new BegunHere('undefined', task, result);
}

/** What `work` tells, or how it fails. */
export function told<Told extends number | string>(task: number, result: string, work: () => Told): Told | object {
  try {
    return work();
  } catch (failure) {
    if (failure instanceof Met) return failure.failure;
    if (failure instanceof Begins) return new BegunHere(failure.kind, task, result);
    throw failure;
  }
}

/** Yes, as sheets write it. */
export function isOne(given: Given): boolean {
  return compareNumbers(known(given), 1) === 0;
}

export function isZero(given: Given): boolean {
  return compareNumbers(known(given), 0) === 0;
}
