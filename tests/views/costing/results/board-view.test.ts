import { describe, expect, it } from 'vitest';
import { lineValue } from '../../../../src/quote/option-results.ts';
import { type BoardRow, boardView } from '../../../../src/views/costing/results/board-view.ts';
import type { NamedResults } from '../../../../src/views/parts/named-results.ts';
import { openQuote } from '../../../helpers/demo-quote.ts';

const systems = ['flake-full-broadcast', 'solid-colour', 'grind-and-seal', 'metallic'];

async function boardOf(count: number): Promise<{ options: NamedResults[]; rows: readonly BoardRow[] }> {
  const { session } = await openQuote(systems.slice(0, count));
  const options = session.quote.options.flatMap(({ id, title }) => {
    const results = session.results(id);
    return results === undefined ? [] : [{ id, title, results }];
  });
  expect(options).toHaveLength(count);
  return { options, rows: boardView(options, undefined).groups.flatMap(({ rows }) => rows) };
}

function shown(rows: readonly BoardRow[], line: string): (string | undefined)[] {
  return rows.find((row) => row.line === line)?.values.map((value) => value.shown) ?? [];
}

/** An amount as people write it, by the browser’s own formatter. */
function dollars(amount: number, cents: 0 | 2): string {
  const digits = { minimumFractionDigits: cents, maximumFractionDigits: cents };
  return `${amount < 0 ? '−' : ''}$${Math.abs(amount).toLocaleString('en-US', digits)}`;
}

describe('the results beside each other', () => {
  it('are to the cent for two options, and to the dollar for four, which have no room for more', async () => {
    for (const [count, cents] of [
      [2, 2],
      [4, 0],
    ] as const) {
      const { options, rows } = await boardOf(count);
      for (const line of ['deposit', 'gross_profit', 'contribution_per_crew_day', 'labour_cost'] as const) {
        const amounts = options.map(({ results }) => Number(lineValue(results, line)));
        expect(shown(rows, line)).toEqual(amounts.map((amount) => dollars(amount, cents)));
      }
    }
  });

  it('have the price of a square foot to the cent also for four', async () => {
    const { options, rows } = await boardOf(4);
    const amounts = options.map(({ results }) => Number(lineValue(results, 'price_per_sqft')));
    expect(shown(rows, 'price_per_sqft')).toEqual(amounts.map((amount) => dollars(amount, 2)));
  });

  it('have margins and hours to a tenth', async () => {
    const { options, rows } = await boardOf(2);
    const tenth = (value: number): string => value.toLocaleString('en-US', { maximumFractionDigits: 1 });
    const margins = options.map(({ results }) => Number(lineValue(results, 'net_margin')) * 100);
    expect(shown(rows, 'net_margin')).toEqual(margins.map(tenth));
    const hours = options.map(({ results }) => Number(lineValue(results, 'paid_hours')));
    expect(shown(rows, 'paid_hours')).toEqual(hours.map(tenth));
  });
});
