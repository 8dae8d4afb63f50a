import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { alongColumn, placeAfter } from '../parts/roving-stop.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import { optionDayStyles } from './day-face.styles.ts';
import type { DayRow, DayTable, DayView } from './day-view.ts';
import './strip/strip-chart.ts';

type ShownDays = Extract<DayView, { kind: 'days' }>;

/**
 * The days of one option, drawn and in a table. A row and its piece of the picture stand out together while one of them is
 * pointed at, and stay so once one is pressed.
 */
@customElement('option-day')
export class OptionDay extends LitElement {
  static override styles = [sharedStyles, optionDayStyles];

  @property() heading = '';
  @property({ attribute: false }) view: ShownDays | undefined;

  @state() private pointed = '';
  @state() private kept = '';
  /** The row that Tab stops at. */
  @state() private stop = '';

  override render(): TemplateResult | typeof nothing {
    const { view, heading } = this;
    if (view === undefined) return nothing;
    return html`<div class="pair">
      <div class="part">
        <strip-chart
          .days=${view.strip}
          words=${`${heading}, hour by hour; the table says the same.`}
          marked=${this.marked}
          kept=${this.kept}
          @piece-pointed=${(event: CustomEvent<string>) => this.point(event.detail)}
          @piece-kept=${(event: CustomEvent<string>) => this.keep(event.detail)}
        ></strip-chart>
        ${this.visits(view)}
      </div>
      <div class="part">${this.tasks(view)}</div>
    </div>`;
  }

  private get marked(): string {
    return this.pointed === '' ? this.kept : this.pointed;
  }

  private point(key: string): void {
    this.pointed = key;
  }

  private keep(key: string): void {
    this.kept = this.kept === key ? '' : key;
  }

  private tasks({ days }: ShownDays): TemplateResult {
    const keys = days.flatMap(({ rows }) => rows.map(({ key }) => key));
    const stop = keys.includes(this.stop) ? this.stop : (keys[0] ?? '');
    return html`<div class="frame" role="region" tabindex="0" aria-label=${`Times of ${this.heading}`}>
      <table @keydown=${(event: KeyboardEvent) => this.onKey(event, keys)}>
        <caption class="hidden">Times of ${this.heading}</caption>
        <thead>
          <tr>
            <th scope="col" class="words">Task</th>
            <th scope="col">Start</th>
            <th scope="col">Finish</th>
            <th scope="col">People</th>
            <th scope="col">Takes</th>
          </tr>
        </thead>
        ${days.map((day) => this.day(day, stop))}
      </table>
    </div>`;
  }

  private day({ title, rows }: DayTable, stop: string): TemplateResult {
    return html`<tbody>
      <tr>
        <th scope="rowgroup" colspan="5">${title}</th>
      </tr>
      ${rows.map((row) => this.row(row, row.key === stop))}
    </tbody>`;
  }

  private row({ key, mark, words, why, start, finish, people, hours, quiet }: DayRow, isStop: boolean): TemplateResult {
    return html`<tr
      class="${quiet ? 'quiet' : ''} ${key === this.marked ? 'marked' : ''}"
      @pointerenter=${() => this.point(key)}
      @pointerleave=${() => this.point('')}
    >
      <th scope="row" class="words">
        <button
          class="numbered"
          type="button"
          data-key=${key}
          tabindex=${isStop ? 0 : -1}
          aria-pressed=${key === this.kept ? 'true' : 'false'}
          title="Marks it in the picture"
          @focus=${() => this.onFocus(key)}
          @blur=${() => this.point('')}
          @click=${() => this.keep(key)}
        ><span class="number">${mark}</span>${words}</button>
        ${why === '' ? nothing : html`<small class="why">${why}</small>`}
      </th>
      <td>${start}</td>
      <td>${finish}</td>
      <td>${people}</td>
      <td>${hours}</td>
    </tr>`;
  }

  private onFocus(key: string): void {
    this.stop = key;
    this.point(key);
  }

  private onKey(event: KeyboardEvent, keys: readonly string[]): void {
    const { target } = event;
    if (!(target instanceof HTMLButtonElement)) return;
    const at = keys.indexOf(target.dataset.key ?? '');
    const next = placeAfter(event.key, at, keys.length, alongColumn);
    if (at < 0 || next === undefined) return;
    event.preventDefault();
    const buttons = [...this.renderRoot.querySelectorAll<HTMLElement>('.numbered')];
    buttons[next]?.focus();
  }

  private visits({ visits, totals }: ShownDays): TemplateResult {
    return html`<div class="frame" role="region" tabindex="0" aria-label=${`Paid hours of ${this.heading}`}>
        <table>
          <caption class="hidden">Paid hours of ${this.heading}</caption>
          <thead>
            <tr>
              <th scope="col" class="words">Visit</th>
              <th scope="col">Crew</th>
              <th scope="col">Labour</th>
              <th scope="col">Driving and waiting</th>
              <th scope="col">Paid</th>
              <th scope="col">Crew-days</th>
            </tr>
          </thead>
          <tbody>
            ${visits.map(
              ({ title, crew, worked, idle, paid, crewDays }) => html`<tr>
                <th scope="row" class="words visit">${title}</th>
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
    'option-day': OptionDay;
  }
}
