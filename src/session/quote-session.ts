import type { AuditFinding } from '../engine/quote-audit.ts';
import type { OptionChange, QuoteWorkbooks } from '../engine/quote-workbooks.ts';
import { applyEdit, type StackOfOption } from '../quote/apply-edit.ts';
import type { Edit } from '../quote/edit.ts';
import { faultEntry, faultNotes, longestFault } from '../quote/log-notes.ts';
import { mergedInverse } from '../quote/merged-inverse.ts';
import type { OptionResults } from '../quote/option-results.ts';
import type { QuoteDocument } from '../quote/quote-document.ts';
import { optionSummaries } from '../quote/quote-head.ts';
import { type History, historyOf, type LogEntry, type Move, movedHistory } from '../quote/quote-log.ts';
import { faultSentences } from './fault-words.ts';
import { type QuoteKeeper, SaveQueue, type SaveState } from './save-queue.ts';

export type DispatchResult = { readonly kind: 'done' } | { readonly kind: 'refused'; readonly reason: string };

/** What listeners are told: which numbers are others now; none when only `saved` or `readOnly` changed. */
export type SessionListener = (changes: readonly OptionChange[]) => void;

/** A quote's past: its log, and the number of its last entry, which counts on where the log could not be read. */
export interface QuotePast {
  readonly entries: readonly LogEntry[];
  readonly seq: number;
}

export interface SessionStart {
  readonly past?: QuotePast;
  /** ISO 8601 time of a change. */
  readonly now?: () => string;
  /** Keeps every change; the quote as it is given is stored already. */
  readonly keeper?: QuoteKeeper;
  /** Resolves when a change may be stored, such as after it was painted; at once where it is left out. */
  readonly turn?: () => Promise<void>;
  /** Why there is no keeper, for people to read. */
  readonly unkept?: string;
}

/** The one mutable place: the quote that is open, its numbers, its log and whether all of it is saved. */
export class QuoteSession {
  private current: QuoteDocument;
  private readonly workbooks: QuoteWorkbooks;
  private readonly stacks: StackOfOption;
  private readonly now: () => string;
  private readonly queue: SaveQueue | undefined;
  private readonly unkept: SaveState;
  private readonly listeners = new Set<SessionListener>();
  private past: QuotePast = { entries: [], seq: 0 };
  private history: History;
  private still: string | undefined;
  private found: readonly string[] = [];

  /** `workbooks` hold `quote` already. */
  constructor(quote: QuoteDocument, workbooks: QuoteWorkbooks, start: SessionStart = {}) {
    this.current = quote;
    this.workbooks = workbooks;
    this.stacks = (option) => workbooks.results(option)?.stack;
    this.past = start.past ?? this.past;
    this.history = historyOf(this.past.entries);
    this.now = start.now ?? (() => new Date().toISOString());
    this.queue = start.keeper && this.queueOf(start.keeper, start.turn);
    this.unkept = { kind: 'not saved', reason: start.unkept ?? 'This quote is in this page only.' };
  }

  get quote(): QuoteDocument {
    return this.current;
  }

  /** Every change so far, first to last. */
  get log(): readonly LogEntry[] {
    return this.past.entries;
  }

  /** Number of the last entry of the log. */
  get seq(): number {
    return this.past.seq;
  }

  get saved(): SaveState {
    return this.queue?.state ?? this.unkept;
  }

  /** Why the quote cannot be changed here; undefined when it can. */
  get readOnly(): string | undefined {
    return this.still;
  }

  /** Where the auditor worked out something else than this page shows, in sentences; none while both agree. */
  get faults(): readonly string[] {
    return this.found;
  }

  results(option: string): OptionResults | undefined {
    return this.workbooks.results(option);
  }

  /** Changes the quote and its numbers, or says why not; on a refusal nothing has changed. */
  dispatch(edit: Edit): DispatchResult {
    return this.change(edit, 'done');
  }

  /** The edit that `undo` would take back. */
  get undoable(): Edit | undefined {
    return this.history.done.at(-1)?.edit;
  }

  get redoable(): Edit | undefined {
    return this.history.undone.at(-1)?.edit;
  }

  undo(): DispatchResult {
    return this.step(this.history.done.at(-1)?.inverse, 'undone');
  }

  redo(): DispatchResult {
    return this.step(this.history.undone.at(-1)?.edit, 'redone');
  }

  /** Resolves when no change is on its way to the keeper. */
  async settled(): Promise<void> {
    await this.queue?.settled();
  }

  /** With a reason: the quote is shown but not changed here. Without: it may be changed again. */
  setReadOnly(reason: string | undefined): void {
    this.still = reason;
    this.tell([]);
  }

  /** Shows the quote as it is stored now, changed elsewhere. Refused while changes made here are not saved. */
  show(quote: QuoteDocument, past: QuotePast): DispatchResult {
    if (this.queue !== undefined && this.queue.state.kind !== 'saved')
      return { kind: 'refused', reason: 'There are changes here that are not saved.' };
    const loaded = this.workbooks.load(quote);
    if (loaded.kind === 'refused') return refusedBy(loaded.faults);
    this.current = quote;
    this.past = past;
    this.history = historyOf(past.entries);
    this.tell(loaded.changes);
    return { kind: 'done' };
  }

  /**
   * Takes what the auditor found. The numbers of the page stay; a fault is told, and kept in the log, once for the words it is
   * told in, by whoever may write there.
   */
  take(finding: AuditFinding): void {
    const before = this.found.join(' ');
    this.found = faultSentences(finding, this.current);
    const words = this.found.join(' ').slice(0, longestFault);
    const isKept = faultNotes(this.log).some((note) => note.words === words);
    if (words !== '' && !isKept && this.still === undefined)
      this.record(faultEntry(words, this.past.seq + 1, this.now()));
    if (this.found.join(' ') !== before) this.tell([]);
  }

  /** Calls back after every change; gives the function that ends it. */
  subscribe(listener: SessionListener): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  private step(edit: Edit | undefined, moves: Move): DispatchResult {
    return edit === undefined
      ? { kind: 'refused', reason: 'There is nothing to take back.' }
      : this.change(edit, moves);
  }

  private change(edit: Edit, moves: Move): DispatchResult {
    if (this.still !== undefined) return { kind: 'refused', reason: this.still };
    const applied = applyEdit(this.current, edit, this.stacks);
    if (applied.kind === 'refused') return applied;
    const inverse = mergedInverse(applied.inverse);
    const followed = this.workbooks.follow(applied.quote, edit);
    if (followed.kind === 'refused') return refusedBy(followed.faults);
    this.current = applied.quote;
    this.record({ seq: this.past.seq + 1, edit, inverse, at: this.now(), moves });
    this.tell(followed.changes);
    return { kind: 'done' };
  }

  private record(entry: LogEntry): void {
    this.past = { entries: [...this.past.entries, entry], seq: entry.seq };
    this.history = movedHistory(this.history, entry);
    this.queue?.add(entry);
  }

  private queueOf(keeper: QuoteKeeper, turn: SessionStart['turn']): SaveQueue {
    return new SaveQueue({
      keeper,
      head: () => ({ quote: this.current, options: optionSummaries(this.current, (option) => this.results(option)) }),
      told: () => this.tell([]),
      ...(turn !== undefined && { turn }),
    });
  }

  private tell(changes: readonly OptionChange[]): void {
    for (const listener of this.listeners) listener(changes);
  }
}

function refusedBy(faults: readonly { readonly reason: string }[]): DispatchResult {
  return { kind: 'refused', reason: faults.map((fault) => fault.reason).join(' ') };
}
