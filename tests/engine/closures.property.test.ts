import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openWorkbook } from '../../src/engine/workbook.ts';
import { closuresOf } from '../../src/formula/closures.ts';
import { here, num, oneUp, op, planOf } from './plan-builder.ts';
import { anyNumber, numberFormula } from './random-formula.ts';

const row = (first: boolean) =>
  fc.record({
    value: anyNumber,
    key: fc.constantFrom('p', 'q'),
    formula: numberFormula(first),
    other: numberFormula(first),
  });
const quote = fc.record({
  a: anyNumber,
  b: anyNumber,
  first: row(true),
  rest: fc.array(row(false), { maxLength: 5 }),
});
type Quote = typeof quote extends fc.Arbitrary<infer T> ? T : never;

function planOfQuote({ a, b, first, rest }: Quote) {
  const rows = [first, ...rest];
  const value = here('rows', 'value');
  return planOf({
    lines: { a, b },
    tables: {
      rows: {
        value: rows.map((each) => each.value),
        key: rows.map((each) => each.key),
        over: rows.map(() => op(num(1), '/', value)),
        running: rows.map((_, i) => (i === 0 ? op(value, '+', num(0)) : op(oneUp('rows', 'running'), '+', value))),
        formula: rows.map((each) => each.formula),
        other: rows.map((each) => each.other),
      },
    },
  });
}

describe('closures against the engine', () => {
  it('give the same 15 digits, and failures of the same kind and origin, for random formulas', () => {
    fc.assert(
      fc.property(quote, (given) => {
        const plan = planOfQuote(given);
        const workbook = openWorkbook(plan);
        const closures = closuresOf(plan);
        for (const [cell, { content }] of plan.cells.entries()) {
          if (content.kind !== 'code') expect(closures.value(cell)).toStrictEqual(workbook.value(cell));
        }
        workbook.close();
      }),
      { numRuns: 500 },
    );
  });
});
