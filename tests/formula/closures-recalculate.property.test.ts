import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CellPlan, CellValue } from '../../src/formula/cells.ts';
import { closuresOf } from '../../src/formula/closures.ts';
import { priced } from '../helpers/priced-floor.ts';
import { printedSeed } from '../helpers/random-seed.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';

const seed = printedSeed('closures recalculate');

/** The plan with other numbers in its entries, to be worked out from nothing. */
function withNumbers(plan: CellPlan, numbers: ReadonlyMap<number, number>): CellPlan {
  const cells = plan.cells.map((cell, at) => {
    const value = numbers.get(at);
    return value === undefined ? cell : { ...cell, content: { kind: 'number', value } as const };
  });
  return { ...plan, cells };
}

function same(left: CellValue, right: CellValue | undefined): boolean {
  if (typeof left !== 'object' || typeof right !== 'object') return Object.is(left, right);
  return left.kind === right.kind && left.origin === right.origin;
}

describe('recalculating closures', () => {
  it.each(shippedSystems)('%s: entries moved one to three at a time give what the whole gives', (system) => {
    const { plan, graph } = priced(system).option;
    const entries = plan.cells.flatMap(({ content }, cell) => (content.kind === 'number' ? [cell] : []));
    expect(entries.length).toBeGreaterThan(100);
    // 0 makes cells fail, and a later number mends them.
    const move = fc.tuple(fc.constantFrom(...entries), fc.constantFrom(0, 0.5, 1, 3, 250));
    const moves = fc.array(fc.array(move, { minLength: 1, maxLength: 3 }), { minLength: 10, maxLength: 10 });
    fc.assert(
      fc.property(moves, (batches) => {
        const closures = closuresOf(plan, graph);
        const numbers = new Map<number, number>();
        for (const batch of batches) {
          for (const [cell, value] of batch) {
            closures.setValue(cell, value);
            numbers.set(cell, value);
          }
          closures.recalculate();
          const [moved, whole] = [closures.values(), closuresOf(withNumbers(plan, numbers), graph).values()];
          expect(moved).toHaveLength(whole.length);
          expect(whole.flatMap((value, cell) => (same(value, moved[cell]) ? [] : { cell, value }))).toEqual([]);
        }
      }),
      { seed, numRuns: 8 },
    );
  });
});
