import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { Measures } from '../../units/measures.ts';
import { type FieldText, textBesideUnit } from '../../units/typed-measure.ts';
import { one, type Unit } from '../../units/unit.ts';
import { numberFieldStyles } from './number-field.styles.ts';
import { sharedStyles } from './shared.styles.ts';
import { insertAtCaret, signKeys, signKeysStyles } from './sign-keys.ts';
import { type ReadEntry, readEntry } from './typed-entry.ts';
import { TypedField } from './typed-field.ts';
import { WithinWindow } from './within-window.ts';

/**
 * A number with its unit, typed as people say it.
 *
 * @fires entered - the value read, with the text it was typed as
 */
@customElement('number-field')
export class NumberField extends TypedField {
  static override styles = [sharedStyles, signKeysStyles, numberFieldStyles];

  /** The unit of its values; they are shown and typed in `measures`. */
  @property({ attribute: false }) unit: Unit = one;
  @property() measures: Measures = 'us';
  /** What leads the number: the $ of an amount. */
  @property({ attribute: 'prefix' }) lead = '';
  @property() suffix = '';
  /** What is usual and what may be entered, told while the field has focus. */
  @property() hint = '';
  @property({ type: Boolean }) unchecked = false;

  /** A refusal that was told in the other measures. */
  private pastRefusal = '';

  constructor() {
    super();
    new WithinWindow(this, '.said');
  }

  /** Whether it holds a text that could not be taken. */
  get hasFault(): boolean {
    return (this.draft?.fault ?? '') !== '';
  }

  protected override read(text: string): ReadEntry {
    return readEntry(text, this.unit, this.measures);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('measures') && !this.hasFocus()) {
      this.release();
      // What came with the change of measures is told in the new ones.
      if (!changed.has('refusal')) this.pastRefusal = this.refusal;
    }
    super.willUpdate(changed);
  }

  override render(): TemplateResult {
    const fault = this.draft?.fault || (this.refusal === this.pastRefusal ? '' : this.refusal);
    const standing = this.standing();
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
          .value=${live(standing.text)}
          aria-invalid=${fault === '' ? 'false' : 'true'}
          aria-describedby="unit error said"
          @input=${this.onInput}
          @change=${this.onChange}
          @keydown=${this.onKey}
          @focus=${this.onFocus}
          @blur=${this.onBlur}
        />
        <span class="unit" id="unit">${standing.saysUnit ? '' : this.suffix}</span>
      </div>
      <div id="error">${fault === '' ? nothing : html`<p class="error" role="alert">${fault} ${this.inForce()}</p>`}</div>
      ${this.said()}
    `;
  }

  /** What is being typed stands as it is typed; anything else so that its unit is not said twice. */
  private standing(): FieldText {
    const { draft } = this;
    return draft?.isTyped && draft.fault === ''
      ? { text: draft.text, saysUnit: false }
      : this.besideUnit(draft?.text ?? this.text);
  }

  private besideUnit(text: string): FieldText {
    return textBesideUnit(text, this.unit, this.measures);
  }

  private inForce(): string {
    if (this.text === '') return '';
    const { text, saysUnit } = this.besideUnit(this.text);
    if (saysUnit) return `${text} still counts.`;
    const unit = this.suffix === '' || this.suffix.startsWith('/') ? this.suffix : ` ${this.suffix}`;
    return `${this.lead}${text}${unit} still counts.`;
  }

  /** How what stands was typed, where the field shows it otherwise. */
  private typedAs(): string {
    return this.draft?.isTyped || this.besideUnit(this.text).text === this.text ? '' : `Typed as ${this.text}.`;
  }

  private said(): TemplateResult | typeof nothing {
    const { draft } = this;
    if (draft === undefined) return nothing;
    const read = draft.isTyped ? this.read(draft.text) : undefined;
    const echo = read?.kind === 'entry' ? read.echo : '';
    const hint = this.hasFocus() ? [this.typedAs(), this.hint].join(' ').trim() : '';
    const keys = this.hasFocus() ? signKeys(this.unit, this.measures, this.onSign) : nothing;
    if (echo === '' && hint === '' && keys === nothing) return nothing;
    return html`<div class="said ${echo === '' && hint === '' ? 'keys-only' : ''}" id="said">
      ${echo === '' ? nothing : html`<p class="echo">${echo}</p>`} ${hint === '' ? nothing : html`<p>${hint}</p>`} ${keys}
    </div>`;
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

  protected override onChange(): void {
    this.pastRefusal = '';
    super.onChange();
  }

  protected override onKey(event: KeyboardEvent): void {
    super.onKey(event);
    if (event.key === 'Escape') this.hold();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'number-field': NumberField;
  }
}
