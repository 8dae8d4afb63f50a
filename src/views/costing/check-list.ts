import { css, html, LitElement, type nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ToldCheck } from '../../quote/told-checks.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import { send } from '../parts/sheet-events.ts';

const words = { stop: 'Stop', caution: 'Caution', note: 'Note' } as const;
const shapes = { stop: '■', caution: '▲', note: '●' } as const;

/**
 * Checks of an option that do not hold: each a sentence with a word and a shape for how grave it is.
 *
 * @fires why-asked
 */
@customElement('check-list')
export class CheckList extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
        contain: layout style;
      }

      ul {
        list-style: none;
        margin: 0;
        padding: 0;
      }

      li {
        padding: 0.5rem 0.75rem;
        margin-bottom: 0.25rem;
        border-left: 4px solid var(--rule);
      }

      .stop {
        border-color: var(--stop);
        background: var(--stop-wash);
      }

      .caution {
        border-color: var(--caution);
        background: var(--caution-wash);
      }

      .word {
        font-weight: 600;
      }

      .stop .word {
        color: var(--stop);
      }

      .caution .word {
        color: var(--caution);
      }

      button {
        text-align: left;
      }
    `,
  ];

  @property({ attribute: false }) checks: readonly ToldCheck[] = [];
  @property() option = '';

  override render(): TemplateResult | typeof nothing {
    if (this.checks.length === 0) return html`<p class="light">No check is open.</p>`;
    return html`<ul>
      ${this.checks.map(
        (check) => html`<li class=${check.severity}>
          <button type="button" @click=${() => send(this, 'why-asked', { cell: check.cell, option: this.option })}>
            <span class="word"><span aria-hidden="true">${shapes[check.severity]}</span> ${words[check.severity]}</span>
            ${check.says}
          </button>
        </li>`,
      )}
    </ul>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'check-list': CheckList;
  }
}
