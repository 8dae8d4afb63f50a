import type { FormulaFault } from './fault.ts';
import { cutTokens, type Token } from './tokens.ts';
import { type BinaryOperator, type Expression, formulaLimits, precedence, type Span } from './tree.ts';

export type ParseResult =
  | { readonly kind: 'tree'; readonly tree: Expression }
  | { readonly kind: 'fault'; readonly fault: FormulaFault };

/**
 * Reads a formula into a tree. `printFormula` is its inverse.
 *
 * @example parseFormula('include * quantity / rate')
 */
export function parseFormula(source: string): ParseResult {
  const cut = cutTokens(source);
  if (cut.kind === 'fault') return cut;
  try {
    return { kind: 'tree', tree: new Reader(cut.tokens).whole() };
  } catch (stop) {
    if (stop instanceof ReadingStopped) return { kind: 'fault', fault: stop.fault };
    throw stop;
  }
}

/** Unwinds the reader at the first fault; never leaves this file. */
class ReadingStopped extends Error {
  readonly fault: FormulaFault;
  constructor(fault: FormulaFault) {
    super(fault.reason);
    this.fault = fault;
  }
}

/** Precedence climbing over the tokens of one formula. */
class Reader {
  private readonly tokens: readonly Token[];
  private at = 0;
  private nodes = 0;
  private level = 0;

  constructor(tokens: readonly Token[]) {
    this.tokens = tokens;
  }

  whole(): Expression {
    const tree = this.expression(1);
    const rest = this.peek();
    if (rest.kind !== 'end') this.stop(rest.span, `An operator or the end was expected here, not ${spoken(rest)}.`);
    return tree;
  }

  private expression(loosest: number): Expression {
    this.enter();
    const { start } = this.peek().span;
    let left = this.signed();
    for (;;) {
      const operator = this.binaryOperator();
      if (operator === undefined || precedence[operator] < loosest) break;
      this.at += 1;
      const right = this.expression(precedence[operator] + 1);
      left = this.node({ kind: 'binary', operator, left, right, span: this.from(start) });
    }
    this.level -= 1;
    return left;
  }

  private signed(): Expression {
    const token = this.peek();
    if (token.kind !== 'mark' || (token.mark !== '-' && token.mark !== '+')) return this.operand();
    this.enter();
    this.at += 1;
    const operand = this.signed();
    this.level -= 1;
    return this.node({ kind: 'unary', operator: token.mark, operand, span: this.from(token.span.start) });
  }

  private operand(): Expression {
    const token = this.next();
    if (token.kind === 'number') return this.node({ kind: 'number', value: token.value, span: token.span });
    if (token.kind === 'text') return this.node({ kind: 'text', value: token.value, span: token.span });
    if (token.kind === 'name') return this.named(token.name, token.span);
    if (token.kind === 'mark' && token.mark === '(') {
      const inner = this.expression(1);
      this.expect(')', 'The bracket opened here is not closed.', token.span);
      return inner;
    }
    return this.stop(token.span, `A number, a name or an opening bracket was expected here, not ${spoken(token)}.`);
  }

  private named(name: string, span: Span): Expression {
    if (this.takes('.')) {
      const member = this.next();
      if (member.kind !== 'name')
        this.stop(member.span, `The name of a column or field was expected after “${name}.”.`);
      else return this.node({ kind: 'member', of: name, member: member.name, span: this.from(span.start) });
    }
    if (!this.takes('(')) return this.node({ kind: 'name', name, span });
    const args = this.arguments(span);
    const whole = this.from(span.start);
    if (name !== 'above') return this.node({ kind: 'call', name: name.toUpperCase(), args, span: whole });
    const [column] = args;
    if (args.length === 1 && column?.kind === 'name') {
      return this.node({ kind: 'allAbove', column: column.name, span: whole });
    }
    return this.stop(whole, 'above( ) takes the name of one column of this table.');
  }

  private arguments(opened: Span): Expression[] {
    const args: Expression[] = [];
    if (this.takes(')')) return args;
    do args.push(this.expression(1));
    while (this.takes(','));
    this.expect(')', 'The arguments begun here are not closed by a bracket.', opened);
    return args;
  }

  private binaryOperator(): BinaryOperator | undefined {
    const token = this.peek();
    return token.kind === 'mark' && isBinaryOperator(token.mark) ? token.mark : undefined;
  }

  private takes(mark: string): boolean {
    const token = this.peek();
    if (token.kind !== 'mark' || token.mark !== mark) return false;
    this.at += 1;
    return true;
  }

  private expect(mark: string, otherwise: string, opened: Span): void {
    if (this.takes(mark)) return;
    const token = this.peek();
    if (token.kind === 'end') this.stop(opened, otherwise);
    this.stop(token.span, `An operator, a comma or “${mark}” was expected here, not ${spoken(token)}.`);
  }

  private node(node: Expression): Expression {
    this.nodes += 1;
    if (this.nodes > formulaLimits.nodes) {
      this.stop(
        node.span,
        `The formula has more than ${formulaLimits.nodes} parts. Put some in lines of their own.`,
        'limit',
      );
    }
    return node;
  }

  private enter(): void {
    this.level += 1;
    if (this.level > formulaLimits.levels) {
      this.stop(this.peek().span, `The formula is nested deeper than ${formulaLimits.levels} levels.`, 'limit');
    }
  }

  private peek(): Token {
    return this.tokens[this.at] ?? { kind: 'end', span: { start: 0, end: 0 } };
  }

  private next(): Token {
    const token = this.peek();
    if (token.kind !== 'end') this.at += 1;
    return token;
  }

  /** From `start` to the end of the token last read, brackets with it. */
  private from(start: number): Span {
    return { start, end: this.tokens[this.at - 1]?.span.end ?? start };
  }

  private stop(at: Span, reason: string, kind: FormulaFault['kind'] = 'reading'): never {
    throw new ReadingStopped({ kind, at, reason });
  }
}

function isBinaryOperator(mark: string): mark is BinaryOperator {
  return Object.hasOwn(precedence, mark);
}

function spoken(token: Token): string {
  switch (token.kind) {
    case 'number':
      return `the number ${token.value}`;
    case 'text':
      return `the text “${token.value}”`;
    case 'name':
      return `the name “${token.name}”`;
    case 'mark':
      return `“${token.mark}”`;
    case 'end':
      return 'the end';
    default:
      return token satisfies never;
  }
}
