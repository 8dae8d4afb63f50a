import type { Edit } from '../../src/quote/edit.ts';
import type { QuoteDocument } from '../../src/quote/quote-document.ts';
import type { QuoteHead } from '../../src/quote/quote-head.ts';
import type { LogEntry, Move } from '../../src/quote/quote-log.ts';
import type { RawSheets } from '../../src/quote/stored-sheets.ts';
import { openQuoteStore, type QuoteStore, type StoredNewQuote } from '../../src/storage/quote-store.ts';
import { sheetsByHash } from '../helpers/sheets-by-hash.ts';

const firstTime = '2026-05-31T14:00:00.000Z';

/** Sheets that only storage looks at: it knows them by their hash and never reads what they say. */
export async function inventedSheets(layer: string): Promise<{ hash: string; sheets: RawSheets }> {
  const sheets = await sheetsByHash([{ layer, note: 'An invented sheet.', lines: [{ z: 1, a: 0.1 + 0.2 }] }]);
  const [hash = ''] = sheets.keys();
  return { hash, sheets };
}

/** A quote of one option on four invented sheets, as it is first stored. */
export async function inventedQuote(id: string): Promise<StoredNewQuote> {
  const layers = await Promise.all(['pricelist', 'shop', 'floor', 'system'].map(inventedSheets));
  const [priceList = '', shop = '', floor = '', system = ''] = layers.map(({ hash }) => hash);
  const quote: QuoteDocument = {
    format: 'spreadrate.quote',
    version: 1,
    id,
    title: 'An invented garage',
    sheets: { priceList, shop, floor, parts: {} },
    products: [{ product: 'base_slate', kind: 'base', name: 'An invented base', fields: { pack_price: 146.5 } }],
    shop: { lines: { resin_waste: { value: 0.08, typed: '8 %' } }, tables: {} },
    floor: { lines: {}, tables: { areas: { order: ['bay'], cells: { bay: { length: 22.5 } } } } },
    options: [{ id: 'option_1', title: 'Full flake', system, entries: { lines: {}, tables: {} } }],
  };
  const sheets = new Map(layers.flatMap((layer) => [...layer.sheets]));
  return { quote, options: [{ title: 'Full flake', price: '$4,325.00' }], demo: true, at: firstTime, sheets };
}

/** The next change to a quote: another title, with the head it leads to. */
export function retitled(
  { quote }: QuoteHead,
  seq: number,
  title: string,
  moves: Move = 'done',
): { entry: LogEntry; head: QuoteHead } {
  const edit: Edit = { kind: 'retitle', title };
  const inverse: Edit = { kind: 'retitle', title: quote.title };
  const at = new Date(Date.parse(firstTime) + seq * 1000).toISOString();
  return {
    entry: { seq, edit, inverse, at, moves },
    head: { quote: { ...quote, title }, options: [{ title: 'Full flake', price: `$${seq}.00` }] },
  };
}

/** Stores one more title and gives the head after it. Throws what storage refuses. */
export async function storeTitle(store: QuoteStore, before: QuoteHead, seq: number, title: string): Promise<QuoteHead> {
  const { entry, head } = retitled(before, seq, title);
  const stored = await store.append(before.quote.id, [entry], head, new Map());
  if (stored.kind === 'fault') throw new Error(stored.reason);
  return head;
}

/** A store of its own for a test; several are tabs of one browser when they have one name. */
export async function openStore(name = freshName()): Promise<QuoteStore> {
  const opened = await openQuoteStore(name);
  if (opened.kind === 'fault') throw new Error(opened.reason);
  return opened.store;
}

export function freshName(): string {
  return `spreadrate test ${crypto.randomUUID()}`;
}
