import { messages } from './messages.ts';

/** A number met while reading arithmetic. */
export interface Amount {
  readonly value: number;
  /** Power of length that its feet and inch marks give it; undefined when no mark took part. */
  readonly lengthPower?: number;
  /** The number read aloud, for the echo of a single literal: '22 ft 7 in'. */
  readonly spoken?: string;
  /** Whether an operator took part. */
  readonly worked?: boolean;
}

export type AmountResult =
  | { readonly kind: 'amount'; readonly amount: Amount }
  | { readonly kind: 'fault'; readonly reason: string };

/** A number read at a place in the text, with the place after it. */
export type LiteralResult =
  | { readonly kind: 'literal'; readonly amount: Amount; readonly end: number }
  | { readonly kind: 'fault'; readonly reason: string };

export interface ArithmeticRules {
  readonly readLiteral: (text: string, at: number) => LiteralResult;
  /** In lengths a subtraction has spaces on both sides, since 22-7 is 22 feet 7 inches. */
  readonly spacedMinus: boolean;
}

/**
 * Reads + - * / and parentheses over literals, with the usual precedence and one leading sign for each number.
 * Faults (never 0): a missing number, two numbers side by side, parentheses that do not match, division by 0, a
 * result that is too large or that vanishes. Example: '24*22+60' → 588.
 */
export function readArithmetic(text: string, rules: ArithmeticRules): AmountResult {
  const reader = new ArithmeticReader(text, rules);
  const amount = reader.readAll();
  return amount === undefined ? { kind: 'fault', reason: reader.reason } : { kind: 'amount', amount };
}

/** A recursive reader; each method answers undefined once `reason` is set. */
class ArithmeticReader {
  reason = '';
  private at = 0;

  constructor(
    private readonly text: string,
    private readonly rules: ArithmeticRules,
  ) {}

  readAll(): Amount | undefined {
    const amount = this.readSum();
    if (amount === undefined) return undefined;
    const next = this.peek();
    if (next === '') return amount;
    return this.fail(next === ')' ? messages.parenthesis : messages.twoNumbers(this.text.slice(0, this.at).trim()));
  }

  private readSum(): Amount | undefined {
    let left = this.readProduct();
    while (left !== undefined && (this.peek() === '+' || this.peek() === '-')) {
      const operator = this.peek();
      if (operator === '-' && !this.isMinusClear()) return this.fail(messages.spacedMinus);
      this.at++;
      const right = this.readProduct(operator);
      if (right === undefined) return undefined;
      left = this.add(left, right, operator === '+' ? 1 : -1);
    }
    return left;
  }

  private readProduct(after = ''): Amount | undefined {
    let left = this.readFactor(after);
    while (left !== undefined && (this.peek() === '*' || this.peek() === '/')) {
      const operator = this.peek();
      this.at++;
      const right = this.readFactor(operator, true);
      if (right === undefined) return undefined;
      left = operator === '*' ? this.multiply(left, right) : this.divide(left, right);
    }
    return left;
  }

  /** A literal or parentheses; a sign is allowed where no + or - stands before it. */
  private readFactor(after: string, signAllowed = after === ''): Amount | undefined {
    const next = this.peek();
    if (signAllowed && (next === '-' || next === '+')) {
      this.at++;
      const amount = this.readFactor(next);
      return amount === undefined || next === '+' ? amount : negate(amount);
    }
    if (next === '(') return this.readParentheses();
    if (next === '' || '+-*/)'.includes(next)) return this.fail(messages.numberExpected(this.text.slice(0, this.at)));
    const read = this.rules.readLiteral(this.text, this.at);
    if (read.kind === 'fault') return this.fail(read.reason);
    this.at = read.end;
    return read.amount;
  }

  private readParentheses(): Amount | undefined {
    this.at++;
    const inner = this.readSum();
    if (inner === undefined) return undefined;
    if (this.peek() !== ')') return this.fail(messages.parenthesis);
    this.at++;
    return inner;
  }

  private add(a: Amount, b: Amount, sign: 1 | -1): Amount | undefined {
    if (a.lengthPower !== undefined && b.lengthPower !== undefined && a.lengthPower !== b.lengthPower) {
      return this.fail(messages.unlikeLengths);
    }
    return this.result(a.value + sign * b.value, a.lengthPower ?? b.lengthPower);
  }

  private multiply(a: Amount, b: Amount): Amount | undefined {
    const value = a.value * b.value;
    if (value === 0 && a.value !== 0 && b.value !== 0) return this.fail(messages.tooSmall);
    return this.result(value, sumOfPowers(a, b, 1));
  }

  private divide(a: Amount, b: Amount): Amount | undefined {
    if (b.value === 0) return this.fail(messages.divisionByZero);
    const value = a.value / b.value;
    if (value === 0 && a.value !== 0) return this.fail(messages.tooSmall);
    return this.result(value, sumOfPowers(a, b, -1));
  }

  private result(value: number, lengthPower: number | undefined): Amount | undefined {
    if (!Number.isFinite(value)) return this.fail(messages.tooLarge);
    return lengthPower === undefined ? { value, worked: true } : { value, lengthPower, worked: true };
  }

  private isMinusClear(): boolean {
    if (!this.rules.spacedMinus) return true;
    const before = this.text[this.at - 1] ?? '';
    const after = this.text[this.at + 1] ?? '';
    return before === ')' || after === '(' || (before === ' ' && after === ' ');
  }

  /** The next sign, with the spaces before it skipped; '' at the end. */
  private peek(): string {
    while (this.text[this.at] === ' ') this.at++;
    return this.text[this.at] ?? '';
  }

  private fail(reason: string): undefined {
    this.reason = reason;
    return undefined;
  }
}

function negate(amount: Amount): Amount {
  const value = amount.value === 0 ? 0 : -amount.value;
  return amount.lengthPower === undefined ? { value } : { value, lengthPower: amount.lengthPower, worked: true };
}

function sumOfPowers(a: Amount, b: Amount, sign: 1 | -1): number | undefined {
  if (a.lengthPower === undefined && b.lengthPower === undefined) return undefined;
  return (a.lengthPower ?? 0) + sign * (b.lengthPower ?? 0);
}
