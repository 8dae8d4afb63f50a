import { QuoteWorkbooks } from '../../src/engine/quote-workbooks.ts';
import { makeQuote } from '../../src/quote/new-quote.ts';
import type { QuoteDocument } from '../../src/quote/quote-document.ts';
import { QuoteStacks } from '../../src/quote/quote-stacks.ts';
import { pinSheets } from '../../src/quote/sheet-store.ts';
import { QuoteSession } from '../../src/session/quote-session.ts';
import type { ProductRow } from '../../src/template/entries.ts';
import { readText } from './repository-files.ts';
import { shippedLibrary, shippedProducts, templatePaths } from './shipped-templates.ts';

/** A quote of two systems on the shipped floor, with everything that follows its edits. */
export interface OpenQuote {
  readonly quote: QuoteDocument;
  readonly workbooks: QuoteWorkbooks;
  readonly session: QuoteSession;
  readonly priceList: ReadonlyMap<string, ProductRow>;
}

export const flake = 'option_1';
export const solid = 'option_2';

export async function openQuote(
  systems: readonly string[] = ['flake-full-broadcast', 'solid-colour'],
): Promise<OpenQuote> {
  const files = new Map(templatePaths.map((path): [string, unknown] => [path, JSON.parse(readText(path) ?? 'null')]));
  const { store } = await pinSheets(files);
  const [priceListFile] = shippedLibrary().library.priceLists.values();
  if (priceListFile === undefined) throw new Error('No price list is shipped');
  const priceList = shippedProducts(priceListFile).products;
  const stacks = new QuoteStacks(store);
  const made = makeQuote(
    { id: 'quote', title: 'A garage', shop: 'standard', floor: 'garage', systems },
    store,
    priceList,
    stacks,
  );
  if (made.kind === 'refused') throw new Error(made.faults.map((fault) => fault.reason).join('\n'));
  const workbooks = new QuoteWorkbooks((quote, option) => stacks.of(quote, option).stack);
  const loaded = workbooks.load(made.quote);
  if (loaded.kind === 'refused') throw new Error(loaded.faults.map((fault) => fault.reason).join('\n'));
  return { quote: made.quote, workbooks, session: new QuoteSession(made.quote, workbooks), priceList };
}
