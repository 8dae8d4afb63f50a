import { describe, expect, it } from 'vitest';
import { parseFormula } from '../../src/formula/parser.ts';
import type { Expression } from '../../src/formula/tree.ts';
import { treeOf } from '../helpers/formula-scope.ts';

/** The tree with every operation in brackets. */
function bracketed(tree: Expression): string {
  switch (tree.kind) {
    case 'number':
      return String(tree.value);
    case 'text':
      return `"${tree.value}"`;
    case 'name':
      return tree.name;
    case 'member':
      return `${tree.of}.${tree.member}`;
    case 'allAbove':
      return `above(${tree.column})`;
    case 'unary':
      return `(${tree.operator}${bracketed(tree.operand)})`;
    case 'binary':
      return `(${bracketed(tree.left)}${tree.operator}${bracketed(tree.right)})`;
    case 'call':
      return `${tree.name}(${tree.args.map(bracketed).join(',')})`;
    default:
      return tree satisfies never;
  }
}

describe('operators bind', () => {
  it.each([
    ['-2^2', '((-2)^2)'],
    ['2^-1', '(2^(-1))'],
    ['2^3^2', '((2^3)^2)'],
    ['10-3-2', '((10-3)-2)'],
    ['12/3/2', '((12/3)/2)'],
    ['1+2*3', '(1+(2*3))'],
    ['(1+2)*3', '((1+2)*3)'],
    ['a+b=c*d', '((a+b)=(c*d))'],
    ['1<2=3', '((1<2)=3)'],
    ['- -a', '(-(-a))'],
    ['2*-a^2', '(2*((-a)^2))'],
    ['+a-+b', '((+a)-(+b))'],
  ])('%s as %s', (source, wanted) => {
    expect(bracketed(treeOf(source))).toBe(wanted);
  });
});

describe('names, columns and calls', () => {
  it.each([
    ['coats.gallons', 'coats.gallons'],
    ['above.finish + 1', '(above.finish+1)'],
    ['SUM(above(finish))', 'SUM(above(finish))'],
    ['sum( coats . gallons )', 'SUM(coats.gallons)'],
    ['PI()', 'PI()'],
    ['IF(a = "rolled", 1, 0)', 'IF((a="rolled"),1,0)'],
  ])('%s', (source, wanted) => {
    expect(bracketed(treeOf(source))).toBe(wanted);
  });
});

describe('a node’s span', () => {
  it.each([
    ['(a + b) * c', '(a + b) * c'],
    ['x + -(a - b) ', 'x + -(a - b)'],
    [' SUM(coats.gallons) / (2)', 'SUM(coats.gallons) / (2)'],
  ])('covers its brackets: %j', (source, wanted) => {
    const { span } = treeOf(source);
    expect(source.slice(span.start, span.end)).toBe(wanted);
  });

  it('is that of the inner formula for what stands in brackets', () => {
    const source = '(a + b) * c';
    const tree = treeOf(source);
    const { span } = tree.kind === 'binary' ? tree.left : tree;
    expect(source.slice(span.start, span.end)).toBe('a + b');
  });
});

describe('reading says what was expected, and where', () => {
  it.each([
    ['', 0, 'A number, a name or an opening bracket was expected here, not the end.'],
    ['= 1', 0, 'A number, a name or an opening bracket was expected here, not “=”.'],
    ['a +', 3, 'A number, a name or an opening bracket was expected here, not the end.'],
    ['a b', 2, 'An operator or the end was expected here, not the name “b”.'],
    ['2 "x"', 2, 'An operator or the end was expected here, not the text “x”.'],
    ['(a + b', 0, 'The bracket opened here is not closed.'],
    ['a)', 1, 'An operator or the end was expected here, not “)”.'],
    ['SUM(a, b', 0, 'The arguments begun here are not closed by a bracket.'],
    ['SUM(a b)', 6, 'An operator, a comma or “)” was expected here, not the name “b”.'],
    ['SUM(a,)', 6, 'A number, a name or an opening bracket was expected here, not “)”.'],
    ['coats.', 6, 'The name of a column or field was expected after “coats.”.'],
    ['coats.2', 5, 'An operator or the end was expected here, not the number 0.2.'],
    ['above()', 0, 'above( ) takes the name of one column of this table.'],
    ['above(a + b)', 0, 'above( ) takes the name of one column of this table.'],
  ])('%j at %i', (source, at, reason) => {
    expect(parseFormula(source)).toMatchObject({
      kind: 'fault',
      fault: { kind: 'reading', at: { start: at }, reason },
    });
  });
});

describe('limits', () => {
  it.each([
    ['brackets', (levels: number) => `${'('.repeat(levels - 1)}1${')'.repeat(levels - 1)}`],
    ['signs', (levels: number) => `${'-'.repeat(levels - 1)}1`],
    ['calls', (levels: number) => `${'ABS('.repeat(levels - 1)}1${')'.repeat(levels - 1)}`],
  ])('60 levels of %s are read and 61 are not', (_, nested) => {
    expect(parseFormula(nested(60)).kind).toBe('tree');
    expect(parseFormula(nested(61))).toMatchObject({ kind: 'fault', fault: { kind: 'limit' } });
  });

  it('400 nodes are read and 401 are not', () => {
    const sum = (terms: number) => Array.from({ length: terms }, () => '1').join('+');
    expect(parseFormula(`-${sum(200)}`).kind).toBe('tree');
    expect(parseFormula(`--${sum(200)}`)).toMatchObject({ kind: 'fault', fault: { kind: 'limit' } });
  });
});
