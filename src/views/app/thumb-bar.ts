import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { isHeldBack } from '../../quote/told-checks.ts';
import type { QuoteSession } from '../../session/quote-session.ts';
import { SessionNews } from '../parts/session-news.ts';
import { notYet, wholePrice } from '../parts/shown-line.ts';

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

    div {
      flex: 1 1 0;
      min-width: 0;
    }

    strong {
      display: block;
      font-size: var(--large);
      line-height: 1.2;
      color: var(--resin);
    }

    .held strong {
      color: var(--ink-light);
    }

    span {
      display: block;
      font-size: var(--small);
      line-height: 1.2;
      white-space: nowrap;
      overflow: hidden;
      text-overflow: ellipsis;
    }

    a {
      flex: none;
      display: inline-flex;
      align-items: center;
      min-height: 2.75rem;
      padding: 0 0.75rem;
      border-radius: 4px;
      background: var(--resin);
      color: var(--on-resin);
      font-weight: 600;
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
    return html`${session.quote.options.map(({ id, title }) => {
      const { price, held } = pricedOption(session, id);
      return html`<div class=${held ? 'held' : ''}>
        <strong>${price}</strong><span>${held ? `${notYet}: ${title}` : title}</span>
      </div>`;
    })}
      <a href=${this.next}>${this.nextTitle}</a>`;
  }
}

/** An option's price in words, and whether it may not be given. */
function pricedOption(session: QuoteSession, option: string): { readonly price: string; readonly held: boolean } {
  const results = session.results(option);
  return results === undefined ? { price: '', held: false } : { price: wholePrice(results), held: isHeldBack(results) };
}

/** The same as one text, for those who listen. */
export function toldPrice(session: QuoteSession, option: string): string {
  const { price, held } = pricedOption(session, option);
  return held ? `${price}, ${notYet}` : price;
}

declare global {
  interface HTMLElementTagNameMap {
    'thumb-bar': ThumbBar;
  }
}
