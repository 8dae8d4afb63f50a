import { describe, expect, it } from 'vitest';
import { newRowEdit } from '../../src/quote/new-row.ts';
import type { OptionResults } from '../../src/quote/option-results.ts';
import { toldChecks } from '../../src/quote/told-checks.ts';
import { openQuote } from '../helpers/demo-quote.ts';
import { engineValues } from '../helpers/engine-values.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';

const sheet = { kind: 'option', option: 'option_1' } as const;

function stops(results: OptionResults): string[] {
  return toldChecks(results)
    .filter(({ verdict, severity }) => verdict === 'fails' && severity === 'stop')
    .map(({ name }) => name);
}

describe('a system that is shipped', () => {
  it.each(shippedSystems)('%s lays every coat it buys, and takes another at its end with its tasks', async (system) => {
    const { session, priceList } = await openQuote([system]);
    const results = (): OptionResults => {
      const found = session.results('option_1');
      if (found === undefined) throw new Error('The quote has no option');
      return found;
    };
    const before = stops(results());
    expect(before.filter((name) => /is_laid|is_down/.test(name))).toEqual([]);
    const edit = newRowEdit(results(), sheet, 'coats', priceList);
    expect(session.dispatch(edit)).toEqual({ kind: 'done' });
    const { option, read } = results();
    const tasks = (option.rows.get('tasks') ?? []).map(({ id }) => id);
    expect(tasks).toEqual(expect.arrayContaining([`lay_${edit.row}`, `wash_${edit.row}`]));
    expect(stops(results()).filter((name) => /is_laid|is_down/.test(name))).toEqual([]);
    expect(engineValues(option.plan)).toEqual(option.plan.cells.map((_, cell) => read(cell)));
    session.undo();
    expect(stops(results())).toEqual(before);
  });
});
