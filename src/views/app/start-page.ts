import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { QuoteList, QuoteSummary } from '../../storage/quote-store.ts';
import { instantDay } from '../parts/instant-words.ts';
import { notYet } from '../parts/line-words.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import { writeRoute } from './route.ts';

/**
 * The quotes at hand, last changed first, and one way to begin.
 *
 * @fires quote-wanted - a new quote
 * @fires quote-unwanted - the id of a quote to remove
 */
@customElement('start-page')
export class StartPage extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
        max-width: 48rem;
        margin: 0 auto;
        padding: 0 1rem 4rem;
      }

      section {
        background: var(--paper);
        padding: 1rem 1.25rem;
        margin-bottom: 1rem;
      }

      h2 {
        margin: 0 0 0.5rem;
        font-size: var(--large);
      }

      ul {
        list-style: none;
        margin: 0;
        padding: 0;
      }

      li {
        display: flex;
        gap: 1rem;
        align-items: center;
        border-bottom: 1px solid var(--hairline);
      }

      a {
        flex: 1;
        display: grid;
        gap: 0 1rem;
        grid-template-columns: 1fr auto;
        padding: 0.75rem 0;
        color: inherit;
        text-decoration: none;
      }

      a:hover strong {
        color: var(--resin);
      }

      .when,
      .prices {
        color: var(--ink-light);
        font-size: var(--small);
      }

      .prices {
        text-align: right;
      }

      .begin {
        min-height: 3rem;
        padding: 0 1.25rem;
        border-radius: 4px;
        background: var(--resin);
        color: var(--on-resin);
        font-weight: 600;
      }

      .remove {
        min-height: 2.75rem;
        padding: 0 0.5rem;
        color: var(--ink-light);
        text-decoration: underline;
      }

      @media (max-width: 40rem) {
        a {
          grid-template-columns: 1fr;
        }

        .prices {
          text-align: left;
        }
      }

      .day {
        white-space: nowrap;
      }

      .mark {
        display: inline-block;
        padding: 0 0.375rem;
        border: 1px dashed var(--rule);
        font-size: var(--small);
      }
    `,
  ];

  @property({ attribute: false }) list: QuoteList | undefined;
  @property() trouble = '';

  /** The quote somebody asked to remove, until that is answered. */
  @state() private doubted = '';

  override render(): TemplateResult {
    const { list } = this;
    return html`<main>
      <section>
        <h2>Price a floor</h2>
        <p class="light">Measure, judge the slab, choose systems. A name and an address can wait.</p>
        <button class="begin" type="button" @click=${() => this.dispatchEvent(new CustomEvent('quote-wanted'))}>New price</button>
      </section>
      ${this.trouble === '' ? nothing : html`<section role="alert">${this.trouble}</section>`}
      <section>
        <h2>Quotes</h2>
        ${this.quotes(list)}
        ${list?.damaged.map(({ id, reason }) => html`<p role="alert">A quote (${id}) cannot be read: ${reason}</p>`)}
      </section>
    </main>`;
  }

  private quotes(list: QuoteList | undefined): TemplateResult {
    if (list === undefined) return html`<p class="light">Looking for quotes …</p>`;
    if (list.quotes.length === 0) return html`<p class="light">No quotes yet. A new price is kept here by itself.</p>`;
    // Keyed, so that a list that changes under a finger cannot put one quote's key in another's place.
    return html`<ul>${repeat(
      list.quotes,
      ({ id }) => id,
      (quote) => this.row(quote),
    )}</ul>`;
  }

  private row({ id, title, updatedAt, options, demo }: QuoteSummary): TemplateResult {
    return html`<li>
      <a href=${writeRoute({ kind: 'quote', id, face: 'price' })}>
        <strong>${title}</strong>
        <span class="prices">${options.map(({ title: option, price, held }) => html`${option} ${price}${held ? html` <span class="mark">${notYet}</span>` : nothing}<br />`)}</span>
        <span class="when">${demo ? html`<span class="mark">invented, to look around</span>` : nothing} <span class="day">${instantDay(updatedAt)}</span></span>
      </a>
      ${
        this.doubted === id
          ? html`<span>Remove for good?</span>
            <button class="remove" type="button" aria-label="Remove ${title} for good" @click=${() => this.removeForGood(id)}>Remove</button>
            <button class="remove" type="button" aria-label="Keep ${title}" @click=${() => this.doubt('')}>Keep</button>`
          : html`<button class="remove" type="button" aria-label="Remove ${title}" @click=${() => this.doubt(id)}>Remove</button>`
      }
    </li>`;
  }

  private doubt(id: string): void {
    this.doubted = id;
  }

  private removeForGood(id: string): void {
    this.doubted = '';
    this.dispatchEvent(new CustomEvent<string>('quote-unwanted', { detail: id }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'start-page': StartPage;
  }
}
