import { isPoint, one, sameUnit, type Unit, unitText } from '../units/unit.ts';
import type { Checked, ValueType } from './checked-tree.ts';

export const truth: ValueType = { kind: 'truth' };
export const faulty: ValueType = { kind: 'faulty' };
export const plainNumber: ValueType = { kind: 'number', unit: one };

export function numberIn(unit: Unit): ValueType {
  return { kind: 'number', unit };
}

/** The unit of a number, `1` of anything else. */
export function unitOf(type: ValueType): Unit {
  return type.kind === 'number' ? type.unit : one;
}

/** True for a literal 0 and for what can only be 0: it fits every unit but a point. */
export function isZero(tree: Checked): boolean {
  if (tree.kind === 'number') return tree.value === 0;
  if (tree.kind === 'unary') return isZero(tree.operand);
  if (tree.kind !== 'call') return false;
  if (tree.name === 'IF') return tree.args.slice(1).every(isZero);
  return tree.name === 'SWITCH' && tree.args.slice(1).every((argument) => argument.kind === 'code' || isZero(argument));
}

/** True when a formula reads nothing: it is made of literals only and takes the unit its line declares. */
export function isLiteral(tree: Checked): boolean {
  switch (tree.kind) {
    case 'number':
    case 'code':
      return true;
    case 'line':
    case 'cell':
    case 'range':
    case 'productField':
      return false;
    case 'unary':
      return isLiteral(tree.operand);
    case 'binary':
      return isLiteral(tree.left) && isLiteral(tree.right);
    case 'call':
      return tree.args.every(isLiteral);
    default:
      return tree satisfies never;
  }
}

/** Whether the value of `tree` may stand where a number in `unit` is wanted. */
export function fits(tree: Checked, unit: Unit): boolean {
  if (tree.type.kind === 'faulty') return true;
  if (tree.type.kind !== 'number') return false;
  return sameUnit(tree.type.unit, unit) || (isZero(tree) && !isPoint(unit));
}

/** The type in words: “a number in ft2”, “a code”, “a condition”. */
export function typeWords(type: ValueType): string {
  switch (type.kind) {
    case 'number':
      return sameUnit(type.unit, one) ? 'a plain number' : `a number in ${unitText(type.unit)}`;
    case 'code':
      return type.products === undefined ? 'a code' : 'a product';
    case 'truth':
      return 'a condition';
    case 'faulty':
      return 'something already refused';
    default:
      return type satisfies never;
  }
}
