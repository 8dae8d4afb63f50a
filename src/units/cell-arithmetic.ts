/**
 * The arithmetic both evaluators share: HyperFormula 3.5.0's own, step for step, so that closures give the same bits.
 */

/** A sum or difference this much smaller than its left operand is read as 0. */
const nothing = 1e-13;
const tolerance = 1 + 1e-13;

export function add(left: number, right: number): number {
  const sum = left + right;
  return Math.abs(sum) < nothing * Math.abs(left) ? 0 : sum;
}

export function subtract(left: number, right: number): number {
  const difference = left - right;
  return Math.abs(difference) < nothing * Math.abs(left) ? 0 : difference;
}

/** Negative, 0 or positive as left is less than, equal to (within 1e-13 of its size) or more than right. */
export function compareNumbers(left: number, right: number): number {
  if (right >= 0 && left * tolerance >= right && left <= right * tolerance) return 0;
  if (right <= 0 && left * tolerance <= right && left >= right * tolerance) return 0;
  return left > right ? 1 : -1;
}
