import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseFormula } from '../../src/formula/parser.ts';
import type { BinaryOperator, Expression, UnaryOperator } from '../../src/formula/tree.ts';
import { printFormula } from './printer.ts';

const span = { start: 0, end: 0 };
const name = fc.stringMatching(/^[a-zA-Z_][a-zA-Z0-9_]{0,7}$/);
const functionName = name.map((word) => word.toUpperCase()).filter((word) => word !== 'above');
const binary = fc.constantFrom<BinaryOperator>('+', '-', '*', '/', '^', '=', '<>', '<', '<=', '>', '>=');
const number = fc.double({ min: 0, noNaN: true, noDefaultInfinity: true }).map((value) => value + 0);

const expression = fc.letrec<{ tree: Expression }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 5, depthSize: 'medium' },
    number.map((value): Expression => ({ kind: 'number', value, span })),
    fc.string({ unit: 'binary', maxLength: 8 }).map((value): Expression => ({ kind: 'text', value, span })),
    name.map((text): Expression => ({ kind: 'name', name: text, span })),
    fc.tuple(name, name).map(([of, member]): Expression => ({ kind: 'member', of, member, span })),
    name.map((column): Expression => ({ kind: 'allAbove', column, span })),
    fc
      .tuple(fc.constantFrom<UnaryOperator>('-', '+'), tie('tree'))
      .map(([operator, operand]): Expression => ({ kind: 'unary', operator, operand, span })),
    fc
      .tuple(tie('tree'), binary, tie('tree'))
      .map(([left, operator, right]): Expression => ({ kind: 'binary', operator, left, right, span })),
    fc
      .tuple(functionName, fc.array(tie('tree'), { maxLength: 4 }))
      .map(([text, args]): Expression => ({ kind: 'call', name: text, args, span })),
  ),
})).tree;

function withoutSpans(tree: Expression): unknown {
  return JSON.parse(JSON.stringify(tree, (key, value: unknown) => (key === 'span' ? undefined : value)));
}

function nodes(tree: Expression): number {
  return JSON.stringify(tree).split('"kind"').length - 1;
}

describe('a random formula', () => {
  it('reads back from what is printed', () => {
    let read = 0;
    fc.assert(
      fc.property(expression, (tree) => {
        const printed = printFormula(tree);
        fc.pre(printed.length <= 2000 && nodes(tree) <= 400);
        const parsed = parseFormula(printed);
        if (parsed.kind === 'fault') throw new Error(`${printed}\n${parsed.fault.reason}`);
        expect(withoutSpans(parsed.tree)).toEqual(withoutSpans(tree));
        read += 1;
      }),
      { numRuns: 2000 },
    );
    expect(read).toBe(2000);
  });
});
