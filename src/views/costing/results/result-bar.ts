import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { isHeldBack } from '../../../quote/told-checks.ts';
import type { Measures } from '../../../units/measures.ts';
import { notYet, shownResult, wholePrice } from '../../parts/line-words.ts';
import type { NamedResults } from '../../parts/named-results.ts';

/** The results an owner never loses sight of: price, price by the area, gross, net and paid hours of each option. */
@customElement('result-bar')
export class ResultBar extends LitElement {
  static override styles = css`
    :host {
      position: fixed;
      inset: auto 0 0;
      z-index: 1;
      display: flex;
      justify-content: center;
      flex-wrap: wrap;
      gap: 0 3rem;
      padding: 0.5rem 1rem;
      background: var(--paper);
      border-top: 1px solid var(--rule);
    }

    div {
      white-space: nowrap;
      overflow: hidden;
      text-overflow: ellipsis;
    }

    strong {
      color: var(--resin);
      font-size: var(--large);
    }

    .held strong {
      color: var(--ink-light);
    }

    .mark {
      color: var(--stop);
      font-weight: 600;
    }

    @media (max-width: 52rem) {
      :host {
        display: none;
      }
    }
  `;

  @property({ attribute: false }) options: readonly NamedResults[] = [];
  @property() measures: Measures = 'us';

  override render(): TemplateResult {
    return html`${this.options.map((option) => this.option(option))}`;
  }

  private option({ title, results }: NamedResults): TemplateResult {
    const held = isHeldBack(results);
    return html`<div class=${held ? 'held' : ''}>
        ${title} <strong>${wholePrice(results)}</strong> ${held ? html`<span class="mark">${notYet}</span> ` : nothing}· ${shownResult(results, 'price_per_sqft', this.measures)} · gross ${shownResult(results, 'gross_margin')} · net
        ${shownResult(results, 'net_margin')} · ${shownResult(results, 'paid_hours')} paid
      </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'result-bar': ResultBar;
  }
}
