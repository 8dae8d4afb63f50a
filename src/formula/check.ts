import {
  differenceUnit,
  divideUnits,
  isPoint,
  multiplyUnits,
  one,
  powerOfUnit,
  sameUnit,
  type Unit,
} from '../units/unit.ts';
import { columnName } from './cell-name.ts';
import { type Checked, type FunctionName, functionNames, type ValueType } from './checked-tree.ts';
import { isCode } from './code-text.ts';
import { type FormulaFault, inTellingOrder } from './fault.ts';
import { functionSignatures, wantComparable } from './function-signatures.ts';
import { nearestName as nearest } from './nearest-name.ts';
import { faultyNode, type NameResolver, resolverOf } from './resolve-name.ts';
import type { Scope } from './scope.ts';
import type { Expression, Span } from './tree.ts';
import { faulty, fits, isZero, numberIn, truth, typeWords } from './value-type.ts';

export interface CheckedFormula {
  readonly tree: Checked;
  /** Empty when the formula may be used. */
  readonly faults: readonly FormulaFault[];
}

/**
 * Resolves the names of a formula and checks its types and units. All faults of the formula come at once, in the order
 * in which they are told.
 */
export function checkFormula(expression: Expression, scope: Scope): CheckedFormula {
  const faults: FormulaFault[] = [];
  const report = (fault: FormulaFault): void => {
    faults.push(fault);
  };
  const checker = new Checker(resolverOf(scope, report), report);
  const tree = checker.value(expression);
  return { tree, faults: inTellingOrder(faults) };
}

class Checker {
  private readonly names: NameResolver;
  private readonly report: (fault: FormulaFault) => void;

  constructor(names: NameResolver, report: (fault: FormulaFault) => void) {
    this.names = names;
    this.report = report;
  }

  /** A tree that gives one value: a whole column is refused here. */
  value(expression: Expression): Checked {
    const tree = this.any(expression);
    if (tree.kind !== 'range') return tree;
    if (tree.type.kind === 'faulty') return faultyNode(expression.span);
    const written = tree.rows === 'above' ? `above(${tree.column})` : columnName(tree.table, tree.column);
    const hint =
      tree.type.kind === 'number' ? `Did you mean SUM(${written})?` : `Look one up with INDEX(${written}, …).`;
    return this.refuse('column', expression.span, `“${written}” is a whole column, not one value. ${hint}`);
  }

  private any(expression: Expression): Checked {
    switch (expression.kind) {
      case 'number':
        return { ...expression, type: numberIn(one) };
      case 'text':
        return this.code(expression.value, expression.span);
      case 'name':
        return this.names.name(expression);
      case 'member':
        return this.names.member(expression);
      case 'allAbove':
        return this.names.allAbove(expression);
      case 'unary':
        return this.unary(expression);
      case 'binary':
        return this.binary(expression);
      case 'call':
        return this.call(expression);
      default:
        return expression satisfies never;
    }
  }

  private code(value: string, span: Span): Checked {
    if (isCode(value)) return { kind: 'code', value, type: { kind: 'code', codes: [value] }, span };
    return this.refuse('type', span, `“${value}” is not a code. A code is lower-case letters, digits and underscores.`);
  }

  private unary(expression: Extract<Expression, { kind: 'unary' }>): Checked {
    const operand = this.value(expression.operand);
    if (operand.type.kind === 'faulty') return faultyNode(expression.span);
    if (operand.type.kind !== 'number' || isPoint(operand.type.unit)) {
      return this.refuse('type', operand.span, `${typeWords(operand.type)} cannot take a sign.`);
    }
    return { kind: 'unary', operator: expression.operator, operand, type: operand.type, span: expression.span };
  }

  private binary(expression: Extract<Expression, { kind: 'binary' }>): Checked {
    const [left, right] = [this.value(expression.left), this.value(expression.right)];
    const type = this.binaryType(expression, left, right);
    return { kind: 'binary', operator: expression.operator, left, right, type, span: expression.span };
  }

  private binaryType(expression: Extract<Expression, { kind: 'binary' }>, left: Checked, right: Checked): ValueType {
    const { operator, span } = expression;
    if (left.type.kind === 'faulty' || right.type.kind === 'faulty') return faulty;
    switch (operator) {
      case '=':
      case '<>':
        wantComparable(left, right, (_, reason) => this.refuse('type', span, reason));
        return truth;
      case '<':
      case '<=':
      case '>':
      case '>=':
        if (left.type.kind === 'code')
          return this.refuse('type', span, 'Codes have no order; compare them with = or <>.').type;
        wantComparable(left, right, (_, reason) => this.refuse('type', span, reason));
        return truth;
      default:
        break;
    }
    if (left.type.kind !== 'number') return this.notANumber(left, operator);
    if (right.type.kind !== 'number') return this.notANumber(right, operator);
    const unit = this.arithmeticUnit(expression, left, right, left.type.unit, right.type.unit);
    return unit === undefined ? faulty : numberIn(unit);
  }

