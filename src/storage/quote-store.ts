import type { QuoteDocument, SheetHash } from '../quote/quote-document.ts';
import { type OptionSummary, type QuoteHead, readHead, type StoredHead } from '../quote/quote-head.ts';
import type { LogEntry, NewEntries } from '../quote/quote-log.ts';
import { readEntry, readLog } from '../quote/read-log.ts';
import { readQuote } from '../quote/read-quote.ts';
import { hashesInLog, pinnedHashes, type RawSheets } from '../quote/stored-sheets.ts';
import { Database, type Reading, type Writing } from './database.ts';
import { fault, messages, type StoreFault } from './messages.ts';
import { checkedTexts, readSheetTexts, type SheetTexts } from './sheet-texts.ts';

/** A quote as the list of quotes shows it. */
export interface QuoteSummary {
  readonly id: string;
  readonly title: string;
  /** ISO 8601 time of the last change. */
  readonly updatedAt: string;
  readonly options: readonly OptionSummary[];
  /** An invented quote for looking around. */
  readonly demo: boolean;
}

export interface QuoteList {
  readonly kind: 'list';
  /** Last changed first. */
  readonly quotes: readonly QuoteSummary[];
  /** What is stored but cannot be read. */
  readonly damaged: readonly { readonly id: string; readonly reason: string }[];
}

export interface LoadedQuote {
  readonly kind: 'loaded';
  readonly quote: QuoteDocument;
  /** The log; empty when it cannot be read, which `notice` tells. */
  readonly entries: readonly LogEntry[];
  /** Number of the last entry. */
  readonly seq: number;
  /** Every sheet the quote stands on, and those that undo may bring back, but for the app's own. */
  readonly sheets: RawSheets;
  readonly notice?: string;
}

export interface StoredNewQuote extends QuoteHead {
  readonly demo: boolean;
  /** ISO 8601 time. */
  readonly at: string;
  /** At least the sheets the quote stands on that no stored quote has. */
  readonly sheets: RawSheets;
}

export type StoreResult<T> = T | StoreFault;
interface Stored {
  readonly kind: 'stored';
}

/** Quotes in the browser's database. Every method answers with a fault, in plain words, where storage fails. */
export class QuoteStore {
  private readonly database: Database;
  private readonly own: RawSheets;
  /** Sheets known to be stored, which need no look. */
  private readonly kept = new Set<SheetHash>();

  /** `own` sheets were hashed when the app was built: they are neither read back nor hashed again. */
  constructor(database: Database, own: RawSheets) {
    this.database = database;
    this.own = own;
  }

  async list(): Promise<StoreResult<QuoteList>> {
    const read = await this.database.read(async (reading) => {
      const heads = reading.objectStore('heads');
      const [ids, values] = await Promise.all([heads.getAllKeys(), heads.getAll()]);
      return { kind: 'read' as const, heads: values.map((value, at) => ({ id: ids[at] ?? '', value })) };
    });
    if (read.kind === 'fault') return read;
    const quotes: QuoteSummary[] = [];
    const damaged: { id: string; reason: string }[] = [];
    for (const { id, value } of read.heads) {
      const head = readHead(value);
      if (head.kind === 'fault') damaged.push({ id, reason: head.reason });
      else quotes.push({ id, updatedAt: head.value.updatedAt, ...head.value.summary });
    }
    quotes.sort((a, b) => (a.updatedAt < b.updatedAt ? 1 : -1));
    return { kind: 'list', quotes, damaged };
  }

  async load(id: string): Promise<StoreResult<LoadedQuote>> {
    const found = await this.database.read((reading) => readRecords(reading, id, this.own));
    if (found.kind === 'fault') return found;
    const { texts, stored, ...records } = found;
    const needed = [...pinnedHashes(records.quote)].filter((hash) => !this.own.has(hash));
    const read = await readSheetTexts(texts, new Set(needed));
    if (read.kind === 'fault') return read;
    for (const hash of [...read.sheets.keys(), ...this.own.keys()]) if (stored.has(hash)) this.kept.add(hash);
    return { ...records, kind: 'loaded', sheets: read.sheets };
  }

  /** Stores a new quote with an empty log and its sheets. */
  async create(made: StoredNewQuote): Promise<StoreResult<Stored>> {
    const { id } = made.quote;
    const head = storedHead(made, { seq: 0, updatedAt: made.at, demo: made.demo });
    return this.write(made.quote, made.sheets, head, async (writing) => {
      const heads = writing.objectStore('heads');
      if ((await heads.getKey(id)) !== undefined) return fault(messages.known);
      await heads.add(head, id);
      return undefined;
    });
  }

