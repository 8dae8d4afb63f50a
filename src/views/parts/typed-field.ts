import { LitElement, type PropertyValues } from 'lit';
import { property, state } from 'lit/decorators.js';
import type { EntryDetail, ReadEntry } from './typed-entry.ts';

/** What a field shows instead of what is in force. */
interface Draft {
  readonly text: string;
  /** Whether it was typed, and not only kept from being written over. */
  readonly isTyped: boolean;
  readonly fault: string;
}

/** Tells whoever holds the reason of a refusal that it is over: the refused text is gone, or is being written anew. */
export function giveUpRefused(from: EventTarget): void {
  from.dispatchEvent(new Event('refused-given-up', { bubbles: true, composed: true }));
}

/**
 * What fields of one line have in common: what cannot be taken stays in the field with the reason, what is in force stays,
 * and while the field has focus nothing writes to it but Escape, which gives back what is in force.
 *
 * @fires entered - what was read
 * @fires refused-given-up - what was refused is gone, or is being written anew
 */
export abstract class TypedField extends LitElement {
  @property() label = '';
  /** The text of what is in force. */
  @property() text = '';
  /** A refusal from above, for what reads well but may not stand. */
  @property() refusal = '';

  @state() protected draft: Draft | undefined;

  /** The last text that was read and sent upward: it comes back into the field when it is refused. */
  private offered: string | undefined;
  private pullsFocus = false;

  protected abstract read(text: string): ReadEntry;

  /** Brings focus to the field with all of its text selected, as soon as the field is there. */
  override focus(): void {
    this.pullsFocus = !this.hasUpdated;
    this.input?.focus();
    this.input?.select();
  }

  protected override updated(): void {
    if (this.pullsFocus) this.focus();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('text') && !this.hasFocus()) this.release();
    if (changed.has('refusal') && this.refusal !== '' && this.offered !== undefined)
      this.draft = { text: this.offered, isTyped: true, fault: this.refusal };
  }

  protected get input(): HTMLInputElement | null {
    return this.renderRoot?.querySelector('input') ?? null;
  }

  protected hasFocus(): boolean {
    return this.input !== null && this.shadowRoot?.activeElement === this.input;
  }

  protected release(): void {
    this.draft = undefined;
    this.offered = undefined;
  }

  protected onBlur(): void {
    if (this.draft?.fault === '') this.draft = undefined;
  }

  protected onInput(event: InputEvent): void {
    if (!(event.target instanceof HTMLInputElement)) return;
    this.draft = { text: event.target.value, isTyped: true, fault: '' };
    this.endRefusal();
  }

  protected onChange(): void {
    const { draft } = this;
    if (!draft?.isTyped) return;
    const read = this.read(draft.text);
    if (read.kind === 'fault') {
      this.draft = { ...draft, fault: read.reason };
      return;
    }
    this.draft = this.hasFocus() ? { ...draft, isTyped: false } : undefined;
    this.offered = draft.text;
    this.dispatchEvent(new CustomEvent<EntryDetail>('entered', { detail: read.detail }));
  }

  protected onKey(event: KeyboardEvent): void {
    if (event.key !== 'Escape') return;
    this.release();
    this.endRefusal();
  }

  /** Without its end, the same reason given again would be no news. */
  private endRefusal(): void {
    if (this.refusal !== '') giveUpRefused(this);
  }
}

declare global {
  interface HTMLElementEventMap {
    'refused-given-up': Event;
  }
}
