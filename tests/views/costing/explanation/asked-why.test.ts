import { describe, expect, it } from 'vitest';
import type { Edit } from '../../../../src/quote/edit.ts';
import { newRowEdit } from '../../../../src/quote/new-row.ts';
import { cellOfColumn, cellOfLine, type OptionResults } from '../../../../src/quote/option-results.ts';
import { type AskedWhy, askedAt, askedCell, whyView } from '../../../../src/views/costing/explanation/why-view.ts';
import { flake, type OpenQuote, openQuote } from '../../../helpers/demo-quote.ts';

function resultsOf({ session }: OpenQuote): OptionResults {
  const results = session.results(flake);
  if (results === undefined) throw new Error('The option has no results');
  return results;
}

function dispatch({ session }: OpenQuote, edit: Edit): void {
  const result = session.dispatch(edit);
  if (result.kind === 'refused') throw new Error(result.reason);
}

function ask(results: OptionResults, cell: number | undefined): AskedWhy {
  const asked = cell === undefined ? undefined : askedAt(flake, results, cell);
  if (asked === undefined) throw new Error('Nothing stands there');
  return asked;
}

/** The name and the number of what was asked, as it stands now. */
function told(asked: AskedWhy, results: OptionResults): { readonly cell: number | undefined; readonly title: string } {
  const cell = askedCell(asked, results);
  return { cell, title: cell === undefined ? '' : (whyView(results, cell, 'us')?.title ?? '') };
}

/** Brings an area, and moves it before the other. */
function addArea(quote: OpenQuote): void {
  const sheet = { kind: 'floor' } as const;
  dispatch(quote, newRowEdit(resultsOf(quote), sheet, 'areas'));
  const row = resultsOf(quote).option.rows.get('areas')?.at(-1)?.id ?? '';
  dispatch(quote, { kind: 'moveRow', sheet, table: 'areas', row, to: 0 });
}

describe('what was asked', () => {
  it('is the wet film of the same coat after an area has come, though its cell has another number', async () => {
    const quote = await openQuote();
    const before = resultsOf(quote);
    const asked = ask(before, cellOfColumn(before, 'coats', 'wet_mils', 0));
    const first = told(asked, before);
    expect(first.title).toContain('›');
    addArea(quote);
    const now = told(asked, resultsOf(quote));
    expect(now.title).toBe(first.title);
    expect(now.cell).not.toBe(first.cell);
  });

  it('is found by the row and not by its place, when a row has come before it', async () => {
    const quote = await openQuote();
    const before = resultsOf(quote);
    const asked = ask(before, cellOfColumn(before, 'areas', 'area', 0));
    const first = told(asked, before);
    addArea(quote);
    const after = resultsOf(quote);
    expect(askedCell(asked, after)).toBe(cellOfColumn(after, 'areas', 'area', 1));
    expect(told(asked, after).title).toBe(first.title);
  });

  it('is gone with its row, and is there again when that is', async () => {
    const quote = await openQuote();
    addArea(quote);
    const asked = ask(resultsOf(quote), cellOfColumn(resultsOf(quote), 'areas', 'area', 0));
    quote.session.undo();
    quote.session.undo();
    expect(askedCell(asked, resultsOf(quote))).toBe(undefined);
    quote.session.redo();
    expect(askedCell(asked, resultsOf(quote))).toBe(cellOfColumn(resultsOf(quote), 'areas', 'area', 1));
  });

  it('may be a line', async () => {
    const results = resultsOf(await openQuote());
    const price = cellOfLine(results, 'price');
    expect(askedCell(ask(results, price), results)).toBe(price);
    expect(askedAt(flake, results, results.option.plan.cells.length)).toBe(undefined);
  });
});

describe('a time of the crew’s day', () => {
  it('has no formula, and says why its task begins when it does and what of its own row it is made from', async () => {
    const results = resultsOf(await openQuote());
    const scrape = results.option.rows.get('tasks')?.findIndex(({ id }) => id === 'scrape') ?? -1;
    const cell = cellOfColumn(results, 'tasks', 'start', scrape);
    const why = cell === undefined ? undefined : whyView(results, cell, 'us');
    expect(why?.names).toBe('');
    expect(why?.note).toMatch(/^From the crew’s day, .* because a later visit is planned\./);
    expect(why?.readsFrom.map(({ name }) => name)).toContain(
      'Scrape, sweep, blow edges, vacuum › One person takes, at the rate',
    );
    expect(why?.feeds.length).toBeGreaterThan(0);
  });
});
