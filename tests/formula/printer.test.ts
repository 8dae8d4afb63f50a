import { describe, expect, it } from 'vitest';
import { treeOf } from '../helpers/formula-scope.ts';
import { printFormula } from './printer.ts';

describe('a formula is printed with as few brackets as keep its meaning', () => {
  it.each([
    ['((a))', 'a'],
    ['(a*b)+c', 'a * b + c'],
    ['(a+b)*c', '(a + b) * c'],
    ['a-(b-c)', 'a - (b - c)'],
    ['(a-b)-c', 'a - b - c'],
    ['a/(b*c)', 'a / (b * c)'],
    ['(2^3)^2', '2^3^2'],
    ['2^(3^2)', '2^(3^2)'],
    ['(-2)^2', '-2^2'],
    ['-(2^2)', '-(2^2)'],
    ['-(a+b)', '-(a + b)'],
    ['(a=b)=c', 'a = b = c'],
    ['if(a="x""y",coats.gallons,above.b)', 'IF(a = "x""y", coats.gallons, above.b)'],
    ['sum( above( b ) )', 'SUM(above(b))'],
    ['1e21+1e-7', '1e+21 + 1e-7'],
  ])('%s as %s', (source, wanted) => {
    expect(printFormula(treeOf(source))).toBe(wanted);
  });
});
