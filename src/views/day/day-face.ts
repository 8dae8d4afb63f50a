import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { QuoteSession } from '../../session/quote-session.ts';
import type { Measures } from '../../units/measures.ts';
import '../jobs-day/jobs-day.ts';
import '../jobs-day/option-worth.ts';
import { promiseWords } from '../parts/day-promise.ts';
import { type NamedResults, namedResults } from '../parts/named-results.ts';
import { SessionNews } from '../parts/session-news.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import { dayFaceStyles } from './day-face.styles.ts';
import { type DayRow, type DayTable, type DayView, dayView } from './day-view.ts';
import type { KeptQuotes } from './kept-quotes.ts';
import './strip-chart.ts';

type ShownDays = Extract<DayView, { kind: 'days' }>;

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
              <div class="pair">
                <div class="part">
                  <strip-chart .days=${view.strip} words=${`${title}, hour by hour; the table says the same.`}></strip-chart>
                  ${this.visits(title, view)}
                </div>
                <div class="part">${this.tasks(title, view)}</div>
              </div>`
      }
    </section>`;
  }

  private tasks(title: string, { days }: ShownDays): TemplateResult {
    return html`<div class="frame" role="region" tabindex="0" aria-label=${`Times of ${title}`}>
      <table>
        <caption class="hidden">Times of ${title}</caption>
        <thead>
          <tr>
            <th scope="col" class="words">Task</th>
            <th scope="col">Start</th>
            <th scope="col">Finish</th>
            <th scope="col">People</th>
            <th scope="col">Takes</th>
          </tr>
        </thead>
        ${days.map((day) => this.day(day))}
      </table>
    </div>`;
  }

  private day({ title, rows }: DayTable): TemplateResult {
    return html`<tbody>
      <tr>
        <th scope="rowgroup" colspan="5">${title}</th>
      </tr>
      ${rows.map((row) => this.row(row))}
    </tbody>`;
  }

  private row({ mark, words, start, finish, people, hours, quiet }: DayRow): TemplateResult {
    return html`<tr class=${quiet ? 'quiet' : ''}>
      <th scope="row" class="words numbered"><span class="number">${mark}</span>${words}</th>
      <td>${start}</td>
      <td>${finish}</td>
      <td>${people}</td>
      <td>${hours}</td>
    </tr>`;
  }

  private visits(title: string, { visits, totals }: ShownDays): TemplateResult {
    return html`<div class="frame" role="region" tabindex="0" aria-label=${`Paid hours of ${title}`}>
        <table>
          <caption class="hidden">Paid hours of ${title}</caption>
          <thead>
            <tr>
              <th scope="col" class="words">Visit</th>
              <th scope="col">Crew</th>
              <th scope="col">Labour</th>
              <th scope="col">Waiting and ways</th>
              <th scope="col">Paid</th>
              <th scope="col">Crew-days</th>
            </tr>
          </thead>
          <tbody>
            ${visits.map(
              ({ title: visit, crew, worked, idle, paid, crewDays }) => html`<tr>
                <th scope="row" class="words">${visit}</th>
                <td>${crew}</td>
                <td>${worked}</td>
                <td>${idle}</td>
                <td>${paid}</td>
                <td>${crewDays}</td>
              </tr>`,
            )}
          </tbody>
        </table>
      </div>
      <dl>${totals.map(({ label, value }) => html`<div><dt>${label}</dt><dd>${value}</dd></div>`)}</dl>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'day-face': DayFace;
  }
}
