import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { repeat } from 'lit/directives/repeat.js';
import type { QuoteSession } from '../../session/quote-session.ts';
import type { Measures } from '../../units/measures.ts';
import { type NamedResults, namedResults } from '../parts/named-results.ts';
import { NarrowScreen } from '../parts/narrow-screen.ts';
import { optionTableStyles } from '../parts/option-table.styles.ts';
import { SessionNews } from '../parts/session-news.ts';
import { Settled } from '../parts/settled.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import { whileInView } from '../parts/while-in-view.ts';
import { compareFaceStyles } from './compare-face.styles.ts';
import type { CompareRow } from './compare-row.ts';
import { type CompareGroup, compareView } from './compare-view.ts';
import './cost-chart.ts';

const shownOnPhone = 2;
/** Pixels across that make a touch a swipe. */
const swipe = 60;

/**
 * Side by side: options in columns, the reference first, rows in the order a customer asks. The owner's rows, the cost bars
 * and the walk from price to price are there only while the owner's view is on.
 */
@customElement('compare-face')
export class CompareFace extends LitElement {
  static override styles = [sharedStyles, optionTableStyles, whileInView('.steps'), compareFaceStyles];

  @property({ attribute: false }) session: QuoteSession | undefined;
  @property({ type: Boolean }) owner = false;
  @property() measures: Measures = 'us';

  @state() private onlyDifferent = false;
  @state() private reference = 0;
  /** First of the other options in view on a phone. */
  @state() private beside = 0;

  private touchedAt: { readonly x: number; readonly y: number } | undefined;
  private readonly screen = new NarrowScreen(this);

  constructor() {
    super();
    new SessionNews(this, 'numbers');
    new Settled(this);
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (session === undefined) return nothing;
    const ordered = this.ordered(session);
    const view = compareView(this.inView(ordered), this.owner, this.measures);
    return html`<main @touchstart=${this.onTouchStart} @touchend=${this.onTouchEnd}>
      ${this.tools(ordered)}
      ${
        view.bars.length === 0
          ? nothing
          : html`<section aria-labelledby="pays"><h2 id="pays">${view.barsTitle}</h2><cost-chart caption=${view.barsTitle} .bars=${view.bars}></cost-chart></section>`
      }
      <section aria-labelledby="table">
        <h2 class="hidden" id="table">Options side by side</h2>
        <div class="frame" role="region" tabindex="0" aria-label="Options side by side">
          <table role="table" class="options columns-${view.options.length}">
            <thead>
              <tr role="row">
                <td role="cell"></td>${view.options.map(({ title }) => html`<th role="columnheader" scope="col">${title}</th>`)}
              </tr>
            </thead>
            ${repeat(
              view.groups,
              ({ title }) => title,
              (group) => guard([group, this.onlyDifferent], () => this.group(group)),
            )}
          </table>
        </div>
      </section>
      ${
        view.walks.length === 0
          ? nothing
          : html`<section class="steps">
            <h2>From one price to the other</h2>
            <div class="walks">
              ${view.walks.map(
                ({ from, to, steps }) => html`<ol aria-label="From ${from} to ${to}">
                  ${steps.map(({ words, amount }) => html`<li><span>${words}</span><span>${amount}</span></li>`)}
                </ol>`,
              )}
            </div>
          </section>`
      }
    </main>`;
  }

  private ordered(session: QuoteSession): NamedResults[] {
    const all = namedResults(session);
    const at = all.length === 0 ? 0 : this.reference % all.length;
    return [...all.slice(at), ...all.slice(0, at)];
  }

  /** Each button that brings another option names it. */
  private tools(ordered: readonly NamedResults[]): TemplateResult {
    const [, next] = ordered;
    const besideNext = this.isPaired(ordered) ? this.besideAt(ordered, this.beside + 1) : undefined;
    return html`<div class="tools">
      <button class="plain" type="button" aria-pressed=${this.onlyDifferent ? 'true' : 'false'} @click=${this.onOnlyDifferent}>
        Only what differs
      </button>
      ${
        next === undefined
          ? nothing
          : html`<button class="plain" type="button" @click=${this.onNextReference}>Compare with ${next.title}</button>`
      }
      ${
        besideNext === undefined
          ? nothing
          : html`<button class="plain" type="button" @click=${this.onNextBeside}>Show ${besideNext.title}</button>`
      }
    </div>`;
  }

  /** Whether the reference stands with one other at a time, as more have no room on a phone. */
  private isPaired(ordered: readonly NamedResults[]): boolean {
    return this.screen.isNarrow && ordered.length > shownOnPhone;
  }

  private inView(ordered: readonly NamedResults[]): readonly NamedResults[] {
    if (!this.isPaired(ordered)) return ordered;
    const other = this.besideAt(ordered, this.beside);
    return other === undefined ? ordered.slice(0, 1) : [...ordered.slice(0, 1), other];
  }

  /** The option that stands beside the reference after so many turns, backward where it is less than none. */
  private besideAt([, ...others]: readonly NamedResults[], turns: number): NamedResults | undefined {
    return others.at(turns % others.length);
  }

  private group({ title, rows }: CompareGroup): TemplateResult | typeof nothing {
    const shown = rows.filter((row) => !this.onlyDifferent || row.differs);
    if (shown.length === 0) return nothing;
    return html`<tbody>
      <tr role="row">
        <th role="rowheader" scope="rowgroup">${title}</th>
      </tr>
      ${repeat(
        shown,
        ({ name, label }) => `${name} ${label}`,
        (row) => this.row(row),
      )}
    </tbody>`;
  }

  private row({ name, label, cells }: CompareRow): TemplateResult {
    return html`<tr role="row" class=${name === 'price' ? 'price' : ''}>
      <th role="rowheader" scope="row">${label}</th>
      ${cells.map(({ text, difference }) => html`<td role="cell">${breaking(text)}${difference === '' ? nothing : html`<span class="difference">${difference}</span>`}</td>`)}
    </tr>`;
  }

  private onOnlyDifferent(): void {
    this.onlyDifferent = !this.onlyDifferent;
  }

  private onNextReference(): void {
    this.reference += 1;
  }

  private onNextBeside(): void {
    this.beside += 1;
  }

  private onTouchStart(event: TouchEvent): void {
    const [touch] = event.touches;
    this.touchedAt = touch && { x: touch.clientX, y: touch.clientY };
  }

  /** A swipe to the side brings the next option beside the reference. */
  private onTouchEnd(event: TouchEvent): void {
    const [touch] = event.changedTouches;
    const from = this.touchedAt;
    if (touch === undefined || from === undefined || !this.screen.isNarrow) return;
    const [across, down] = [touch.clientX - from.x, touch.clientY - from.y];
    if (Math.abs(across) >= swipe && Math.abs(across) > 2 * Math.abs(down)) this.beside += across < 0 ? 1 : -1;
  }
}

/** A line may end after the stroke of `$1,052.95/crew day`: on a phone a column is no wider than that. */
function breaking(text: string): unknown {
  return text.split('/').map((part, at) => (at === 0 ? part : html`/<wbr>${part}`));
}

declare global {
  interface HTMLElementTagNameMap {
    'compare-face': CompareFace;
  }
}
