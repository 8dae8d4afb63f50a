import { css, html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { notSaid } from '../../template/written-text.ts';
import { sharedStyles } from './shared.styles.ts';
import { type ReadEntry, readWords } from './typed-entry.ts';
import { TypedField } from './typed-field.ts';

/**
 * A name or a few words, as plain text in one line.
 *
 * @fires entered - the words as they are kept
 */
@customElement('words-field')
export class WordsField extends TypedField {
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

  protected override read(text: string): ReadEntry {
    return readWords(text);
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
}

declare global {
  interface HTMLElementTagNameMap {
    'words-field': WordsField;
  }
}
