import type { Unit } from '../units/unit.ts';
import type { BinaryOperator, Span, UnaryOperator } from './tree.ts';

/**
 * What a value is. `codes` is undefined where any code may stand (a free key column); `products` names the price-list
 * kinds a product line or column accepts.
 */
export type ValueType =
  | { readonly kind: 'number'; readonly unit: Unit }
  | { readonly kind: 'code'; readonly codes?: readonly string[]; readonly products?: readonly string[] }
  | { readonly kind: 'truth' }
  /** Something already refused elsewhere; it agrees with everything so that one fault is told once. */
  | { readonly kind: 'faulty' };

/**
 * A formula whose names are resolved and whose types and units agree. This tree is the contract: HyperFormula cells,
 * closures, exported workbooks and explanations are all written from it.
 */
export type Checked =
  | { readonly kind: 'number'; readonly value: number; readonly type: ValueType; readonly span: Span }
  | { readonly kind: 'code'; readonly value: string; readonly type: ValueType; readonly span: Span }
  | { readonly kind: 'line'; readonly name: string; readonly type: ValueType; readonly span: Span }
  /** One cell of the formula's own table: in its row, or one row up. */
  | {
      readonly kind: 'cell';
      readonly table: string;
      readonly column: string;
      readonly row: 'same' | 'above';
      readonly type: ValueType;
      readonly span: Span;
    }
  /** A column: all rows of any table, or the rows above in the formula's own. `type` is that of one cell. */
  | {
      readonly kind: 'range';
      readonly table: string;
      readonly column: string;
      readonly rows: 'all' | 'above';
      readonly type: ValueType;
      readonly span: Span;
    }
  /** A field of the product that `product` names. */
  | {
      readonly kind: 'productField';
      readonly product: Extract<Checked, { kind: 'line' | 'cell' }>;
      readonly field: string;
      readonly type: ValueType;
      readonly span: Span;
    }
  | {
      readonly kind: 'unary';
      readonly operator: UnaryOperator;
      readonly operand: Checked;
      readonly type: ValueType;
      readonly span: Span;
    }
  | {
      readonly kind: 'binary';
      readonly operator: BinaryOperator;
      readonly left: Checked;
      readonly right: Checked;
      readonly type: ValueType;
      readonly span: Span;
    }
  | {
      readonly kind: 'call';
      readonly name: FunctionName;
      readonly args: readonly Checked[];
      readonly type: ValueType;
      readonly span: Span;
    };

export const functionNames = [
  'IF',
  'SWITCH',
  'AND',
  'OR',
  'NOT',
  'ABS',
  'SQRT',
  'EXP',
  'LN',
  'PI',
  'SIN',
  'COS',
  'ACOS',
  'ROUND',
  'ROUNDUP',
  'ROUNDDOWN',
  'INT',
  'DATE',
  'WEEKDAY',
  'SUM',
  'MIN',
  'MAX',
  'COUNT',
  'AVERAGE',
  'SUMPRODUCT',
  'SUMIFS',
  'COUNTIFS',
  'INDEX',
  'MATCH',
] as const;

export type FunctionName = (typeof functionNames)[number];
