import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { clearedWords } from '../../quote/answer-clears.ts';
import { answerEdit, asksOf } from '../../quote/asks.ts';
import { openChecks, type ToldCheck } from '../../quote/told-checks.ts';
import '../parts/checks/check-list.ts';
import type { Edit, SingleEdit } from '../../quote/edit.ts';
import { newRowEdit } from '../../quote/new-row.ts';
import type { QuoteDocument, SheetPlace, StoredValue } from '../../quote/quote-document.ts';
import type { QuoteSession } from '../../session/quote-session.ts';
import type { Measures } from '../../units/measures.ts';
import '../parts/plan/plan-drawer.ts';
import { decisionEdit } from '../parts/checks/stop-decision.ts';
import { type NamedResults, namedResults } from '../parts/named-results.ts';
import { measuredFloor } from '../parts/plan/measured-floor.ts';
import { SessionNews } from '../parts/session-news.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import type { SheetEvents } from '../parts/sheet-events.ts';
import { tell } from '../parts/told-words.ts';
import type { AskAnswers } from './ask-answers.ts';
import type { AnswerGiven, NumberGiven } from './ask-group.ts';
import './ask-group.ts';
import './length-pad.ts';
import type { LengthPad, MeasuredSides } from './length-pad.ts';
import { type OwnerFigure, ownerFigures } from './owner-figures.ts';
import { priceFaceStyles } from './price-face.styles.ts';
import { type AreaView, type PricedOption, type PriceView, priceView } from './price-view.ts';

/** A system that may be priced as an option. */
export interface OfferedSystem {
  readonly id: string;
  readonly title: string;
  /** The option that is this system, if it is in the quote. */
  readonly option: string | undefined;
}

/** What stands with an option in the owner’s view only. */
interface OwnersSide {
  readonly checks: readonly ToldCheck[];
  readonly figures: readonly OwnerFigure[];
}

const floor: SheetPlace = { kind: 'floor' };

/** Where a refused system is told, among the refusals by line: beside the systems. */
export const systemsPlace = 'systems';

/**
 * Price: a few questions and big answers, for the garage. A customer may look at all of it; the owner's figures show only
 * while the owner's view is on.
 *
 * @fires edit - a change to the quote
 * @fires told - what an answer took out
 * @fires system-wanted - an offered system to add or take away
 */
@customElement('price-face')
export class PriceFace extends LitElement {
  static override styles = [sharedStyles, priceFaceStyles];

  @property({ attribute: false }) session: QuoteSession | undefined;
  @property({ attribute: false }) systems: readonly OfferedSystem[] = [];
  @property({ type: Boolean }) owner = false;
  @property() measures: Measures = 'us';
  /** Why the last entry was refused, by its line. */
  @property({ attribute: false }) refusals: ReadonlyMap<string, string> = new Map();

  @state() private measured = '';
  /** What the last answer took out, told while the quote is as that answer left it. */
  @state() private cleared: { readonly words: string; readonly quote: QuoteDocument | undefined } | undefined;

  @query('length-pad') private readonly pad: LengthPad | null | undefined;

  constructor() {
    super();
    new SessionNews(this, 'numbers');
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (session === undefined) return nothing;
    const options = namedResults(session);
    const view = priceView(session.quote, options, this.measures);
    return html`<main class="columns">
        <div>
          ${this.measure(view)}
          <section aria-labelledby="slab">
            <h2 id="slab">Slab and joints</h2>
            <ask-group
              .questions=${view.questions}
              @answered=${(event: CustomEvent<AnswerGiven>) => this.answer(event.detail, floor)}
              .refusals=${this.refusals}
              @number-given=${(event: CustomEvent<NumberGiven>) => this.give(event.detail)}
            ></ask-group>
          </section>
          ${this.offered()}
        </div>
        <div class="prices">
          ${view.options.map((option, at) => this.priced(option, options[at]))}
        </div>
      </main>
      <length-pad heading=${this.padHeading(view)} measures=${this.measures} .current=${this.padSides(view)} @measured=${(event: CustomEvent<MeasuredSides>) => this.onMeasured(event.detail)}></length-pad>`;
  }

  private padSides(view: PriceView): AreaView['sidesFeet'] {
    return view.areas.find(({ row }) => row === this.measured)?.sidesFeet;
  }

  private padHeading(view: PriceView): string {
    const area = view.areas.find(({ row }) => row === this.measured);
    return area === undefined ? 'Another area' : `${area.label}, now ${area.sides}`;
  }

  private measure(view: PriceView): TemplateResult {
    return html`<section aria-labelledby="measure">
      <h2 id="measure">Measure · ${view.floor}</h2>
      ${view.measured ? nothing : html`<p class="held">A typical floor, not measured yet: choose a size or touch the area to measure.</p>`}
      <ul class="areas">
        ${view.areas.map(
          ({ row, label, sides, area }) => html`<li>
            <button class="area" type="button" @click=${() => this.openPad(row)}>
              <span>${label}</span><span class="sides">${sides}</span><span>${area}</span>
            </button>
            ${
              view.areas.length > 1
                ? html`<button
                  class="away"
                  type="button"
                  aria-label="Take away ${label}"
                  @click=${() => this.send({ kind: 'removeRow', sheet: floor, table: 'areas', row })}
                >
                  ✕
                </button>`
                : nothing
            }
          </li>`,
        )}
      </ul>
      <ask-group
        .questions=${this.sizes(view)}
        @answered=${(event: CustomEvent<AnswerGiven>) => this.answer(event.detail, floor)}
      ></ask-group>
      <p class="held" ?hidden=${this.clearedNow() === ''}>${this.clearedNow()}</p>
      <button class="plain" type="button" @click=${() => this.addArea()}>Add an area</button>
      ${this.plan()}
    </section>`;
  }