  /**
   * Adds entries to a quote's log and puts the head they led to in place of the one before, in one transaction. Refused when
   * the first does not follow the last one that is stored: somebody else has written since.
   */
  async append(id: string, entries: NewEntries, head: QuoteHead, sheets: RawSheets): Promise<StoreResult<Stored>> {
    for (const entry of entries) {
      const read = readEntry(entry);
      if (read.kind === 'fault') return read;
    }
    const [first] = entries;
    const { seq, at } = entries.at(-1) ?? first;
    const next = storedHead(head, { seq, updatedAt: at, demo: false });
    return this.write(head.quote, sheets, next, async (writing) => {
      const heads = writing.objectStore('heads');
      const stored = await heads.get(id);
      if (stored === undefined) return fault(messages.gone);
      const before = readHead(stored);
      if (before.kind === 'fault') return before;
      if (before.value.seq !== first.seq - 1) return fault(messages.changedElsewhere);
      const { demo } = before.value.summary;
      const logs = writing.objectStore('logs');
      await Promise.all(entries.map((entry) => logs.add(entry, [id, entry.seq])));
      await heads.put({ ...next, summary: { ...next.summary, demo } }, id);
      return undefined;
    });
  }

  /** Removes a quote with its log. Sheets stay, as other quotes may stand on them. */
  async remove(id: string): Promise<StoreResult<Stored>> {
    const refused = await this.database.write(async (writing) => {
      await Promise.all([writing.objectStore('heads').delete(id), writing.objectStore('logs').delete(logOf(id))]);
      return undefined;
    });
    return refused ?? { kind: 'stored' };
  }

  close(): void {
    this.database.close();
  }

  /** One transaction that also stores the sheets a quote stands on. What could not be read back is not written. */
  private async write(
    quote: QuoteDocument,
    sheets: RawSheets,
    head: StoredHead,
    body: (writing: Writing) => Promise<StoreFault | undefined>,
  ): Promise<StoreResult<Stored>> {
    for (const read of [readHead(head), readQuote(quote)]) if (read.kind === 'fault') return read;
    const wanted = [...pinnedHashes(quote)].filter((hash) => !this.kept.has(hash));
    const texts = await checkedTexts(wanted, sheets, this.own);
    if (texts.kind === 'fault') return texts;
    const refused = await this.database.write(async (writing) => {
      const store = writing.objectStore('sheets');
      for (const hash of wanted) {
        if ((await store.getKey(hash)) !== undefined) continue;
        const text = texts.texts.get(hash);
        if (text === undefined) return fault(messages.sheetMissing(hash));
        await store.add(text, hash);
      }
      return body(writing);
    });
    if (refused !== undefined) return refused;
    for (const hash of wanted) this.kept.add(hash);
    return { kind: 'stored' };
  }
}

export type OpenedStore = { readonly kind: 'open'; readonly store: QuoteStore } | StoreFault;

/** Opens the browser's database of quotes, or says why the program must do without. `own` are the sheets built into the app. */
export async function openQuoteStore(name: string, own: RawSheets = new Map()): Promise<OpenedStore> {
  const database = new Database(name);
  const opened = await database.open();
  if ('kind' in opened) return opened;
  return { kind: 'open', store: new QuoteStore(database, own) };
}

interface QuoteRecords {
  readonly kind: 'records';
  readonly quote: QuoteDocument;
  readonly entries: readonly LogEntry[];
  readonly seq: number;
  readonly notice?: string;
  /** Of the sheets that are not the app's own. */
  readonly texts: SheetTexts;
  /** Every sheet that is stored, of whatever quote. */
  readonly stored: ReadonlySet<SheetHash>;
}

/** All that is stored of a quote, as it stood at one moment. A history that cannot be read does not keep it shut. */
async function readRecords(reading: Reading, id: string, own: RawSheets): Promise<StoreResult<QuoteRecords>> {
  const sheets = reading.objectStore('sheets');
  const [found, log, hashes] = await Promise.all([
    reading.objectStore('heads').get(id),
    reading.objectStore('logs').getAll(logOf(id)),
    sheets.getAllKeys(),
  ]);
  if (found === undefined) return fault(messages.absent);
  const head = readHead(found);
  if (head.kind === 'fault') return head;
  const { seq } = head.value;
  const read = readQuote(head.value.quote);
  if (read.kind === 'fault') return read;
  const { quote } = read;
  if (head.value.id !== id || quote.id !== id) return fault(messages.headMixedUp);
  const history = entriesOf(log, seq);
  const texts = new Map<SheetHash, string>();
  for (const hash of new Set([...pinnedHashes(quote), ...hashesInLog(history.entries)])) {
    const text = own.has(hash) ? undefined : await sheets.get(hash);
    if (text !== undefined) texts.set(hash, text);
  }
  return { kind: 'records', quote, seq, texts, stored: new Set(hashes), ...history };
}

function entriesOf(log: readonly unknown[], seq: number): Pick<QuoteRecords, 'entries' | 'notice'> {
  const read = readLog(log);
  if (read.kind === 'fault') return { entries: [], notice: messages.historyLost(read.reason) };
  if (read.entries.length === seq) return { entries: read.entries };
  return { entries: [], notice: messages.historyLost(messages.historyShort(read.entries.length, seq)) };
}

function storedHead(
  { quote, options }: QuoteHead,
  rest: { readonly seq: number; readonly updatedAt: string; readonly demo: boolean },
): StoredHead {
  const { seq, updatedAt, demo } = rest;
  return { id: quote.id, quote, seq, updatedAt, summary: { title: quote.title, options, demo } };
}

/** The keys of a quote's log: lists sort after numbers, so every number lies before the empty list. */
function logOf(id: string): IDBKeyRange {
  return IDBKeyRange.bound([id], [id, []]);
}
