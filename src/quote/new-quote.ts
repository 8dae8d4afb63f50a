import { answerSets } from '../template/answer-sets.ts';
import type { CompiledStack } from '../template/compiled-stack.ts';
import type { ProductRow } from '../template/entries.ts';
import { productsNamed } from '../template/plan.ts';
import type { SheetFault } from '../template/sheet-fault.ts';
import { nothingEntered, type QuoteDocument, type QuoteOption } from './quote-document.ts';
import { QuoteStacks } from './quote-stacks.ts';
import type { SheetStore } from './sheet-store.ts';

/** Work starts two weeks after a new quote until somebody says otherwise. */
export const daysToStart = 14;

export interface NewQuote {
  readonly id: string;
  readonly title: string;
  readonly shop: string;
  readonly floor: string;
  /** Ids of one to four systems. */
  readonly systems: readonly string[];
  /** Serial day on which the quote is made. */
  readonly madeOn?: number;
}

export type NewQuoteResult =
  | { readonly kind: 'quote'; readonly quote: QuoteDocument }
  | { readonly kind: 'refused'; readonly faults: readonly SheetFault[] };

/**
 * Makes a quote from templates, pinning their versions and the price-list rows that they and their questions name. Stacks
 * compiled in `stacks` before are not compiled again.
 */
export function makeQuote(
  wanted: NewQuote,
  store: SheetStore,
  priceList: ReadonlyMap<string, ProductRow>,
  stacks: QuoteStacks = new QuoteStacks(store),
): NewQuoteResult {
  const faults: SheetFault[] = [];
  const hash = (layer: 'pricelist' | 'shop' | 'floor' | 'system' | 'part', id: string): string => {
    const found = store.hashOf(layer, id);
    if (found === undefined) faults.push({ path: layer, reason: `There is no ${layer} template “${id}”.` });
    return found ?? '';
  };
  const [priceListId = ''] = store.library.priceLists.keys();
  const sheets = {
    priceList: hash('pricelist', priceListId),
    shop: hash('shop', wanted.shop),
    floor: hash('floor', wanted.floor),
    parts: Object.fromEntries([...store.library.parts.keys()].map((id) => [id, hash('part', id)])),
  };
  const options = wanted.systems.map(
    (id, at): QuoteOption => ({
      id: `option_${at + 1}`,
      title: store.library.systems.get(id)?.title ?? id,
      system: hash('system', id),
      entries: nothingEntered,
    }),
  );
  const floor =
    wanted.madeOn === undefined
      ? nothingEntered
      : { lines: { quote_date: wanted.madeOn, start_date: wanted.madeOn + daysToStart }, tables: {} };
  const quote: QuoteDocument = {
    format: 'spreadrate.quote',
    version: 1,
    id: wanted.id,
    title: wanted.title,
    sheets,
    products: [],
    shop: nothingEntered,
    floor,
    options,
  };
  if (faults.length > 0) return { kind: 'refused', faults };
  return withProducts(quote, stacks, priceList);
}

function withProducts(
  quote: QuoteDocument,
  stacks: QuoteStacks,
  priceList: ReadonlyMap<string, ProductRow>,
): NewQuoteResult {
  const faults: SheetFault[] = [];
  const named = new Map<string, ProductRow>();
  for (const option of quote.options) {
    const { stack, faults: own } = stacks.of(quote, option);
    faults.push(...own);
    if (stack === undefined || own.length > 0) continue;
    const laid = productsNamed(stack, priceList);
    faults.push(...laid.faults);
    for (const id of [...laid.products, ...productsAsked(stack)]) {
      const product = priceList.get(id);
      if (product !== undefined) named.set(id, product);
    }
  }
  if (faults.length > 0) return { kind: 'refused', faults };
  return { kind: 'quote', quote: { ...quote, products: [...named.values()] } };
}

/** Codes that an answer may set, products among them: an answer is given without the price list at hand. */
function productsAsked({ sheets }: CompiledStack): string[] {
  const values = sheets.flatMap(({ asks }) => asks.flatMap(answerSets).flatMap((set) => Object.values(set)));
  return values.filter((value) => typeof value === 'string');
}