  private arithmeticUnit(
    { operator, span }: Extract<Expression, { kind: 'binary' }>,
    left: Checked,
    right: Checked,
    a: Unit,
    b: Unit,
  ): Unit | undefined {
    if (operator === '+' || operator === '-') {
      const unit = sumUnit(operator, left, right, a, b);
      if (unit !== undefined) return unit;
      const verb = operator === '+' ? 'cannot be added to' : 'cannot be taken from';
      this.refuse('type', span, `${capital(typeWords(right.type))} ${verb} ${typeWords(left.type)}.`);
      return undefined;
    }
    if (isPoint(a) || isPoint(b)) {
      this.refuse(
        'type',
        span,
        `${capital(typeWords(numberIn(isPoint(a) ? a : b)))} is a point on a scale: it can only be compared, or taken from another.`,
      );
      return undefined;
    }
    if (operator === '*') return multiplyUnits(a, b);
    if (operator === '/') return divideUnits(a, b);
    return this.powerUnit(left, right, a, b);
  }

  private powerUnit(left: Checked, right: Checked, base: Unit, exponent: Unit): Unit | undefined {
    if (!sameUnit(exponent, one)) {
      this.refuse('type', right.span, `A power is a plain number, not ${typeWords(right.type)}.`);
      return undefined;
    }
    if (sameUnit(base, one)) return base;
    const whole = wholeLiteral(right);
    if (whole === undefined)
      this.refuse('type', right.span, `${capital(typeWords(left.type))} takes only a whole number as its power.`);
    return whole === undefined ? undefined : powerOfUnit(base, whole);
  }

  private notANumber(tree: Checked, operator: string): ValueType {
    return this.refuse('type', tree.span, `“${operator}” works on numbers, and this is ${typeWords(tree.type)}.`).type;
  }

  private call({ name, args: written, span }: Extract<Expression, { kind: 'call' }>): Checked {
    if (!isFunctionName(name)) {
      const near = nearest(name, functionNames);
      const hint = near === undefined ? '' : ` Did you mean ${near}?`;
      for (const argument of written) this.any(argument);
      return this.refuse('name', span, `There is no function ${name}.${hint}`);
    }
    const signature = functionSignatures[name];
    const args = written.map((argument, place) => {
      const column = signature.column(place);
      if (column === 'never') return this.value(argument);
      const tree = this.any(argument);
      if (column === 'may' || tree.kind === 'range' || tree.type.kind === 'faulty') return tree;
      return this.refuse('column', argument.span, `${name} takes a whole column here, as in table.column.`);
    });
    const wrongCount = argumentCount(name, args.length);
    if (wrongCount !== undefined) return this.refuse('arguments', span, wrongCount);
    const before = args.some((argument) => argument.type.kind === 'faulty');
    const type = signature.answer(args, (argument, reason) => this.refuse('type', argument.span, capital(reason)));
    return { kind: 'call', name, args, type: before ? faulty : type, span };
  }

  private refuse(kind: FormulaFault['kind'], at: Span, reason: string): Checked {
    this.report({ kind, at, reason: capital(reason) });
    return faultyNode(at);
  }
}

function sumUnit(operator: '+' | '-', left: Checked, right: Checked, a: Unit, b: Unit): Unit | undefined {
  const [leftStep, rightStep] = [differenceUnit(a), differenceUnit(b)];
  if (leftStep && rightStep) return operator === '-' && sameUnit(a, b) ? leftStep : undefined;
  if (leftStep) return sameUnit(leftStep, b) || isZero(right) ? a : undefined;
  if (rightStep) return operator === '+' && (sameUnit(rightStep, a) || isZero(left)) ? b : undefined;
  if (fits(right, a)) return isZero(left) && !isZero(right) ? b : a;
  return fits(left, b) ? b : undefined;
}

function wholeLiteral(tree: Checked): number | undefined {
  if (tree.kind === 'number') return Number.isInteger(tree.value) && tree.value <= 12 ? tree.value : undefined;
  if (tree.kind !== 'unary') return undefined;
  const inner = wholeLiteral(tree.operand);
  return inner === undefined || tree.operator === '+' ? inner : -inner;
}

function isFunctionName(name: string): name is FunctionName {
  return Object.hasOwn(functionSignatures, name);
}

function argumentCount(name: FunctionName, count: number): string | undefined {
  const { least, most, pairs } = functionSignatures[name];
  if (count < least || count > most) {
    const wanted = least === most ? `${least}` : `${least} to ${most}`;
    return `${name} takes ${wanted} argument${wanted === '1' ? '' : 's'}, and ${count} are given.`;
  }
  if (pairs !== undefined && (count - least) % 2 !== 0)
    return `${name} takes ${pairs} in pairs, and ${count} arguments are given.`;
  return undefined;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
