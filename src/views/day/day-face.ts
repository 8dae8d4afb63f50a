import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { QuoteSession } from '../../session/quote-session.ts';
import type { Measures } from '../../units/measures.ts';
import './two-jobs/jobs-day.ts';
import './two-jobs/option-worth.ts';
import { promiseWords } from '../parts/day-promise.ts';
import { type NamedResults, namedResults } from '../parts/named-results.ts';
import { SessionNews } from '../parts/session-news.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import { dayFaceStyles } from './day-face.styles.ts';
import { dayView } from './day-view.ts';
import type { KeptQuotes } from './kept-quotes.ts';
import './option-day.ts';

/**
 * The Day, on the owner's side: when each task of each option is done, drawn and in a table, with the hours that are paid;
 * then what options are worth and how two jobs go on one day.
 */
@customElement('day-face')
export class DayFace extends LitElement {
  static override styles = [sharedStyles, dayFaceStyles];

  @property({ attribute: false }) session: QuoteSession | undefined;
  @property({ attribute: false }) quotes: KeptQuotes | undefined;
  @property() measures: Measures = 'us';

  constructor() {
    super();
    new SessionNews(this, 'numbers');
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (session === undefined) return nothing;
    const options = namedResults(session);
    return html`<main>
      ${options.map((option) => this.option(option))}
      <option-worth .options=${options} measures=${this.measures}></option-worth>
      <jobs-day .quote=${session.quote} .options=${options} .quotes=${this.quotes}></jobs-day>
    </main>`;
  }

  private option({ title, results }: NamedResults): TemplateResult {
    const view = dayView(results, this.measures);
    return html`<section aria-label=${`The day of ${title}`}>
      <h2>${title}</h2>
      ${
        view.kind === 'nothing'
          ? html`<p>${view.words}</p>`
          : html`<p class="promise">${promiseWords(results)}</p>
              <option-day heading=${title} .view=${view}></option-day>`
      }
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'day-face': DayFace;
  }
}
