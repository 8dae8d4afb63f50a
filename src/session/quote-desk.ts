import { closureWorkbook } from '../engine/closure-workbook.ts';
import { QuoteWorkbooks } from '../engine/quote-workbooks.ts';
import { canonicalJson } from '../quote/canonical-json.ts';
import { makeQuote, type NewQuote } from '../quote/new-quote.ts';
import type { OptionResults } from '../quote/option-results.ts';
import type { QuoteDocument, QuoteOption, SheetHash } from '../quote/quote-document.ts';
import { optionSummaries } from '../quote/quote-head.ts';
import { QuoteStacks } from '../quote/quote-stacks.ts';
import type { SheetStore } from '../quote/sheet-store.ts';
import { type RawSheets, withStoredSheets } from '../quote/stored-sheets.ts';
import type { LoadedQuote, QuoteList, QuoteStore } from '../storage/quote-store.ts';
import type { ProductRow } from '../template/entries.ts';
import type { SheetFile } from '../template/sheet-schema.ts';
import { QuoteSession } from './quote-session.ts';
import { SharedQuote, storeKeeper } from './share-quote.ts';

/** What quotes are made from, and where they are kept. */
export interface DeskParts {
  readonly sheets: SheetStore;
  readonly rawSheets: RawSheets;
  readonly priceList: ReadonlyMap<string, ProductRow>;
  /** Undefined where the browser keeps nothing; `unkept` says why. */
  readonly store?: QuoteStore;
  readonly unkept?: string;
  /** Resolves when a change may be stored; at once where it is left out. */
  readonly turn?: () => Promise<void>;
}

export interface OpenQuote {
  readonly kind: 'open';
  readonly session: QuoteSession;
  readonly shared?: SharedQuote;
  readonly notice?: string;
}

/** A quote as it is kept, worked out, to be read only. */
export interface SeenQuote {
  readonly kind: 'seen';
  readonly quote: QuoteDocument;
  readonly results: (option: string) => OptionResults | undefined;
  readonly close: () => void;
}

export interface DeskFault {
  readonly kind: 'fault';
  readonly reason: string;
}

interface LoadedHere {
  readonly kind: 'here';
  readonly loaded: LoadedQuote;
  readonly workbooks: QuoteWorkbooks;
}

const noSuchQuote: DeskFault = { kind: 'fault', reason: 'There is no such quote.' };

/** Where quotes are listed, made, opened and removed. Without storage it keeps them in memory and says so. */
export class QuoteDesk {
  readonly priceList: ReadonlyMap<string, ProductRow>;
  readonly unkept: string | undefined;
  private readonly parts: DeskParts;
  /** Open quotes that nothing else keeps. */
  private readonly inMemory = new Map<string, OpenQuote>();
  /** Sheets of the templates and of every quote opened so far; none ever changes under its hash. */
  private readonly known: Map<SheetHash, SheetFile>;
  private readonly stacks: QuoteStacks;
  /** The quote made last, which is usually opened at once. */
  private made: { readonly quote: QuoteDocument; readonly workbooks: QuoteWorkbooks } | undefined;

  constructor(parts: DeskParts) {
    this.parts = parts;
    this.known = new Map(parts.sheets.sheets);
    this.stacks = new QuoteStacks({ ...parts.sheets, sheets: this.known });
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
    const quotes = [...this.inMemory.values()].map(({ session: { quote } }) => ({
      id: quote.id,
      title: quote.title,
      updatedAt: '',
      options: [],
      demo: quote.id === 'demo',
    }));
    return { kind: 'list', quotes, damaged: [] };
  }

  /** Makes a quote from templates and keeps it. */
  async make(wanted: NewQuote, at: string, demo = false): Promise<QuoteDocument | DeskFault> {
    const made = makeQuote(wanted, this.parts.sheets, this.priceList, this.stacks);
    if (made.kind === 'refused') return fault(made.faults);
    const { store } = this.parts;
    const { quote } = made;
    const workbooks = this.workbooksOf(quote);
    if ('kind' in workbooks) return workbooks;
    if (store === undefined) {
      const unkept = this.unkept === undefined ? {} : { unkept: this.unkept };
      this.inMemory.set(wanted.id, { kind: 'open', session: new QuoteSession(quote, workbooks, unkept) });
      return quote;
    }
    const options = optionSummaries(quote, (option) => workbooks.results(option));
    const stored = await store.create({ quote, options, demo, at, sheets: this.parts.rawSheets });
    if (stored.kind === 'fault') return stored;
    this.made = { quote, workbooks };
    return quote;
  }

  async open(id: string): Promise<OpenQuote | DeskFault> {
    const { store, rawSheets, turn } = this.parts;
    if (store === undefined) return this.inMemory.get(id) ?? noSuchQuote;
    const found = await this.load(id, store);
    if (found.kind === 'fault') return found;
    const { loaded, workbooks } = found;
    const start = { past: loaded, keeper: storeKeeper(store, id, rawSheets), ...(turn !== undefined && { turn }) };
    const session = new QuoteSession(loaded.quote, workbooks, start);
    const shared = new SharedQuote(session, store);
    await shared.join();
    return { kind: 'open', session, shared, ...(loaded.notice !== undefined && { notice: loaded.notice }) };
  }

  /** A kept quote beside the one that is open; whoever writes it is not kept from it. */
  async look(id: string): Promise<SeenQuote | DeskFault> {
    const { store } = this.parts;
    const held = this.inMemory.get(id)?.session;
    if (held !== undefined)
      return { kind: 'seen', quote: held.quote, results: (option) => held.results(option), close: () => undefined };
    if (store === undefined) return noSuchQuote;
    const found = await this.load(id, store);
    if (found.kind === 'fault') return found;
    const { loaded, workbooks } = found;
    const results = (option: string): OptionResults | undefined => workbooks.results(option);
    return { kind: 'seen', quote: loaded.quote, results, close: () => workbooks.close() };
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
    const wanted = { id, title: '', shop, floor, systems: [system] };
    const made = makeQuote(wanted, this.parts.sheets, this.priceList, this.stacks);
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

  /** A stored quote, worked out. */
  private async load(id: string, store: QuoteStore): Promise<LoadedHere | DeskFault> {
    const loaded = await store.load(id);
    if (loaded.kind === 'fault') return loaded;
    const { sheets } = this.parts;
    const pinned = withStoredSheets({ ...sheets, sheets: this.known }, loaded.sheets).store;
    for (const [hash, sheet] of pinned.sheets) this.known.set(hash, sheet);
    const workbooks = this.workbooksOf(loaded.quote);
    return 'kind' in workbooks ? workbooks : { kind: 'here', loaded, workbooks };
  }

  /** A quote worked out; what was just made is so already. */
  private workbooksOf(quote: QuoteDocument): QuoteWorkbooks | DeskFault {
    const { made } = this;
    this.made = undefined;
    if (made !== undefined && canonicalJson(made.quote) === canonicalJson(quote)) return made.workbooks;
    made?.workbooks.close();
    const workbooks = new QuoteWorkbooks((whole, option) => this.stacks.of(whole, option).stack, closureWorkbook);
    const laid = workbooks.load(quote);
    return laid.kind === 'refused' ? fault(laid.faults) : workbooks;
  }
}

function fault(faults: readonly { readonly reason: string }[]): DeskFault {
  return { kind: 'fault', reason: faults.map(({ reason }) => reason).join(' ') };
}
