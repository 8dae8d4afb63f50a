import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { type FaultNote, faultNotes } from '../../quote/log-notes.ts';
import type { QuoteSession } from '../../session/quote-session.ts';
import { instantWords } from '../parts/instant-words.ts';
import { sharedStyles } from '../parts/shared.styles.ts';

/**
 * Says that the page's numbers came out differently when they were worked out again, which only a fault of the program can do.
 * The owner is told the cells and both values, and what was found before; a customer only that the price waits.
 */
@customElement('audit-notice')
export class AuditNotice extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      .fault,
      details {
        max-width: 100rem;
        margin: 0 auto 1rem;
        padding: 0.5rem 1rem;
        border-left: 4px solid var(--stop);
        background: var(--stop-wash);
      }

      .fault p,
      ul {
        margin: 0.25rem 0;
      }

      details {
        border-left-color: var(--rule);
        background: none;
        font-size: var(--small);
      }
    `,
  ];

  @property({ attribute: false }) session: QuoteSession | undefined;
  /** What differs now, a sentence each. */
  @property({ attribute: false }) faults: readonly string[] = [];
  @property({ type: Boolean }) owner = false;

  override render(): TemplateResult | typeof nothing {
    const notes = this.owner && this.session !== undefined ? faultNotes(this.session.log) : [];
    return html`${this.faults.length === 0 ? nothing : this.fault()} ${notes.length === 0 ? nothing : earlier(notes)}`;
  }

  private fault(): TemplateResult {
    if (!this.owner)
      return html`<div class="fault" role="alert">
        <p>This program found a fault of its own in these numbers. Please do not rely on a price here before it is looked into.</p>
      </div>`;
    return html`<div class="fault" role="alert">
      <p>
        This program found a fault of its own. Every number is worked out twice, in two ways, and here they do not come to the same.
        Nothing was changed; do not give a price before you know which is right.
      </p>
      <ul>
        ${this.faults.map((fault) => html`<li>${fault}</li>`)}
      </ul>
    </div>`;
  }
}

function earlier(notes: readonly FaultNote[]): TemplateResult {
  return html`<details>
    <summary>Faults of the program kept in this quote’s history: ${notes.length}</summary>
    <ul>
      ${notes.map(({ at, words }) => html`<li>${instantWords(at)}: ${words}</li>`)}
    </ul>
  </details>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'audit-notice': AuditNotice;
  }
}
