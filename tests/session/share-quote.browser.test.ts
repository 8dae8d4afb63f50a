import { expect } from '@open-wc/testing';
import { closureWorkbook } from '../../src/engine/closure-workbook.ts';
import { QuoteWorkbooks } from '../../src/engine/quote-workbooks.ts';
import { readProducts } from '../../src/pricelist/read-products.ts';
import type { Edit } from '../../src/quote/edit.ts';
import { makeQuote } from '../../src/quote/new-quote.ts';
import { lineValue } from '../../src/quote/option-results.ts';
import { optionSummaries } from '../../src/quote/quote-head.ts';
import { QuoteStacks } from '../../src/quote/quote-stacks.ts';
import { pinSheets } from '../../src/quote/sheet-store.ts';
import { type RawSheets, withStoredSheets } from '../../src/quote/stored-sheets.ts';
import { QuoteSession } from '../../src/session/quote-session.ts';
import { SharedQuote, storeKeeper } from '../../src/session/share-quote.ts';
import { openQuoteStore, type QuoteStore } from '../../src/storage/quote-store.ts';
import { composeSheet } from '../../src/template/compose.ts';
import { productFieldsOf } from '../../src/template/product-fields.ts';
import { sheetsByHash } from '../helpers/sheets-by-hash.ts';
import { until } from '../helpers/until.ts';

interface SystemFile {
  readonly sections: readonly { readonly use?: string }[];
}

async function fetched<T>(path: string): Promise<T> {
  const answer = await fetch(`/templates/${path}/template.json`);
  return answer.json();
}

/** The shipped templates of one system, by path, with the parts it uses. */
async function shippedFiles(): Promise<ReadonlyMap<string, unknown>> {
  const system = await fetched<SystemFile>('systems/solid-colour');
  const parts = system.sections.flatMap(({ use }) => (use === undefined ? [] : [`parts/${use}`]));
  const paths = ['pricelist/demo', 'shop/standard', 'floor/garage', ...parts];
  const files = await Promise.all(paths.map(async (path) => [path, await fetched<unknown>(path)] as const));
  return new Map([...files, ['systems/solid-colour', system]]);
}

/** Stores a quote of solid colour on the shipped garage floor, with the first prices. */
async function storedQuote(store: QuoteStore): Promise<{ sheets: RawSheets }> {
  const files = await shippedFiles();
  const [{ store: pinned }, sheets] = await Promise.all([pinSheets(files), sheetsByHash(files.values())]);
  const [priceList] = pinned.library.priceLists.values();
  if (priceList === undefined) throw new Error('There is no price list');
  const { kinds, fields } = productFieldsOf(composeSheet(priceList, new Map()).sheet, () => undefined);
  const csv = await (await fetch('/templates/pricelist/demo/products.csv')).text();
  const { products } = readProducts(csv, [...fields.values()], kinds.keys());
  const wanted = { id: 'garage', title: 'A garage', shop: 'standard', floor: 'garage', systems: ['solid-colour'] };
  const made = makeQuote(wanted, pinned, products);
  if (made.kind === 'refused') throw new Error(JSON.stringify(made.faults));
  const at = new Date().toISOString();
  const options = optionSummaries(made.quote, () => undefined);
  const stored = await store.create({ quote: made.quote, options, demo: true, at, sheets });
  if (stored.kind === 'fault') throw new Error(stored.reason);
  return { sheets };
}

/** What one tab does to open a quote that is stored, from nothing but storage. */
async function openedIn(name: string): Promise<{ session: QuoteSession; shared: SharedQuote; store: QuoteStore }> {
  const opened = await openQuoteStore(name);
  if (opened.kind === 'fault') throw new Error(opened.reason);
  const { store } = opened;
  const loaded = await store.load('garage');
  if (loaded.kind === 'fault') throw new Error(loaded.reason);
  const nothing = await pinSheets(new Map());
  const stacks = new QuoteStacks(withStoredSheets(nothing.store, loaded.sheets).store);
  const workbooks = new QuoteWorkbooks((quote, option) => stacks.of(quote, option).stack, closureWorkbook);
  const laid = workbooks.load(loaded.quote);
  if (laid.kind === 'refused') throw new Error(JSON.stringify(laid.faults));
  const keeper = storeKeeper(store, 'garage', loaded.sheets);
  const session = new QuoteSession(loaded.quote, workbooks, { past: loaded, keeper });
  const shared = new SharedQuote(session, store);
  await shared.join();
  return { session, shared, store };
}

function price(session: QuoteSession): number {
  const results = session.results('option_1');
  const value = results && lineValue(results, 'price');
  if (typeof value !== 'number') throw new Error('There is no price');
  return value;
}

const waste = (value: number): Edit => ({ kind: 'enterLine', sheet: { kind: 'shop' }, line: 'resin_waste', value });

describe('a quote', () => {
  let name: string;

  beforeEach(async () => {
    name = `spreadrate test ${crypto.randomUUID()}`;
    const opened = await openQuoteStore(name);
    if (opened.kind === 'fault') throw new Error(opened.reason);
    await storedQuote(opened.store);
  });

  it('survives its page: the same price and entries from storage alone, and undo goes on', async () => {
    const first = await openedIn(name);
    const start = price(first.session);
    first.session.dispatch(waste(0.4));
    const changed = price(first.session);
    expect(changed).to.be.above(start);
    expect(first.session.saved.kind).to.equal('saving');
    await first.session.settled();
    expect(first.session.saved).to.deep.equal({ kind: 'saved' });
    first.shared.leave();

    const second = await openedIn(name);
    expect(second.session.quote).to.deep.equal(first.session.quote);
    expect(price(second.session)).to.equal(changed);
    expect(second.session.undo()).to.deep.equal({ kind: 'done' });
    expect(price(second.session)).to.equal(start);
    await second.session.settled();
    const list = await second.store.list();
    const shown = `$${start.toLocaleString('en-US', { minimumFractionDigits: 2 })}`;
    expect(list.kind === 'list' && list.quotes[0]?.options).to.deep.equal([
      { title: second.session.quote.options[0]?.title, price: shown },
    ]);
    second.shared.leave();
  });

  it('in a second tab is read-only, follows the first, and takes over', async () => {
    const first = await openedIn(name);
    const second = await openedIn(name);
    expect(second.session.dispatch(waste(0.3))).to.deep.equal({
      kind: 'refused',
      reason: 'This quote is open for changes in another tab.',
    });
    first.session.dispatch(waste(0.4));
    await until(() => second.session.seq === 1);
    expect(price(second.session)).to.equal(price(first.session));

    first.session.dispatch(waste(0.2));
    await second.shared.takeOver();
    expect(second.session.quote).to.deep.equal(first.session.quote);
    expect(second.session.readOnly).to.equal(undefined);
    expect(first.session.dispatch(waste(0.1))).to.include({ kind: 'refused' });
    expect(second.session.dispatch(waste(0.1))).to.deep.equal({ kind: 'done' });
    await until(() => first.session.seq === 3);
    expect(first.session.quote).to.deep.equal(second.session.quote);
    for (const { shared } of [first, second]) shared.leave();
  });

  it('removed elsewhere stays in the page, which says that it is not saved', async () => {
    const { session, shared, store } = await openedIn(name);
    await store.remove('garage');
    session.dispatch(waste(0.4));
    await session.settled();
    expect(session.saved).to.deep.equal({
      kind: 'not saved',
      reason: 'This quote is no longer stored here: it was removed in another tab.',
    });
    expect(session.quote.shop.lines.resin_waste).to.equal(0.4);
    shared.leave();
  });
});
