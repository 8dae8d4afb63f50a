/**
 * The tree a formula is read into. Every node keeps the span of source text it came from, so that a message can point
 * and a rename can substitute text without reprinting the rest.
 */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export type BinaryOperator = '+' | '-' | '*' | '/' | '^' | '=' | '<>' | '<' | '<=' | '>' | '>=';
export type UnaryOperator = '-' | '+';

export type Expression =
  | { readonly kind: 'number'; readonly value: number; readonly span: Span }
  | { readonly kind: 'text'; readonly value: string; readonly span: Span }
  | { readonly kind: 'name'; readonly name: string; readonly span: Span }
  /** `left.right`: a whole column, a product's field, or `above.column`. */
  | { readonly kind: 'member'; readonly of: string; readonly member: string; readonly span: Span }
  /** `above(column)`: all rows above. */
  | { readonly kind: 'allAbove'; readonly column: string; readonly span: Span }
  | { readonly kind: 'unary'; readonly operator: UnaryOperator; readonly operand: Expression; readonly span: Span }
  | {
      readonly kind: 'binary';
      readonly operator: BinaryOperator;
      readonly left: Expression;
      readonly right: Expression;
      readonly span: Span;
    }
  | { readonly kind: 'call'; readonly name: string; readonly args: readonly Expression[]; readonly span: Span };

/** How tightly an operator binds; a larger number binds tighter. All binary operators associate to the left. */
export const precedence: Readonly<Record<BinaryOperator, number>> = {
  '=': 1,
  '<>': 1,
  '<': 1,
  '<=': 1,
  '>': 1,
  '>=': 1,
  '+': 2,
  '-': 2,
  '*': 3,
  '/': 3,
  '^': 4,
};

/** Unary minus binds tighter than `^`, as OpenFormula has it: `-2^2` is 4. */
export const unaryPrecedence = 5;

/** The formulas limits of the language; checked while reading. */
export const formulaLimits = { characters: 2000, levels: 60, nodes: 400 } as const;
