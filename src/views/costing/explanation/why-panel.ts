import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sharedStyles } from '../../parts/shared.styles.ts';
import { send } from '../../parts/sheet-events.ts';
import type { Neighbour, WhyView } from './why-view.ts';

/**
 * Why a number is what it is: its formula in names and in numbers, step by step, what it reads and what it feeds.
 *
 * @fires why-asked - to walk on to a neighbour
 * @fires walked-back - to what was asked before
 */
@customElement('why-panel')
export class WhyPanel extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
        overflow-wrap: anywhere;
      }

      h3 {
        margin: 0;
        font-size: var(--large);
      }

      h4 {
        margin: 1rem 0 0.25rem;
        font-size: var(--small);
        font-weight: 400;
        color: var(--ink-light);
      }

      .back {
        min-height: 2.75rem;
        margin-bottom: 0.5rem;
        text-align: left;
        text-decoration: underline;
        text-decoration-color: var(--rule);
        text-underline-offset: 3px;
      }

      .value {
        margin: 0;
        font-size: var(--larger);
        font-weight: 600;
      }

      code {
        font-family: var(--mono);
        font-size: var(--small);
      }

      ol {
        margin: 0;
        padding-left: 1.5rem;
      }

      ul {
        list-style: none;
        margin: 0;
        padding: 0;
      }

      li button {
        display: flex;
        justify-content: space-between;
        gap: 1rem;
        width: 100%;
        min-height: 2rem;
        text-align: left;
        border-bottom: 1px solid var(--hairline);
      }

      li button:hover {
        color: var(--resin);
      }

      @media (pointer: coarse) {
        li button {
          min-height: 2.75rem;
          align-items: center;
        }
      }

      .number {
        white-space: nowrap;
      }

      .trouble {
        color: var(--stop);
      }
    `,
  ];

  @property({ attribute: false }) why: WhyView | undefined;
  @property() option = '';
  @property() optionTitle = '';
  /** What was asked before; empty at the first question. */
  @property() cameFrom = '';

  /** Brings focus to its heading, once that is drawn; the page stays where it is. */
  async come(): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector('h3')?.focus({ preventScroll: true });
  }

  override render(): TemplateResult {
    const { why } = this;
    if (why === undefined)
      return html`<p class="light">Touch a name or a number to see how it is worked out and what it moves.</p>`;
    return html`
      ${this.cameFrom === '' ? nothing : html`<button class="back" type="button" @click=${this.onBack}>Back to ${this.cameFrom}</button>`}
      <p class="light">${this.optionTitle}</p>
      <h3 tabindex="-1">${why.title}</h3>
      <p class="value">${why.value}</p>
      ${why.trouble === '' ? nothing : html`<p class="trouble">${why.trouble}</p>`}
      ${why.names === '' ? nothing : html`<h4>Worked out as</h4><code>${why.names}</code>`}
      ${why.numbers === '' ? nothing : html`<h4>With today’s numbers</h4><code>${why.numbers}</code>`}
      ${
        why.steps.length < 2
          ? nothing
          : html`<h4>Step by step</h4>
            <ol>
              ${why.steps.map((step) => html`<li><code>${step.text} = ${step.gives}</code></li>`)}
            </ol>`
      }
      ${this.neighbours('Made from', why.readsFrom)} ${this.neighbours('Goes into', why.feeds)}
      ${why.note === '' ? nothing : html`<h4>Note</h4><p>${why.note}</p>`}
      ${why.source === '' ? nothing : html`<h4>Where it comes from</h4><p>${why.source}</p>`}
    `;
  }

  private onBack(): void {
    this.dispatchEvent(new CustomEvent('walked-back'));
  }

  private neighbours(title: string, cells: readonly Neighbour[]): TemplateResult | typeof nothing {
    if (cells.length === 0) return nothing;
    return html`<h4>${title}</h4>
      <ul>
        ${cells.map(
          ({ cell, name, value }) => html`<li>
            <button type="button" @click=${() => send(this, 'why-asked', { cell, option: this.option })}>
              <span>${name}</span><span class="number">${value}</span>
            </button>
          </li>`,
        )}
      </ul>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'why-panel': WhyPanel;
  }
}
