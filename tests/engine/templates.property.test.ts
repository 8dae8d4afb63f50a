import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { openWorkbook } from '../../src/engine/workbook.ts';
import type { CellPlan, CellValue } from '../../src/formula/cells.ts';
import { closuresOf } from '../../src/formula/closures.ts';
import { type OptionPlan, planOption } from '../../src/template/plan.ts';
import { printedSeed } from '../helpers/random-seed.ts';
import { shippedStack, shippedSystems } from '../helpers/shipped-stacks.ts';
import { type Change, randomQuote } from './random-quote.ts';

// Every cell of every shipped template, by both evaluators, on random quotes.
const seed = printedSeed('templates.property');
/** Together 96, spread over the systems. */
const quotes = 2 * Math.ceil(48 / shippedSystems.length);

const fraction = fc.double({ min: 0, max: 1, noNaN: true });
const change: fc.Arbitrary<Change> = fc.record({
  kind: fc.constantFrom('line', 'line', 'cell', 'cell', 'cell', 'row', 'product'),
  which: fraction,
  part: fraction,
  to: fraction,
});
const changes = fc.array(change, { minLength: 30, maxLength: 90, size: 'max' });
const entered: fc.Arbitrary<Change> = fc.record({
  kind: fc.constantFrom('entry', 'entryCell', 'entryCell', 'product'),
  which: fraction,
  part: fraction,
  to: fraction,
});
const moves = fc.array(entered, { minLength: 20, maxLength: 60, size: 'max' });

describe('closures against the engine in the shipped templates', () => {
  const seen = { cells: 0, failures: new Map<string, number>() };

  it.each(shippedSystems)(`agree in every cell of ${quotes} random quotes of %s`, (system) => {
    const { stack, products } = shippedStack(system);
    fc.assert(
      fc.property(changes, moves, (list, more) => {
        const option = planOf(list);
        const closures = closuresOf(option.plan, option.graph);
        const workbook = openWorkbook(option.plan);
        expectAgreement(option.plan, closures.values(), workbook.values());
        // Reading its formulas is nearly all of the engine's work: a second quote differs in numbers and choices alone.
        const moved = valuesMoved(option.plan, planOf([...list, ...more]).plan);
        workbook.setValues(moved);
        for (const [cell, value] of moved) closures.setValue(cell, value);
        closures.recalculate();
        expectAgreement(option.plan, closures.values(), workbook.values());
        workbook.close();
      }),
      { seed, numRuns: quotes / 2 },
    );

    function planOf(list: readonly Change[]): OptionPlan {
      const quote = randomQuote(stack, products, list);
      const option = planOption(stack, quote.entries, quote.products);
      expect(option.faults).toEqual([]);
      return option;
    }
  });

  function expectAgreement(plan: CellPlan, closures: readonly CellValue[], engine: readonly CellValue[]): void {
    expect(closures).toHaveLength(plan.cells.length);
    for (const [cell, value] of closures.entries()) {
      if (!same(value, engine[cell])) {
        const { place } = plan.cells[cell] ?? {};
        expect({ place, closures: value }).toEqual({ place, closures: engine[cell] });
      }
      note(value);
    }
  }

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

/** What stands in cells of the second plan and not of the first, which has the same cells and formulas. */
function valuesMoved(first: CellPlan, second: CellPlan): Map<number, number | string> {
  const kinds = ({ cells }: CellPlan) => cells.map(({ content }) => content.kind);
  expect(kinds(second)).toEqual(kinds(first));
  return new Map(
    second.cells.flatMap(({ content }, cell) => {
      const before = first.cells[cell]?.content;
      if (!('value' in content) || !before || !('value' in before) || content.value === before.value) return [];
      return [[cell, content.value] as const];
    }),
  );
}

/** NaN-free and bit for bit, failures by kind and origin. */
function same(left: CellValue, right: CellValue | undefined): boolean {
  if (typeof left !== 'object' || typeof right !== 'object') return Object.is(left, right);
  return left.kind === right.kind && left.origin === right.origin;
}
