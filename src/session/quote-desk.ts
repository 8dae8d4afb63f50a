import { QuoteWorkbooks } from '../engine/quote-workbooks.ts';
import { makeQuote, type NewQuote } from '../quote/new-quote.ts';
import type { QuoteDocument, QuoteOption } from '../quote/quote-document.ts';
import { optionSummaries } from '../quote/quote-head.ts';
import { QuoteStacks } from '../quote/quote-stacks.ts';
import type { SheetStore } from '../quote/sheet-store.ts';
import { type RawSheets, withStoredSheets } from '../quote/stored-sheets.ts';
import type { QuoteList, QuoteStore } from '../storage/quote-store.ts';
import type { ProductRow } from '../template/entries.ts';
import { QuoteSession, type SessionStart } from './quote-session.ts';
import { SharedQuote, storeKeeper } from './share-quote.ts';

/** What quotes are made from, and where they are kept. */
export interface DeskParts {
  readonly sheets: SheetStore;
  readonly rawSheets: RawSheets;
  readonly priceList: ReadonlyMap<string, ProductRow>;
  /** Undefined where the browser keeps nothing; `unkept` says why. */
  readonly store?: QuoteStore;
  readonly unkept?: string;
}

export interface OpenQuote {
  readonly kind: 'open';
  readonly session: QuoteSession;
  readonly shared?: SharedQuote;
  readonly notice?: string;
}

export interface DeskFault {
  readonly kind: 'fault';
  readonly reason: string;
}

/** Where quotes are listed, made, opened and removed. Without storage it keeps them in memory and says so. */
export class QuoteDesk {
  readonly priceList: ReadonlyMap<string, ProductRow>;
  readonly unkept: string | undefined;
  private readonly parts: DeskParts;
  private readonly inMemory = new Map<string, QuoteDocument>();

  constructor(parts: DeskParts) {
    this.parts = parts;
    this.priceList = parts.priceList;
    this.unkept = parts.store === undefined ? (parts.unkept ?? 'This browser keeps nothing.') : undefined;
  }

  /** Systems a quote may be made of. */
  get systems(): readonly { readonly id: string; readonly title: string; readonly summary: string }[] {
    return [...this.parts.sheets.library.systems.values()].map(({ id, title, summary }) => ({
      id,
      title,
      summary: summary ?? '',
    }));
  }

  async list(): Promise<QuoteList | DeskFault> {
    if (this.parts.store !== undefined) return this.parts.store.list();
    const quotes = [...this.inMemory.values()].map(({ id, title }) => ({
      id,
      title,
      updatedAt: '',
      options: [],
      demo: id === 'demo',
    }));
    return { kind: 'list', quotes, damaged: [] };
  }

  /** Makes a quote from templates and keeps it. */
  async make(wanted: NewQuote, at: string, demo = false): Promise<QuoteDocument | DeskFault> {
    const made = makeQuote(wanted, this.parts.sheets, this.priceList);
    if (made.kind === 'refused') return fault(made.faults);
    const { store } = this.parts;
    if (store === undefined) {
      this.inMemory.set(wanted.id, made.quote);
      return made.quote;
    }
    const opened = this.sessionOf(made.quote, this.parts.sheets, {});
    if (opened.kind === 'fault') return opened;
    const options = optionSummaries(made.quote, (option) => opened.session.results(option));
    const stored = await store.create({ quote: made.quote, options, demo, at, sheets: this.parts.rawSheets });
    return stored.kind === 'fault' ? stored : made.quote;
  }

  async open(id: string): Promise<OpenQuote | DeskFault> {
    const { store, sheets, rawSheets } = this.parts;
    if (store === undefined) {
      const quote = this.inMemory.get(id);
      if (quote === undefined) return { kind: 'fault', reason: 'There is no such quote.' };
      return this.sessionOf(quote, sheets, this.unkept === undefined ? {} : { unkept: this.unkept });
    }
    const loaded = await store.load(id);
    if (loaded.kind === 'fault') return loaded;
    const pinned = withStoredSheets(sheets, loaded.sheets).store;
    const opened = this.sessionOf(loaded.quote, pinned, { past: loaded, keeper: storeKeeper(store, id, rawSheets) });
    if (opened.kind === 'fault') return opened;
    const shared = new SharedQuote(opened.session, store);
    await shared.join();
    return { ...opened, shared, ...(loaded.notice !== undefined && { notice: loaded.notice }) };
  }

  async remove(id: string): Promise<DeskFault | undefined> {
    this.inMemory.delete(id);
    const removed = await this.parts.store?.remove(id);
    return removed?.kind === 'fault' ? removed : undefined;
  }

  /** An option of a system, to be added to a quote, with the products it names. */
  optionOf(
    system: string,
    id: string,
  ): { readonly option: QuoteOption; readonly products: readonly ProductRow[] } | DeskFault {
    const [shop = ''] = this.parts.sheets.library.shops.keys();
    const [floor = ''] = this.parts.sheets.library.floors.keys();
    const made = makeQuote({ id, title: '', shop, floor, systems: [system] }, this.parts.sheets, this.priceList);
    if (made.kind === 'refused') return fault(made.faults);
    const [option] = made.quote.options;
    return option === undefined
      ? { kind: 'fault', reason: 'There is no such system.' }
      : { option: { ...option, id }, products: made.quote.products };
  }

  /** Hash of the system template of this id, to find the option made from it. */
  systemHash(id: string): string | undefined {
    return this.parts.sheets.hashOf('system', id);
  }

  private sessionOf(quote: QuoteDocument, pinned: SheetStore, start: SessionStart): OpenQuote | DeskFault {
    const stacks = new QuoteStacks(pinned);
    const workbooks = new QuoteWorkbooks((whole, option) => stacks.of(whole, option).stack);
    const laid = workbooks.load(quote);
    if (laid.kind === 'refused') return fault(laid.faults);
    return { kind: 'open', session: new QuoteSession(quote, workbooks, start) };
  }
}

function fault(faults: readonly { readonly reason: string }[]): DeskFault {
  return { kind: 'fault', reason: faults.map(({ reason }) => reason).join(' ') };
}
