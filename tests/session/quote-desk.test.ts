import { describe, expect, it } from 'vitest';
import { readShipped } from '../../src/build/read-shipped.ts';
import { lineValue, type OptionResults } from '../../src/quote/option-results.ts';
import { pinBuilt, type ShippedSheets } from '../../src/quote/sheet-store.ts';
import { QuoteDesk } from '../../src/session/quote-desk.ts';
import { repository } from '../helpers/repository-files.ts';

const shipped = await readShipped(`${repository}/templates`);

/** As main.ts puts it together; `fetchSystems` fails where there is no signal. */
function deskWithoutStorage(fetchSystems = async () => shipped.systems): QuoteDesk {
  const sheets: ShippedSheets = {
    under: pinBuilt(shipped.under),
    systems: shipped.offered,
    whole: async () => pinBuilt([...shipped.under, ...(await fetchSystems())]),
  };
  const priceList = new Map(shipped.products.map((product) => [product.product, product]));
  return new QuoteDesk({ shipped: sheets, priceList, unkept: 'It is full.' });
}

function priceOf(results: OptionResults | undefined): unknown {
  return results === undefined ? undefined : lineValue(results, 'price');
}

const wanted = { id: 'one', title: 'A garage', shop: 'standard', floor: 'garage', systems: ['solid-colour'] };

describe('a desk without storage', () => {
  it('has a quote’s changes still when it is closed and opened again', async () => {
    const desk = deskWithoutStorage();
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
    const desk = deskWithoutStorage();
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
    const desk = deskWithoutStorage();
    await desk.make(wanted, '2026-05-31T08:00:00Z');
    const opened = await desk.open('one');
    if (opened.kind === 'fault') throw new Error(opened.reason);
    expect(opened.session.saved).toEqual({ kind: 'not saved', reason: 'It is full.' });
    await desk.remove('one');
    expect(await desk.open('one')).toEqual({ kind: 'fault', reason: 'There is no such quote.' });
  });

  it('says that systems cannot be fetched without a signal, works on with what is open, and fetches them again', async () => {
    let signal = true;
    const desk = deskWithoutStorage(async () => {
      if (!signal) throw new Error('Failed to fetch');
      return shipped.systems;
    });
    await desk.make(wanted, '2026-05-31T08:00:00Z');
    signal = false;
    expect(await desk.optionOf('metallic')).toEqual({
      kind: 'fault',
      reason: 'The systems could not be fetched. Try again when there is a signal.',
    });
    const opened = await desk.open('one');
    if (opened.kind === 'fault') throw new Error(opened.reason);
    expect(opened.session.dispatch({ kind: 'retitle', title: 'The shed' })).toEqual({ kind: 'done' });
    signal = true;
    const added = await desk.optionOf('metallic');
    if ('kind' in added) throw new Error(added.reason);
    const option = { ...added.option, id: 'option_2' };
    const edit = { kind: 'addOption', option, products: added.products, at: 1 } as const;
    expect(opened.session.dispatch(edit)).toEqual({ kind: 'done' });
    expect(priceOf(opened.session.results('option_2'))).toBeGreaterThan(1000);
  });
});
