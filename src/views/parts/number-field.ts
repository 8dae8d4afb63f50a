import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { one, type Unit } from '../../units/unit.ts';
import { sharedStyles } from './shared.styles.ts';
import { type EntryDetail, readEntry } from './typed-entry.ts';

/**
 * A number with its unit, typed as people say it. What cannot be read stays in the field as an error and the last good
 * value stays in force.
 *
 * @fires entered - the value read, with the text it was typed as
 */
@customElement('number-field')
export class NumberField extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }

      .row {
        display: flex;
        align-items: baseline;
        gap: 0.375rem;
      }

      input {
        width: 100%;
        min-width: 3.5rem;
        text-align: right;
      }

      .unit {
        flex: none;
        min-width: 3.25rem;
        color: var(--ink-light);
        font-size: var(--small);
      }

      .error {
        margin: 0.125rem 0 0;
        color: var(--stop);
        font-size: var(--small);
      }

      .echo {
        margin: 0.125rem 0 0;
        color: var(--ink-light);
        font-size: var(--small);
      }
    `,
  ];

  @property() label = '';
  @property({ attribute: false }) unit: Unit = one;
  /** The text of the value in force. */
  @property() text = '';
  /** What leads the number: the $ of an amount. */
  @property({ attribute: 'prefix' }) lead = '';
  @property() suffix = '';
  @property({ type: Boolean }) unchecked = false;
  /** A refusal from above, for a value that reads well but may not stand. */
  @property() refusal = '';

  @state() private draft: string | undefined;
  @state() private fault = '';

  override render(): TemplateResult {
    const fault = this.fault || this.refusal;
    const echo = this.echo();
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
          .value=${live(this.draft ?? this.text)}
          aria-invalid=${fault === '' ? 'false' : 'true'}
          aria-describedby="unit said"
          @input=${this.onInput}
          @change=${this.onChange}
          @keydown=${this.onKey}
        />
        <span class="unit" id="unit">${this.suffix}</span>
      </div>
      <div id="said">
        ${fault === '' ? nothing : html`<p class="error">${fault}</p>`}
        ${fault === '' && echo !== '' ? html`<p class="echo">${echo}</p>` : nothing}
      </div>
    `;
  }

  private echo(): string {
    if (this.draft === undefined) return '';
    const read = readEntry(this.draft, this.unit);
    return read.kind === 'entry' ? read.echo : '';
  }

  private onInput(event: InputEvent): void {
    if (event.target instanceof HTMLInputElement) this.draft = event.target.value;
    this.fault = '';
  }

  private onChange(): void {
    const { draft } = this;
    if (draft === undefined) return;
    const read = readEntry(draft, this.unit);
    if (read.kind === 'fault') {
      this.fault = read.reason;
      return;
    }
    this.draft = undefined;
    this.fault = '';
    this.dispatchEvent(new CustomEvent<EntryDetail>('entered', { detail: read.detail }));
  }

  private onKey(event: KeyboardEvent): void {
    if (event.key !== 'Escape') return;
    this.draft = undefined;
    this.fault = '';
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'number-field': NumberField;
  }
}
