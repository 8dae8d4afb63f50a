import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { QuoteDocument } from '../../../quote/quote-document.ts';
import type { SeenQuote } from '../../../session/quote-desk.ts';
import type { QuoteList } from '../../../storage/quote-store.ts';
import { dayTableStyles } from '../day-face.styles.ts';
import type { KeptQuotes } from '../kept-quotes.ts';
import '../strip/strip-chart.ts';
import { type NamedResults, namedResults } from '../../parts/named-results.ts';
import { sharedStyles } from '../../parts/shared.styles.ts';
import { chooserStyles } from './chooser.styles.ts';
import './crew-entries.ts';
import { type CrewSettings, keepCrewSettings, readCrewSettings } from './crew-settings.ts';
import { type BlockRow, type ChosenJob, type DayOfTwo, twoJobs } from './two-jobs.ts';

/** Two jobs, one crew, one day: chosen from the quotes kept in this browser, tried in every order. */
@customElement('jobs-day')
export class JobsDay extends LitElement {
  static override styles = [sharedStyles, dayTableStyles, chooserStyles];

  /** The quote that is open, whose options come as they stand. */
  @property({ attribute: false }) quote: QuoteDocument | undefined;
  @property({ attribute: false }) options: readonly NamedResults[] = [];
  @property({ attribute: false }) quotes: KeptQuotes | undefined;

