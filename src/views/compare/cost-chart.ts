import { css, html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sharedStyles } from '../parts/shared.styles.ts';
import type { CostBar } from './cost-bars.ts';

const barHeight = 28;
const width = 1000;

/** What each option's price a square foot pays for: one stacked bar an option, all to one scale, with the table beside it. */
@customElement('cost-chart')
export class CostChart extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }

      .bar {
        display: grid;
        grid-template-columns: 9rem minmax(0, 1fr) 5.5rem;
        gap: 0.75rem;
        align-items: center;
        margin-bottom: 0.5rem;
      }

      .bar strong:last-child {
        text-align: right;
      }

      svg {
        display: block;
        width: 100%;
        height: 28px;
      }

      .tone-0 {
        fill: var(--flake-1);
        background: var(--flake-1);
      }

      .tone-1 {
        fill: var(--flake-2);
        background: var(--flake-2);
      }

      .tone-2 {
        fill: var(--flake-3);
        background: var(--flake-3);
      }

      .tone-3 {
        fill: var(--flake-4);
        background: var(--flake-4);
      }

      .tone-4 {
        fill: var(--flake-5);
        background: var(--flake-5);
      }

      .tone-5 {
        fill: var(--resin);
        background: var(--resin);
      }

      table {
        border-collapse: collapse;
        width: 100%;
        font-size: var(--small);
      }

      th,
      td {
        padding: 0.125rem 0.5rem 0.125rem 0;
        text-align: right;
        border-bottom: 1px solid var(--hairline);
      }

      th:first-child {
        text-align: left;
        font-weight: 400;
      }

      .swatch {
        display: inline-block;
        width: 0.75rem;
        height: 0.75rem;
        margin-right: 0.375rem;
      }

      @media (max-width: 40rem) {
        .bar {
          grid-template-columns: 1fr auto;
        }

        .bar svg {
          grid-column: 1 / -1;
          grid-row: 2;
        }
      }
    `,
  ];

  @property({ attribute: false }) bars: readonly CostBar[] = [];
  /** What the bars are about. */
  @property() caption = '';

  override render(): TemplateResult | typeof nothing {
    const { bars } = this;
    const [first] = bars;
    if (first === undefined) return nothing;
    return html`
      <div aria-hidden="true">${bars.map((bar) => this.bar(bar))}</div>
      <table>
        <caption class="hidden">${this.caption}</caption>
        <thead>
          <tr>
            <td></td>
            ${bars.map(({ title }) => html`<th scope="col">${title}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${first.parts.map(
            ({ label, tone }) => html`<tr>
              <th scope="row"><span class="swatch tone-${tone}"></span>${label}</th>
              ${bars.map(({ parts }) => html`<td>${parts[tone]?.amount}</td>`)}
            </tr>`,
          )}
        </tbody>
      </table>
    `;
  }

  private bar({ title, total, parts }: CostBar): TemplateResult {
    return html`<div class="bar">
      <strong>${title}</strong>
      <svg viewBox="0 0 ${width} ${barHeight}" preserveAspectRatio="none">
        ${parts.map(
          ({ start, share, tone }) =>
            svg`<rect class="tone-${tone}" x=${start * width} y="0" width=${Math.max(0, share * width - 2)} height=${barHeight}></rect>`,
        )}
      </svg>
      <strong>${total}</strong>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'cost-chart': CostChart;
  }
}
