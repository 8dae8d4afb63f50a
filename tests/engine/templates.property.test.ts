import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { openWorkbook } from '../../src/engine/workbook.ts';
import type { CellValue } from '../../src/formula/cells.ts';
import { closuresOf } from '../../src/formula/closures.ts';
import { planOption } from '../../src/template/plan.ts';
import { printedSeed } from '../helpers/random-seed.ts';
import { shippedStack, shippedSystems } from '../helpers/shipped-stacks.ts';
import { type Change, randomQuote } from './random-quote.ts';

// Every cell of every shipped template, by both evaluators, on random quotes.
const seed = printedSeed('templates.property');
/** Together 96, spread over the systems. */
const quotes = Math.ceil(96 / shippedSystems.length);

const fraction = fc.double({ min: 0, max: 1, noNaN: true });
const change: fc.Arbitrary<Change> = fc.record({
  kind: fc.constantFrom('line', 'line', 'cell', 'cell', 'cell', 'row', 'product'),
  which: fraction,
  part: fraction,
  to: fraction,
});
const changes = fc.array(change, { minLength: 30, maxLength: 90, size: 'max' });

describe('closures against the engine in the shipped templates', () => {
  const seen = { cells: 0, failures: new Map<string, number>() };

  it.each(shippedSystems)(`agree in every cell of ${quotes} random quotes of %s`, (system) => {
    const { stack, products } = shippedStack(system);
    fc.assert(
      fc.property(changes, (list) => {
        const quote = randomQuote(stack, products, list);
        const option = planOption(stack, quote.entries, quote.products);
        expect(option.faults).toEqual([]);
        const closures = closuresOf(option.plan, option.graph).values();
        const workbook = openWorkbook(option.plan);
        const engine = workbook.values();
        workbook.close();
        expect(closures).toHaveLength(option.plan.cells.length);
        for (const [cell, value] of closures.entries()) {
          if (!same(value, engine[cell])) {
            const { place } = option.plan.cells[cell] ?? {};
            expect({ place, closures: value }).toEqual({ place, closures: engine[cell] });
          }
          note(value);
        }
      }),
      { seed, numRuns: quotes },
    );
  });

  function note(value: CellValue): void {
    seen.cells += 1;
    if (typeof value === 'object') seen.failures.set(value.kind, (seen.failures.get(value.kind) ?? 0) + 1);
  }

  it('met many cells, and failed ones among them', () => {
    expect(seen.cells).toBeGreaterThan(quotes * shippedSystems.length * 500);
    expect(seen.failures.get('division') ?? 0).toBeGreaterThan(20);
  });

  afterAll(() => {
    const failures = [...seen.failures].map(([kind, count]) => `${kind} ${count}`).join(', ');
    console.info(`templates.property: ${seen.cells} cells, failed ${failures}`);
  });
});

/** NaN-free and bit for bit, failures by kind and origin. */
function same(left: CellValue, right: CellValue | undefined): boolean {
  if (typeof left !== 'object' || typeof right !== 'object') return Object.is(left, right);
  return left.kind === right.kind && left.origin === right.origin;
}