  @state() private list: QuoteList | undefined;
  /** The other quote that was chosen, undefined while it is the open one. */
  @state() private seen: SeenQuote | undefined;
  @state() private trouble = '';
  @state() private chosen = { first: '', quote: '', second: '' };
  @state() private settings: CrewSettings = readCrewSettings();

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.leave();
    this.chosen = { ...this.chosen, quote: '', second: '' };
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('quotes') && this.quotes !== undefined) void this.findQuotes(this.quotes);
  }

  override render(): TemplateResult | typeof nothing {
    const { quote } = this;
    if (quote === undefined) return nothing;
    const others = this.otherOptions();
    const first = optionAmong(this.options, this.chosen.first);
    const second = optionAmong(others, this.chosen.second);
    return html`<section aria-label="Two jobs, one crew, one day">
      <h2>Two jobs, one crew, one day</h2>
      <p class="light">While a coat cures on one floor the crew works on another. Nothing here changes a quote or a price.</p>
      <div class="choices">
        ${select('First job, of this quote', this.options, first?.id, this.onFirst)}
        ${select('Second job, from', this.offered(quote), this.chosen.quote || quote.id, this.onQuote)}
        ${select('its system', others, second?.id, this.onSecond)}
      </div>
      <crew-entries .settings=${this.settings} @settings-changed=${this.onSettings}></crew-entries>
      ${this.trouble === '' ? nothing : html`<p role="alert">${this.trouble}</p>`}
      ${
        first === undefined || second === undefined
          ? html`<p>Choose a system for each of the two jobs.</p>`
          : this.tried([
              { quote: quote.title, option: first.title, results: first.results },
              { quote: this.seen?.quote.title ?? quote.title, option: second.title, results: second.results },
            ])
      }
    </section>`;
  }

  private tried(jobs: readonly [ChosenJob, ChosenJob]): TemplateResult {
    const { verdict, blocks, day, reasons } = twoJobs(jobs, this.settings);
    return html`<div class="answer" role="group" aria-label="Whether both fit one day">
        <p><strong>${day?.words ?? (verdict === 'not one day' ? 'They do not fit in one day.' : 'Whether they fit in one day cannot be told.')}</strong></p>
        ${reasons.length === 0 ? nothing : html`<ul>${reasons.map((reason) => html`<li>${reason}</li>`)}</ul>`}
      </div>
      ${day === undefined ? nothing : this.day(day)} ${blocks.length === 0 ? nothing : this.blocks(blocks)}`;
  }

  private day({ strip, rows }: DayOfTwo): TemplateResult {
    return html`<strip-chart .days=${[strip]} words="the order that ends first; the table says the same."></strip-chart>
      <div class="frame" role="region" tabindex="0" aria-label="The day of both jobs">
        <table>
          <caption class="hidden">The day of both jobs</caption>
          <thead>
            <tr>
              <th scope="col" class="words">The crew</th>
              <th scope="col">Start</th>
              <th scope="col">Finish</th>
              <th scope="col">Takes</th>
            </tr>
          </thead>
          <tbody>
            ${rows.map(
              ({ words, start, finish, hours }) => html`<tr>
                <th scope="row" class="words">${words}</th>
                <td>${start}</td>
                <td>${finish}</td>
                <td>${hours}</td>
              </tr>`,
            )}
          </tbody>
        </table>
      </div>`;
  }

  private blocks(rows: readonly BlockRow[]): TemplateResult {
    return html`<h3>Blocks of work between waits</h3>
      <div class="frame" role="region" tabindex="0" aria-label="Blocks of work">
        <table>
          <caption class="hidden">Blocks of work</caption>
          <thead>
            <tr>
              <th scope="col" class="words">Job</th>
              <th scope="col" class="words">Block</th>
              <th scope="col">Takes</th>
              <th scope="col">Grinder</th>
              <th scope="col">Wait after it</th>
            </tr>
          </thead>
          <tbody>
            ${rows.map(
              ({ job, block, length, grinder, wait }) => html`<tr>
                <th scope="row" class="words">${job}</th>
                <td class="words">${block}</td>
                <td>${length}</td>
                <td>${grinder}</td>
                <td>${wait}</td>
              </tr>`,
            )}
          </tbody>
        </table>
      </div>`;
  }

  /** The open quote first. */
  private offered(quote: QuoteDocument): Offered[] {
    const others = (this.list?.quotes ?? []).filter(({ id }) => id !== quote.id);
    return [{ id: quote.id, title: `${quote.title} (this one)` }, ...others];
  }

  private otherOptions(): readonly NamedResults[] {
    const { seen } = this;
    return seen === undefined ? this.options : namedResults(seen);
  }

  private async findQuotes(quotes: KeptQuotes): Promise<void> {
    const list = await quotes.list();
    if (list.kind === 'list') this.list = list;
    else this.trouble = list.reason;
  }

  private readonly onFirst = (first: string): void => {
    this.chosen = { ...this.chosen, first };
  };

  private readonly onSecond = (second: string): void => {
    this.chosen = { ...this.chosen, second };
  };

  /** The last choice wins: a quote that comes after another was chosen is let go again. */
  private readonly onQuote = async (id: string): Promise<void> => {
    const chosen = { ...this.chosen, quote: id, second: '' };
    this.chosen = chosen;
    this.trouble = '';
    this.leave();
    if (id === this.quote?.id) return;
    const seen = await this.quotes?.look(id);
    if (seen === undefined) return;
    if (seen.kind === 'fault') this.trouble = seen.reason;
    else if (this.chosen !== chosen) seen.close();
    else this.seen = seen;
  };

  private readonly onSettings = ({ detail }: CustomEvent<CrewSettings>): void => {
    this.settings = detail;
    keepCrewSettings(detail);
  };

  private leave(): void {
    this.seen?.close();
    this.seen = undefined;
  }
}

interface Offered {
  readonly id: string;
  readonly title: string;
}

function optionAmong(options: readonly NamedResults[], id: string): NamedResults | undefined {
  return options.find((option) => option.id === id) ?? options[0];
}

function select(
  label: string,
  offered: readonly Offered[],
  chosen: string | undefined,
  take: (id: string) => void,
): TemplateResult {
  const onChange = (event: Event): void => {
    if (event.target instanceof HTMLSelectElement) take(event.target.value);
  };
  return html`<label
    >${label}
    <select @change=${onChange}>
      ${offered.map(({ id, title }) => html`<option value=${id} ?selected=${id === chosen}>${title}</option>`)}
    </select></label
  >`;
}

declare global {
  interface HTMLElementTagNameMap {
    'jobs-day': JobsDay;
  }
}
