import { closureWorkbook } from '../engine/closure-workbook.ts';
import { type AuditParts, QuoteAudit } from '../engine/quote-audit.ts';
import { QuoteWorkbooks } from '../engine/quote-workbooks.ts';
import { canonicalJson } from '../quote/canonical-json.ts';
import { makeQuote, type NewQuote } from '../quote/new-quote.ts';
import type { OptionResults } from '../quote/option-results.ts';
import type { QuoteDocument, QuoteOption, SheetHash } from '../quote/quote-document.ts';
import { optionSummaries } from '../quote/quote-head.ts';
import { QuoteStacks } from '../quote/quote-stacks.ts';
import type { OfferedSheet, PinnedSheets, SheetStore, ShippedSheets } from '../quote/sheet-store.ts';
import { withStoredSheets } from '../quote/stored-sheets.ts';
import type { LoadedQuote, QuoteList, QuoteStore } from '../storage/quote-store.ts';
import type { ProductRow } from '../template/entries.ts';
import type { SheetFile } from '../template/sheet-schema.ts';
import { QuoteSession } from './quote-session.ts';
import { SharedQuote, storeKeeper } from './share-quote.ts';

/** What quotes are made from, and where they are kept. */
export interface DeskParts {
  readonly shipped: ShippedSheets;
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

export interface AddedOption {
  readonly option: QuoteOption;
  readonly products: readonly ProductRow[];
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
  private readonly known = new Map<SheetHash, SheetFile>();
  /** The JSON of those that come with the app, to be stored with the quotes that stand on them. */
  private readonly raw = new Map<SheetHash, unknown>();
  private readonly stacks: QuoteStacks;
  /** The quote made last, which is usually opened at once. */
  private made: (WorkedQuote & { readonly quote: QuoteDocument }) | undefined;

  constructor(parts: DeskParts) {
    this.parts = parts;
    this.know(parts.shipped.under);
    this.stacks = new QuoteStacks({ ...parts.shipped.under.store, sheets: this.known });
    this.priceList = parts.priceList;
    this.unkept = parts.store === undefined ? (parts.unkept ?? 'This browser keeps nothing.') : undefined;
  }

  /** Systems a quote may be made of. */
  get systems(): readonly OfferedSheet[] {
    return this.parts.shipped.systems;
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
    const sheets = await this.everySheet();
    if ('kind' in sheets) return sheets;
    const made = makeQuote(wanted, sheets, this.priceList, this.stacks);
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
    const stored = await store.create({ quote, options, demo, at, sheets: this.raw });
    if (stored.kind === 'fault') return stored;
    this.made = { ...worked, quote };
    return quote;
  }

  async open(id: string): Promise<OpenQuote | DeskFault> {
    const { store, turn } = this.parts;
    const held = this.inMemory.get(id);
    if (held !== undefined) return opened(held);
    if (store === undefined) return noSuchQuote;
    const found = await this.load(id, store);
    if (found.kind === 'fault') return found;
    const { loaded, workbooks, audit } = found;
    const start = { past: loaded, keeper: storeKeeper(store, id, this.raw), ...(turn !== undefined && { turn }) };
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

  /** An option of a system, to be added to a quote under an id of its own, with the products it names. */
  async optionOf(system: string): Promise<AddedOption | DeskFault> {
    const sheets = await this.everySheet();
    if ('kind' in sheets) return sheets;
    const [shop = ''] = sheets.library.shops.keys();
    const [floor = ''] = sheets.library.floors.keys();
    const wanted = { id: system, title: '', shop, floor, systems: [system] };
    const made = makeQuote(wanted, sheets, this.priceList, this.stacks);
    if (made.kind === 'refused') return fault(made.faults);
    const [option] = made.quote.options;
    return option === undefined
      ? { kind: 'fault', reason: 'There is no such system.' }
      : { option, products: made.quote.products };
  }

  /** What new quotes and options are made of; systems are fetched for it. */
  private async everySheet(): Promise<SheetStore | DeskFault> {
    try {
      const whole = await this.parts.shipped.whole();
      this.know(whole);
      return whole.store;
    } catch {
      // Without a signal; what is open works on, and the next try fetches them again.
      return { kind: 'fault', reason: 'The systems could not be fetched. Try again when there is a signal.' };
    }
  }

  private know({ store, raw }: PinnedSheets): void {
    for (const [hash, sheet] of store.sheets) if (!this.known.has(hash)) this.known.set(hash, sheet);
    for (const [hash, value] of raw) this.raw.set(hash, value);
  }

  /** A stored quote, worked out. */
  private async load(id: string, store: QuoteStore): Promise<LoadedHere | DeskFault> {
    const loaded = await store.load(id);
    if (loaded.kind === 'fault') return loaded;
    const { store: under } = this.parts.shipped.under;
    const { sheets } = withStoredSheets({ ...under, sheets: this.known }, loaded.sheets).store;
    for (const [hash, sheet] of sheets) this.known.set(hash, sheet);
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
