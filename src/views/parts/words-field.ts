import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { notSaid } from '../../template/written-text.ts';
import { sharedStyles } from './shared.styles.ts';
import { type EntryDetail, readWords } from './typed-entry.ts';

/** What the field shows instead of the words in force. */
interface Draft {
  readonly text: string;
  readonly fault: string;
}

/**
 * A name or a few words, as plain text in one line. What cannot be taken stays in the field with the reason, and the words
 * in force stay. While it has focus nothing writes to it but Escape, which gives them back.
 *
 * @fires entered - the words as they are kept
 */
@customElement('words-field')
export class WordsField extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }

      input {
        width: 100%;
      }

      .error {
        margin: 0.125rem 0 0;
        color: var(--stop);
        font-size: var(--small);
      }

      @media (pointer: coarse) {
        input {
          min-height: 2.75rem;
        }
      }
    `,
  ];

  @property() label = '';
  /** The words in force. */
  @property() text = '';
  /** A refusal from above. */
  @property() refusal = '';

  @state() private draft: Draft | undefined;

  /** The last words that were sent upward: they come back into the field when they are refused. */
  private offered: string | undefined;
  private pullsFocus = false;

  /** Brings focus to the field with all of its words selected, as soon as the field is there. */
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
      this.draft = { text: this.offered, fault: this.refusal };
  }

  override render(): TemplateResult {
    const fault = this.draft?.fault || this.refusal;
    return html`
      <label class="hidden" for="field">${this.label}</label>
      <input
        id="field"
        type="text"
        autocomplete="off"
        spellcheck="false"
        placeholder=${notSaid}
        .value=${live(this.draft?.text ?? this.text)}
        aria-invalid=${fault === '' ? 'false' : 'true'}
        aria-describedby="error"
        @input=${this.onInput}
        @change=${this.onChange}
        @keydown=${this.onKey}
        @blur=${this.onBlur}
      />
      <div id="error">${fault === '' ? nothing : html`<p class="error" role="alert">${fault} ${this.inForce()}</p>`}</div>
    `;
  }

  private inForce(): string {
    return this.text === '' ? 'Nothing is said yet.' : `“${this.text}” still counts.`;
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

  private onBlur(): void {
    if (this.draft?.fault === '') this.draft = undefined;
  }

  private onInput(event: InputEvent): void {
    if (event.target instanceof HTMLInputElement) this.draft = { text: event.target.value, fault: '' };
  }

  private onChange(): void {
    const { draft } = this;
    if (draft === undefined) return;
    const read = readWords(draft.text);
    if (read.kind === 'fault') {
      this.draft = { ...draft, fault: read.reason };
      return;
    }
    this.draft = this.hasFocus() ? draft : undefined;
    this.offered = draft.text;
    this.dispatchEvent(new CustomEvent<EntryDetail>('entered', { detail: read.detail }));
  }

  private onKey(event: KeyboardEvent): void {
    if (event.key === 'Escape') this.release();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'words-field': WordsField;
  }
}
