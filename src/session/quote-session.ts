import type { OptionChange, QuoteWorkbooks } from '../engine/quote-workbooks.ts';
import { applyEdit, type StackOfOption } from '../quote/apply-edit.ts';
import type { Edit } from '../quote/edit.ts';
import type { OptionResults } from '../quote/option-results.ts';
import type { QuoteDocument } from '../quote/quote-document.ts';

export type DispatchResult = { readonly kind: 'done' } | { readonly kind: 'refused'; readonly reason: string };

/** What listeners are told: the quote is another, and which numbers are. */
export type SessionListener = (changes: readonly OptionChange[]) => void;

/** An edit with the one that takes it back. */
interface Step {
  readonly edit: Edit;
  readonly inverse: Edit;
}

/** The one mutable place: the quote that is open, its numbers, and the way back. */
export class QuoteSession {
  private current: QuoteDocument;
  private readonly workbooks: QuoteWorkbooks;
  private readonly stacks: StackOfOption;
  private readonly listeners = new Set<SessionListener>();
  private readonly done: Step[] = [];
  private undone: Step[] = [];

  /** `workbooks` hold `quote` already. */
  constructor(quote: QuoteDocument, workbooks: QuoteWorkbooks) {
    this.current = quote;
    this.workbooks = workbooks;
    this.stacks = (option) => workbooks.results(option)?.stack;
  }

  get quote(): QuoteDocument {
    return this.current;
  }

  results(option: string): OptionResults | undefined {
    return this.workbooks.results(option);
  }

  /** Changes the quote and its numbers, or says why not; on a refusal nothing has changed. */
  dispatch(edit: Edit): DispatchResult {
    const result = this.apply(edit);
    if (result.kind === 'refused') return result;
    this.done.push({ edit, inverse: result.inverse });
    this.undone = [];
    this.tell(result.changes);
    return { kind: 'done' };
  }

  /** The edit that `undo` would take back. */
  get undoable(): Edit | undefined {
    return this.done.at(-1)?.edit;
  }

  get redoable(): Edit | undefined {
    return this.undone.at(-1)?.edit;
  }

  undo(): DispatchResult {
    return this.walk(this.done, this.undone, (step) => step.inverse);
  }

  redo(): DispatchResult {
    return this.walk(this.undone, this.done, (step) => step.edit);
  }

  /** Calls back after every change; gives the function that ends it. */
  subscribe(listener: SessionListener): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  private walk(from: Step[], to: Step[], pick: (step: Step) => Edit): DispatchResult {
    const step = from.at(-1);
    if (step === undefined) return { kind: 'refused', reason: 'There is nothing to take back.' };
    const result = this.apply(pick(step));
    if (result.kind === 'refused') return result;
    from.pop();
    to.push(step);
    this.tell(result.changes);
    return { kind: 'done' };
  }

  private apply(
    edit: Edit,
  ):
    | { kind: 'applied'; inverse: Edit; changes: readonly OptionChange[] }
    | Extract<DispatchResult, { kind: 'refused' }> {
    const applied = applyEdit(this.current, edit, this.stacks);
    if (applied.kind === 'refused') return applied;
    const followed = this.workbooks.follow(applied.quote, edit);
    if (followed.kind === 'refused')
      return { kind: 'refused', reason: followed.faults.map((fault) => fault.reason).join(' ') };
    this.current = applied.quote;
    return { kind: 'applied', inverse: applied.inverse, changes: followed.changes };
  }

  private tell(changes: readonly OptionChange[]): void {
    for (const listener of this.listeners) listener(changes);
  }
}
