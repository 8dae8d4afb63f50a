import * as formulajs from '@formulajs/formulajs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openWorkbook } from '../../src/engine/workbook.ts';
import { closuresOf } from '../../src/formula/closures.ts';
import { call, code, lineCell, num, planOf } from '../engine/plan-builder.ts';
import { printedSeed } from '../helpers/random-seed.ts';

const seed = printedSeed('choice-by-code.property');
const shapes = ['rectangle', 'circle', 'known'] as const;
const amount = fc.integer({ min: -1e6, max: 1e6 });

describe('SWITCH, against formulajs 4.6.1', () => {
  it('gives the arm behind the code that is chosen, in both evaluators', () => {
    fc.assert(
      fc.property(fc.constantFrom(...shapes), fc.tuple(amount, amount, amount), (chosen, arms) => {
        const pairs = shapes.flatMap((shape, at) => [code(shape), num(arms[at] ?? 0)]);
        const plan = planOf({ lines: { answer: call('SWITCH', code(chosen), ...pairs) } });
        const workbook = openWorkbook(plan);
        const cell = lineCell(plan, 'answer');
        const theirs = formulajs.SWITCH(chosen, ...shapes.flatMap((shape, at) => [shape, arms[at] ?? 0]));
        expect([workbook.value(cell), closuresOf(plan).value(cell)]).toEqual([theirs, theirs]);
        workbook.close();
      }),
      { seed, numRuns: 100 },
    );
  });
});
