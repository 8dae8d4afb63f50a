import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../parts/number-field.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import type { EntryDetail } from '../parts/typed-entry.ts';
import type { AskAnswers } from './ask-answers.ts';

/** An answer given to a question. */
export interface AnswerGiven {
  readonly ask: string;
  readonly answer: number;
}

/** A number given to a question for numbers. */
export interface NumberGiven extends EntryDetail {
  readonly line: string;
}

/**
 * Questions of the first minute, each with its answers as big keys.
 *
 * @fires answered
 * @fires number-given
 */
@customElement('ask-group')
export class AskGroup extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }

      fieldset {
        margin: 0 0 0.75rem;
        padding: 0;
        border: 0;
        min-width: 0;
      }

      legend {
        padding: 0 0 0.25rem;
        color: var(--ink-light);
        font-size: var(--small);
      }

      .answers {
        display: flex;
        flex-wrap: wrap;
        gap: 0.375rem;
      }

      .answers button {
        min-height: 2.75rem;
        padding: 0 0.75rem;
        border: 1px solid var(--rule);
        border-radius: 4px;
      }

      button[aria-pressed='true'] {
        border-color: var(--resin);
        background: var(--resin-wash);
        box-shadow: inset 0 -3px var(--resin);
        font-weight: 600;
      }

      .unit {
        font-weight: 400;
      }

      .fields {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr));
        gap: 0.25rem 1rem;
      }

      .unit,
      .fields span {
        color: var(--ink-light);
        font-size: var(--small);
      }
    `,
  ];

  @property({ attribute: false }) questions: readonly AskAnswers[] = [];
  /** Why the last number was refused, by its line. */
  @property({ attribute: false }) refusals: ReadonlyMap<string, string> = new Map();

  override render(): TemplateResult {
    const toggles = this.questions.filter(({ ask }) => ask.kind === 'toggle');
    return html`
      ${this.questions.filter(({ ask }) => ask.kind !== 'toggle').map((question) => this.question(question))}
      ${
        toggles.length === 0
          ? nothing
          : html`<div class="answers" role="group" aria-label="Several can be true">${toggles.map((question) => this.toggle(question))}</div>`
      }
    `;
  }

  private question({ ask, answers, standing, fields }: AskAnswers): TemplateResult {
    if (ask.kind === 'fields') {
      return html`<fieldset>
        <legend>${ask.label}</legend>
        <div class="fields">
          ${fields.map(
            (field) => html`<div>
              <span aria-hidden="true">${field.label}</span>
              <number-field
                label=${field.label}
                .unit=${field.unit}
                measures=${field.measures}
                text=${field.typed}
                suffix=${field.suffix}
                refusal=${this.refusals.get(field.name) ?? ''}
                ?unchecked=${field.standing === 'unchecked'}
                @entered=${(event: CustomEvent<EntryDetail>) => this.give(field.name, event.detail)}
              ></number-field>
            </div>`,
          )}
        </div>
      </fieldset>`;
    }
    return html`<fieldset>
      <legend>${ask.label}</legend>
      <div class="answers">
        ${answers.map(
          (
            { words, unit },
            at,
          ) => html`<button type="button" aria-pressed=${at === standing ? 'true' : 'false'} @click=${() => this.answer(ask.id, at)}>
            ${words}${unit === '' ? nothing : html` <span class="unit">${unit}</span>`}
          </button>`,
        )}
      </div>
    </fieldset>`;
  }

  private toggle({ ask, standing }: AskAnswers): TemplateResult {
    return html`<button
      type="button"
      aria-pressed=${standing === 1 ? 'true' : 'false'}
      @click=${() => this.answer(ask.id, standing === 1 ? 0 : 1)}
    >
      ${ask.label}
    </button>`;
  }

  private answer(ask: string, answer: number): void {
    this.dispatchEvent(new CustomEvent<AnswerGiven>('answered', { detail: { ask, answer } }));
  }

  private give(line: string, detail: EntryDetail): void {
    this.dispatchEvent(new CustomEvent<NumberGiven>('number-given', { detail: { line, ...detail } }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ask-group': AskGroup;
  }
}