  private clearedNow(): string {
    return this.cleared?.quote === this.session?.quote ? (this.cleared?.words ?? '') : '';
  }

  /** Sizes of rows; those of the areas take the place of them all, so they are offered while there is one. */
  private sizes({ sizes, areas }: PriceView): readonly AskAnswers[] {
    return areas.length < 2 ? sizes : sizes.filter(({ ask }) => ask.kind !== 'sizes' || ask.table !== 'areas');
  }

  private plan(): TemplateResult | typeof nothing {
    const results = this.session?.results(this.session.quote.options[0]?.id ?? '');
    if (results === undefined) return nothing;
    return html`<plan-drawer
      .floor=${measuredFloor(results)}
      measures=${this.measures}
      @plan-edit=${(event: CustomEvent<Edit>) => this.send(event.detail)}
    ></plan-drawer>`;
  }

  private offered(): TemplateResult {
    const refused = this.refusals.get(systemsPlace);
    return html`<section aria-labelledby="systems">
      <h2 id="systems">Systems</h2>
      <div class="systems">
        ${this.systems.map(
          ({ id, title, option }) => html`<button
            type="button"
            aria-pressed=${option === undefined ? 'false' : 'true'}
            @click=${() => this.dispatchEvent(new CustomEvent<string>('system-wanted', { detail: id }))}
          >
            ${title}
          </button>`,
        )}
      </div>
      ${refused === undefined ? nothing : html`<p class="error" role="alert">${refused}</p>`}
    </section>`;
  }

  private priced(option: PricedOption, named: NamedResults | undefined): unknown {
    const results = this.owner ? named?.results : undefined;
    const owners = results && {
      checks: openChecks(results, this.measures),
      figures: ownerFigures(results, this.measures),
    };
    return guard([option, owners?.checks, owners?.figures], () => this.section(option, owners));
  }

  private section(option: PricedOption, owners: OwnersSide | undefined): TemplateResult {
    return html`<section aria-label=${option.title}>
      <h2>${option.title}</h2>
      <p class=${option.held.length > 0 ? 'price not-yet' : 'price'}>${option.price === '' ? 'incomplete' : option.price}</p>
      <p class="days">${option.days}</p>
      ${option.held.map((words) => html`<p class="held"><strong>Not to be given yet.</strong> ${words}</p>`)}
      <ask-group
        .questions=${option.extras}
        @answered=${(event: CustomEvent<AnswerGiven>) => this.answer(event.detail, { kind: 'option', option: option.id })}
      ></ask-group>
      <ul class="included" aria-label="Included in ${option.title}">
        ${option.included.map(({ text }) => html`<li>${text}</li>`)}
      </ul>
      ${
        owners === undefined
          ? nothing
          : html`<check-list .checks=${owners.checks} option=${option.id} @stop-decided=${this.onStopDecided}></check-list><dl class="owner">${owners.figures.map(({ label, value }) => html`<dt>${label}</dt><dd>${value}</dd>`)}</dl>`
      }
    </section>`;
  }

  private answer({ ask: id, answer }: AnswerGiven, sheet: SheetPlace): void {
    const { session } = this;
    const option = sheet.kind === 'option' ? sheet.option : session?.quote.options[0]?.id;
    const results = option === undefined ? undefined : session?.results(option);
    const ask =
      results && asksOf(results, sheet.kind === 'option' ? 'system' : 'floor').find((candidate) => candidate.id === id);
    const edit = ask && results && answerEdit(ask, answer, sheet, results);
    if (edit === undefined || ask === undefined || results === undefined) return;
    const words = clearedWords(ask, answer, results, this.measures);
    const before = session?.quote;
    this.send(edit);
    // A refused answer took nothing out.
    if (session?.quote === before) return;
    this.cleared = { words, quote: session?.quote };
    if (words !== '') tell(this, words);
  }

  private readonly onStopDecided = ({ detail }: SheetEvents['stop-decided']): void => {
    const edit = this.session && decisionEdit(this.session, detail);
    if (edit !== undefined) this.send(edit);
  };

  private give({ line, value, typed }: NumberGiven): void {
    this.send({ kind: 'enterLine', sheet: floor, line, value: typed === undefined ? value : { value, typed } });
  }

  private openPad(row: string): void {
    this.measured = row;
    this.pad?.open();
  }

  /** Nothing is added before it is measured: leaving the pad leaves the floor as it was. */
  private addArea(): void {
    this.openPad('');
  }

  private onMeasured({ length, width }: MeasuredSides): void {
    const results = this.session?.results(this.session.quote.options[0]?.id ?? '');
    if (results === undefined) return;
    const added = this.measured === '' ? newRowEdit(results, floor, 'areas') : undefined;
    const row = added?.row ?? this.measured;
    const cell = (column: string, value: StoredValue): SingleEdit => ({
      kind: 'enterCell',
      sheet: floor,
      table: 'areas',
      row,
      column,
      value,
    });
    const sides = [cell('shape', 'rectangle'), cell('length', length), cell('width', width)];
    this.send({ kind: 'several', words: 'the measure', edits: added === undefined ? sides : [added, ...sides] });
  }

  private send(edit: Edit): void {
    this.dispatchEvent(new CustomEvent<Edit>('edit', { detail: edit }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'price-face': PriceFace;
  }
}
