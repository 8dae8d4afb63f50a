import { closureWorkbook } from '../engine/closure-workbook.ts';
import { type AuditParts, QuoteAudit } from '../engine/quote-audit.ts';
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
  /** Who looks again at the numbers of an open quote; nobody where it is left out. */
  readonly audit?: AuditParts;
  /** Resolves when a change may be stored; at once where it is left out. */
  readonly turn?: () => Promise<void>;
}

export interface OpenQuote {
  readonly kind: 'open';
  readonly session: QuoteSession;
  readonly shared?: SharedQuote;
  readonly notice?: string;
  /** Ends what goes on for it: it is no longer looked at. */
  readonly close: () => void;
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

/** A quote worked out, and who looks again at it once it is open. */
interface WorkedQuote {
  readonly kind: 'worked';
  readonly workbooks: QuoteWorkbooks;
  readonly audit: QuoteAudit | undefined;
}

interface LoadedHere extends Omit<WorkedQuote, 'kind'> {
  readonly kind: 'here';
  readonly loaded: LoadedQuote;
}

/** An open quote that nothing else keeps. */
interface HeldQuote {
  readonly session: QuoteSession;
  readonly audit: QuoteAudit | undefined;
}

const noSuchQuote: DeskFault = { kind: 'fault', reason: 'There is no such quote.' };

/** Where quotes are listed, made, opened and removed. Without storage it keeps them in memory and says so. */
export class QuoteDesk {
  readonly priceList: ReadonlyMap<string, ProductRow>;
  readonly unkept: string | undefined;
  private readonly parts: DeskParts;
  private readonly inMemory = new Map<string, HeldQuote>();
  /** Sheets of the templates and of every quote opened so far; none ever changes under its hash. */
  private readonly known: Map<SheetHash, SheetFile>;
  private readonly stacks: QuoteStacks;
  /** The quote made last, which is usually opened at once. */
  private made: (WorkedQuote & { readonly quote: QuoteDocument }) | undefined;

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
    const worked = this.workedOut(quote);
    if (worked.kind === 'fault') return worked;
    const { workbooks, audit } = worked;
    if (store === undefined) {
      const unkept = this.unkept === undefined ? {} : { unkept: this.unkept };
      this.inMemory.set(wanted.id, { session: new QuoteSession(quote, workbooks, unkept), audit });
      return quote;
    }
    const options = optionSummaries(quote, (option) => workbooks.results(option));
    const stored = await store.create({ quote, options, demo, at, sheets: this.parts.rawSheets });
    if (stored.kind === 'fault') return stored;
    this.made = { ...worked, quote };
    return quote;
  }

  async open(id: string): Promise<OpenQuote | DeskFault> {
    const { store, rawSheets, turn } = this.parts;
    const held = this.inMemory.get(id);
    if (held !== undefined) return opened(held);
    if (store === undefined) return noSuchQuote;
    const found = await this.load(id, store);
    if (found.kind === 'fault') return found;
    const { loaded, workbooks, audit } = found;
    const start = { past: loaded, keeper: storeKeeper(store, id, rawSheets), ...(turn !== undefined && { turn }) };
    const session = new QuoteSession(loaded.quote, workbooks, start);
    const shared = new SharedQuote(session, store);
    await shared.join();
    return opened({ session, audit }, shared, loaded.notice);
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
    const worked = this.workedOut(loaded.quote);
    return worked.kind === 'fault' ? worked : { ...worked, kind: 'here', loaded };
  }

  /** A quote worked out; what was just made is so already. */
  private workedOut(quote: QuoteDocument): WorkedQuote | DeskFault {
    const { made } = this;
    this.made = undefined;
    if (made !== undefined && canonicalJson(made.quote) === canonicalJson(quote)) return made;
    made?.workbooks.close();
    const audit = this.parts.audit && new QuoteAudit(this.parts.audit);
    const workbooks = new QuoteWorkbooks(
      (whole, option) => this.stacks.of(whole, option).stack,
      audit?.openWorkbook ?? closureWorkbook,
    );
    const laid = workbooks.load(quote);
    return laid.kind === 'refused' ? fault(laid.faults) : { kind: 'worked', workbooks, audit };
  }
}

/** From now on the quote is looked at again after every change, until it is closed. */
function opened({ session, audit }: HeldQuote, shared?: SharedQuote, notice?: string): OpenQuote {
  audit?.start((finding) => session.take(finding));
  const close = (): void => {
    shared?.leave();
    audit?.stop();
  };
  return { kind: 'open', session, close, ...(shared && { shared }), ...(notice !== undefined && { notice }) };
}

function fault(faults: readonly { readonly reason: string }[]): DeskFault {
  return { kind: 'fault', reason: faults.map(({ reason }) => reason).join(' ') };
}
