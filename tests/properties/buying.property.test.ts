import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RowFile } from '../../src/template/line-schema.ts';
import { type PricedFloor, quicklyPriced } from '../helpers/priced-floor.ts';
import { printedSeed } from '../helpers/random-seed.ts';
import { shippedStack, shippedSystems } from '../helpers/shipped-stacks.ts';
import { someEntries } from './quote-generator.ts';

const seed = printedSeed('buying.property');
/** Together 300, spread over the systems. */
const quotes = Math.ceil(300 / shippedSystems.length);
/** Together 240: the floor sheet, the same under every system, adds up the rows. */
const splits = Math.ceil(240 / shippedSystems.length);

interface Bought {
  readonly name: string;
  readonly need: number;
  readonly small: number;
  readonly large: number;
  readonly packs: number;
  readonly largePacks: number;
}

function boughtIn(job: PricedFloor): Bought[] {
  const tables = [
    ['buy_volume', 'gallons'],
    ['buy_weight', 'pounds'],
    ['buy_count', 'pieces'],
  ] as const;
  return tables.flatMap(([table, measure]) =>
    (job.option.rows.get(table) ?? []).map(({ id }) => {
      const column = (name: string): number => job.number(`${table}.${id}.${name}`);
      return {
        name: `${table}.${id}`,
        need: column('need'),
        small: column(`pack_${measure}`),
        large: column(`large_${measure}`),
        packs: column('packs'),
        largePacks: column('large_packs'),
      };
    }),
  );
}

describe.each(shippedSystems)('%s', (system) => {
  it('buys packs that cover every need, and with one pack fewer would not', () => {
    fc.assert(
      fc.property(someEntries, (set) => {
        const all = boughtIn(quicklyPriced(system, { set }));
        expect(all.length).toBeGreaterThan(3);
        for (const { name, need, small, large, packs, largePacks } of all) {
          const held = packs * small + largePacks * large;
          expect(held, name).toBeGreaterThanOrEqual(need * (1 - 1e-13));
          if (packs > 0) expect(held - small, name).toBeLessThan(need);
          if (largePacks > 0) expect(held - large, name).toBeLessThan(need);
        }
      }),
      { seed, numRuns: quotes },
    );
  });
});

describe('two pack sizes', () => {
  const base = 'buy_volume.base_slate';

  it('cost the least there is, by trying all, when the large pack is a whole number of packs', () => {
    const quarter = fc.integer({ min: 1, max: 20 }).map((count) => count / 4);
    const dollars = fc.integer({ min: 1, max: 900 });
    const need = fc.integer({ min: 0, max: 4000 }).map((count) => count / 40);
    fc.assert(
      fc.property(
        need,
        quarter,
        fc.integer({ min: 2, max: 8 }),
        dollars,
        dollars,
        (gallons, small, times, price, largePrice) => {
          const large = small * times;
          const job = quicklyPriced('flake-full-broadcast', {
            instead: { [`${base}.need`]: gallons },
            products: {
              'base_slate.pack_gallons': small,
              'base_slate.pack_price': price,
              'base_slate.large_gallons': large,
              'base_slate.large_price': largePrice,
            },
          });
          expect(job.number(`${base}.cost`)).toBe(leastCost(gallons, small, large, price, largePrice));
        },
      ),
      { seed, numRuns: 100 },
    );
  });
});

/** Every number of large packs that could matter, with the packs that fill the rest. Needs are exact in fortieths. */
function leastCost(need: number, small: number, large: number, price: number, largePrice: number): number {
  const most = Math.ceil(need / large) + 1;
  const costs = Array.from({ length: most + 1 }, (_, count) => {
    const rest = Math.max(0, Math.round((need - count * large) * 40) / 40);
    return count * largePrice + Math.ceil(Math.round(rest * 40) / Math.round(small * 40)) * price;
  });
  return Math.min(...costs);
}

describe.each(shippedSystems)('splitting an area of %s', (system) => {
  const columns: readonly (readonly [string, string])[] = [
    ['coats', 'gallons'],
    ['broadcast', 'pounds'],
    ['additions', 'pounds_needed'],
    ['crack_fills', 'pieces'],
    ['repairs', 'mixed_gallons'],
    ['tasks', 'task_hours'],
    ['tasks', 'clock_added'],
    ['buy_volume', 'packs'],
    ['buy_volume', 'large_packs'],
    ['buy_weight', 'packs'],
    ['trips', 'paid'],
  ];
  const lines = ['floor_area', 'edge_length', 'surface_area', 'direct_cost', 'list_price', 'price'];
  const feet = fc.integer({ min: 8 * 16, max: 60 * 16 }).map((count) => count / 16);

  it('into two rows, their common side joined in each, changes no quantity', () => {
    fc.assert(
      fc.property(
        someEntries,
        feet,
        feet,
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (set, length, width, share) => {
          // The floor's own entries come from the rows here.
          const { 'areas.bay.length': _length, 'areas.bay.width': _width, ...rest } = set;
          const cut = Math.round(length * share * 16) / 16;
          const part = (place: string, own: number): RowFile => ({ place, length: own, width, joined: width });
          const whole = quicklyPriced(system, { set: rest, rows: { areas: [{ place: 'whole', length, width }] } });
          const split = quicklyPriced(system, {
            set: rest,
            rows: { areas: [part('front', cut), part('back', length - cut)] },
          });
          for (const name of [...lines, ...cellsOf(whole)])
            expect(split.number(name), name).toBeCloseTo(whole.number(name), 9);
        },
      ),
      { seed, numRuns: splits },
    );
  });

  function cellsOf(job: PricedFloor): string[] {
    return columns.flatMap(([table, column]) =>
      (job.option.rows.get(table) ?? []).map(({ id }) => `${table}.${id}.${column}`),
    );
  }

  it('is looked at in tables that the system has', () => {
    for (const [table, column] of columns)
      expect(shippedStack(system).stack.tables.get(table)?.columns.has(column)).toBe(true);
  });
});
