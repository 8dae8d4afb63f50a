import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { ifDefined } from 'lit/directives/if-defined.js';
import type { OptionResults } from '../../quote/option-results.ts';
import { isHeldBack } from '../../quote/told-checks.ts';
import type { QuoteSession } from '../../session/quote-session.ts';
import { notYet, wholePrice } from '../parts/line-words.ts';
import { SessionNews } from '../parts/session-news.ts';

/** So many titles, each in two lines, have room one under the other; more of them scroll. */
const mostInView = 3;

/** On a phone the prices and the way on stay in the thumb's reach. The app draws it anew after every change. */
@customElement('thumb-bar')
export class ThumbBar extends LitElement {
  static override styles = css`
    :host {
      display: none;
    }

    @media (max-width: 52rem) {
      :host {
        position: fixed;
        inset: auto 0 0;
        z-index: 1;
        display: flex;
        align-items: center;
        gap: 0 1rem;
        padding: 0.25rem 0.75rem;
        background: var(--paper);
        border-top: 1px solid var(--rule);
      }
    }

    .prices {
      flex: 1 1 0;
      min-width: 0;
      display: flex;
      gap: 0 0.75rem;
    }

    .option {
      flex: 1 1 0;
      min-width: 0;
      display: flex;
      flex-direction: column;
    }

    .price {
      display: flex;
      flex: none;
      flex-wrap: wrap;
      align-items: baseline;
      gap: 0 0.375rem;
    }

    .mark {
      color: var(--ink-light);
      font-size: var(--small);
      font-weight: 600;
      white-space: nowrap;
    }

    strong {
      font-size: var(--large);
      line-height: 1.2;
      color: var(--resin);
      white-space: nowrap;
    }

    .held strong {
      color: var(--ink-light);
    }

    .title {
      display: -webkit-box;
      overflow: hidden;
      font-size: var(--small);
      line-height: 1.15;
      overflow-wrap: anywhere;
      -webkit-box-orient: vertical;
      -webkit-line-clamp: 3;
    }

    /* From three on, one under the other: a title and its price on a line. */
    .many {
      gap: 0;
      flex-direction: column;
      max-height: 6.5rem;
      overflow-y: auto;
    }

    .many .option {
      flex: none;
      flex-direction: row-reverse;
      align-items: baseline;
      justify-content: space-between;
      gap: 0.5rem;
    }

    .many strong {
      font-size: 1rem;
    }

    a {
      flex: none;
      display: inline-flex;
      align-items: center;
      min-height: 2.75rem;
      box-sizing: border-box;
      max-width: 4.75rem;
      padding: 0 0.5rem;
      text-align: center;
      border-radius: 4px;
      background: var(--resin);
      color: var(--on-resin);
      font-weight: 600;
      line-height: 1.15;
      text-decoration: none;
    }
  `;

  @property({ attribute: false }) session: QuoteSession | undefined;
  /** Address of the face that comes next. */
  @property() next = '';
  @property() nextTitle = '';

  constructor() {
    super();
    new SessionNews(this, 'everything');
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (session === undefined) return nothing;
    const { options } = session.quote;
    return html`<div
        class=${options.length > 2 ? 'prices many' : 'prices'}
        role="group"
        aria-label="Prices"
        tabindex=${ifDefined(options.length > mostInView ? 0 : undefined)}
      >
        ${options.map(({ id, title }) => {
          const { price, held } = pricedOption(session.results(id));
          return html`<div class=${held ? 'option held' : 'option'}>
            <span class="price"><strong>${price}</strong> ${held ? html`<span class="mark">${notYet}</span>` : nothing}</span>
            <span class="title">${title}</span>
          </div>`;
        })}
      </div>
      <a href=${this.next}>${this.nextTitle}</a>`;
  }
}

/** An option's price in words, and whether it may not be given. */
function pricedOption(results: OptionResults | undefined): { readonly price: string; readonly held: boolean } {
  return results === undefined ? { price: '', held: false } : { price: wholePrice(results), held: isHeldBack(results) };
}

/** The same as one text, for those who listen. */
export function toldPrice(results: OptionResults): string {
  const { price, held } = pricedOption(results);
  return held ? `${price}, ${notYet}` : price;
}

declare global {
  interface HTMLElementTagNameMap {
    'thumb-bar': ThumbBar;
  }
}
