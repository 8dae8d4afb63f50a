import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { Measures } from '../../units/measures.ts';
import { one, type Unit } from '../../units/unit.ts';
import { numberFieldStyles } from './number-field.styles.ts';
import { sharedStyles } from './shared.styles.ts';
import { insertAtCaret, signKeys, signKeysStyles } from './sign-keys.ts';
import { type EntryDetail, readEntry } from './typed-entry.ts';

/** What the field shows instead of the value in force. */
interface Draft {
  readonly text: string;
  /** Whether it was typed, and not only kept from being written over. */
  readonly isTyped: boolean;
  readonly fault: string;
}

/**
 * A number with its unit, typed as people say it. What cannot be read stays in the field as an error and the last good
 * value stays in force. While the field has focus nothing writes to it but Escape, which gives back the value in force.
 *
 * @fires entered - the value read, with the text it was typed as
 */
@customElement('number-field')
export class NumberField extends LitElement {
  static override styles = [sharedStyles, signKeysStyles, numberFieldStyles];

  @property() label = '';
  /** The unit of its values; they are shown and typed in `measures`. */
  @property({ attribute: false }) unit: Unit = one;
  @property() measures: Measures = 'us';
  /** The text of the value in force. */
  @property() text = '';
  /** What leads the number: the $ of an amount. */
  @property({ attribute: 'prefix' }) lead = '';
  @property() suffix = '';
  /** What is usual and what may be entered, told while the field has focus. */
  @property() hint = '';
  @property({ type: Boolean }) unchecked = false;
  /** A refusal from above, for a value that reads well but may not stand. */
  @property() refusal = '';

  @state() private draft: Draft | undefined;

  /** The last text that was read and sent upward: it comes back into the field when it is refused. */
  private offered: string | undefined;
  private pullsFocus = false;

  /** Whether it holds a text that could not be taken. */
  get hasFault(): boolean {
    return (this.draft?.fault ?? '') !== '';
  }

  /** Brings focus to the field with all of its text selected, as soon as the field is there. */
  override focus(): void {
    this.pullsFocus = !this.hasUpdated;
    this.input?.focus();
    this.input?.select();
  }

  protected override updated(): void {
    if (!this.pullsFocus) return;
    this.focus();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if ((changed.has('text') || changed.has('measures')) && !this.hasFocus()) this.release();
    if (changed.has('refusal') && this.refusal !== '' && this.offered !== undefined)
      this.draft = { text: this.offered, isTyped: true, fault: this.refusal };
  }

  override render(): TemplateResult {
    const fault = this.draft?.fault || this.refusal;
    return html`
      <div class="row ${this.unchecked ? 'unchecked' : ''}">
        <label class="hidden" for="field">${this.label}</label>
        ${this.lead === '' ? nothing : html`<span class="light">${this.lead}</span>`}
        <input
          id="field"
          type="text"
          inputmode=${this.unit.text === 'date' ? 'numeric' : 'decimal'}
          autocomplete="off"
          spellcheck="false"
          .value=${live(this.draft?.text ?? this.text)}
          aria-invalid=${fault === '' ? 'false' : 'true'}
          aria-describedby="unit error said"
          @input=${this.onInput}
          @change=${this.onChange}
          @keydown=${this.onKey}
          @focus=${this.onFocus}
          @blur=${this.onBlur}
        />
        <span class="unit" id="unit">${this.suffix}</span>
      </div>
      <div id="error">${fault === '' ? nothing : html`<p class="error" role="alert">${fault} ${this.inForce()}</p>`}</div>
      ${this.said()}
    `;
  }

  private inForce(): string {
    return this.text === '' ? '' : `${this.lead}${this.text} ${this.suffix}`.trim().concat(' still counts.');
  }

  private said(): TemplateResult | typeof nothing {
    const { draft } = this;
    if (draft === undefined) return nothing;
    const read = draft.isTyped ? readEntry(draft.text, this.unit, this.measures) : undefined;
    const echo = read?.kind === 'entry' ? read.echo : '';
    const hint = this.hasFocus() ? this.hint : '';
    const keys = this.hasFocus() ? signKeys(this.unit, this.measures, this.onSign) : nothing;
    if (echo === '' && hint === '' && keys === nothing) return nothing;
    return html`<div class="said ${echo === '' && hint === '' ? 'keys-only' : ''}" id="said">
      ${echo === '' ? nothing : html`<p class="echo">${echo}</p>`} ${hint === '' ? nothing : html`<p>${hint}</p>`} ${keys}
    </div>`;
  }

  private get input(): HTMLInputElement | null {
    return this.renderRoot?.querySelector('input') ?? null;
  }

  private hasFocus(): boolean {
    return this.input !== null && this.shadowRoot?.activeElement === this.input;
  }

  private release(): void {
    this.draft = undefined;
    this.offered = undefined;
  }

  /** What the field shows while it has focus is kept from being written over. */
  private hold(): void {
    this.draft = this.hasFocus() ? { text: this.text, isTyped: false, fault: '' } : undefined;
  }

  private readonly onSign = (sign: string): void => {
    if (this.input !== null) insertAtCaret(this.input, sign);
  };

  private onFocus(): void {
    if (this.draft === undefined) this.hold();
    this.input?.select();
  }

  private onBlur(): void {
    if (this.draft?.fault === '') this.draft = undefined;
  }

  private onInput(event: InputEvent): void {
    if (event.target instanceof HTMLInputElement) this.draft = { text: event.target.value, isTyped: true, fault: '' };
  }

  private onChange(): void {
    const { draft } = this;
    if (!draft?.isTyped) return;
    const read = readEntry(draft.text, this.unit, this.measures);
    if (read.kind === 'fault') {
      this.draft = { ...draft, fault: read.reason };
      return;
    }
    this.draft = this.hasFocus() ? { ...draft, isTyped: false } : undefined;
    this.offered = draft.text;
    this.dispatchEvent(new CustomEvent<EntryDetail>('entered', { detail: read.detail }));
  }

  private onKey(event: KeyboardEvent): void {
    if (event.key !== 'Escape') return;
    this.release();
    this.hold();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'number-field': NumberField;
  }
}
