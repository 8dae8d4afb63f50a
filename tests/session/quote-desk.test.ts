import { describe, expect, it } from 'vitest';
import { lineValue, type OptionResults } from '../../src/quote/option-results.ts';
import { pinSheets } from '../../src/quote/sheet-store.ts';
import { sheetsByHash } from '../../src/quote/stored-sheets.ts';
import { QuoteDesk } from '../../src/session/quote-desk.ts';
import { readText } from '../helpers/repository-files.ts';
import { shippedLibrary, shippedProducts, templatePaths } from '../helpers/shipped-templates.ts';

async function deskWithoutStorage(): Promise<QuoteDesk> {
  const files = new Map(templatePaths.map((path): [string, unknown] => [path, JSON.parse(readText(path) ?? 'null')]));
  const { store: sheets } = await pinSheets(files);
  const [priceList] = shippedLibrary().library.priceLists.values();
  if (priceList === undefined) throw new Error('No price list is shipped');
  const rawSheets = await sheetsByHash(files.values());
  return new QuoteDesk({ sheets, rawSheets, priceList: shippedProducts(priceList).products, unkept: 'It is full.' });
}

function priceOf(results: OptionResults | undefined): unknown {
  return results === undefined ? undefined : lineValue(results, 'price');
}

const wanted = { id: 'one', title: 'A garage', shop: 'standard', floor: 'garage', systems: ['solid-colour'] };

describe('a desk without storage', () => {
  it('has a quote’s changes still when it is closed and opened again', async () => {
    const desk = await deskWithoutStorage();
    await desk.make(wanted, '2026-05-31T08:00:00Z');
    const opened = await desk.open('one');
    if (opened.kind === 'fault') throw new Error(opened.reason);
    expect(opened.session.dispatch({ kind: 'retitle', title: 'The shed' })).toEqual({ kind: 'done' });
    const again = await desk.open('one');
    if (again.kind === 'fault') throw new Error(again.reason);
    expect([again.session.quote.title, again.session.seq]).toEqual(['The shed', 1]);
    expect(await desk.list()).toMatchObject({ quotes: [{ id: 'one', title: 'The shed' }] });
  });

  it('lets a quote be looked at as it stands now, and says when there is none', async () => {
    const desk = await deskWithoutStorage();
    await desk.make(wanted, '2026-05-31T08:00:00Z');
    const opened = await desk.open('one');
    if (opened.kind === 'fault') throw new Error(opened.reason);
    opened.session.dispatch({ kind: 'retitle', title: 'The shed' });
    const seen = await desk.look('one');
    if (seen.kind === 'fault') throw new Error(seen.reason);
    const [option] = seen.quote.options;
    expect(seen.quote.title).toBe('The shed');
    expect(priceOf(seen.results(option?.id ?? ''))).toBeGreaterThan(1000);
    expect(priceOf(seen.results(option?.id ?? ''))).toBe(priceOf(opened.session.results(option?.id ?? '')));
    expect(await desk.look('two')).toEqual({ kind: 'fault', reason: 'There is no such quote.' });
  });

  it('says why a quote is not saved, and forgets one that is removed', async () => {
    const desk = await deskWithoutStorage();
    await desk.make(wanted, '2026-05-31T08:00:00Z');
    const opened = await desk.open('one');
    if (opened.kind === 'fault') throw new Error(opened.reason);
    expect(opened.session.saved).toEqual({ kind: 'not saved', reason: 'It is full.' });
    await desk.remove('one');
    expect(await desk.open('one')).toEqual({ kind: 'fault', reason: 'There is no such quote.' });
  });
});
