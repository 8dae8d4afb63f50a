import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { keyed } from 'lit/directives/keyed.js';
import type { Edit } from '../../quote/edit.ts';
import type { OptionResults } from '../../quote/option-results.ts';
import type { SheetPlace } from '../../quote/quote-document.ts';
import { openChecks } from '../../quote/told-checks.ts';
import type { QuoteSession } from '../../session/quote-session.ts';
import type { ComposedSection } from '../../template/composed-sheet.ts';
import type { ProductRow } from '../../template/entries.ts';
import type { Measures } from '../../units/measures.ts';
import { refusalWords } from '../parts/refusal-words.ts';
import '../parts/plan/plan-drawer.ts';
import { decisionEdit } from '../parts/checks/stop-decision.ts';
import { namedResults } from '../parts/named-results.ts';
import { areasTable, measuredFloor } from '../parts/plan/measured-floor.ts';
import { SessionNews } from '../parts/session-news.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import type { SheetEvents } from '../parts/sheet-events.ts';
import { type AskedWhy, askedAt, askedCell } from './explanation/why-view.ts';
import '../parts/checks/check-list.ts';
import { editOf, type SheetEventType, sheetEventTypes } from './costing-edits.ts';
import { costingFaceStyles } from './costing-face.styles.ts';
import { type BoardView, boardView } from './results/board-view.ts';
import './results/result-bar.ts';
import './results/results-board.ts';
import './sheet/sheet-section.ts';
import { WhyPanel } from './explanation/why-panel.ts';
import { type WhyView, whyView } from './explanation/why-view.ts';
import type { SheetInView } from './sheet/sheet-in-view.ts';
import { sheetInView, shownSection } from './sheet/shown-sheet.ts';

const noRefusals: ReadonlyMap<string, string> = new Map();

/**
 * Costing: every entry of the shop, floor and system sheets, the results of all options live beside them, and an
 * explanation of any number on a touch.
 */
@customElement('costing-face')
export class CostingFace extends LitElement {
  static override styles = [sharedStyles, costingFaceStyles];

  @property({ attribute: false }) session: QuoteSession | undefined;
  /** Every product that may be chosen. */
  @property({ attribute: false }) priceList: ReadonlyMap<string, ProductRow> = new Map();
  @property() measures: Measures = 'us';

  @state() private place: SheetPlace = { kind: 'floor' };
  /** What was asked, with the steps that were followed from it; the last is in view. */
  @state() private trail: readonly AskedWhy[] = [];
  /** Why the last edit was refused, by the line, cell or table it was made at. */
  @state() private refusals = noRefusals;

  private askedFrom: HTMLElement | undefined;
  /** What the next paint brings into view: the top of another sheet, or the heading of an answer. */
  private coming: 'sheet' | 'answer' | undefined;
  /** The results as they stand, and as they stood before the last change. */
  private board: BoardView | undefined;
  private boardBefore: BoardView | undefined;

  constructor() {
    super();
    new SessionNews(this, 'numbers', () => {
      this.boardBefore = this.board;
      this.endRefusals();
    });
    this.addEventListener('why-asked', this.onWhy);
    this.addEventListener('refused-given-up', this.endRefusals);
    this.addEventListener('stop-decided', this.onStopDecided);
    for (const type of sheetEventTypes) this.addEventListener(type, this.onSheetEvent);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.boardBefore = undefined;
  }

  protected override willUpdate(): void {
    this.board = this.session && boardView(namedResults(this.session), this.boardBefore, this.measures);
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    const results = session?.results(this.optionInView(session));
    if (session === undefined || results === undefined) return nothing;
    const options = namedResults(session);
    const { place, priceList, measures } = this;
    const sheet = sheetInView({ quote: session.quote, place, results, priceList, measures });
    return html`
      <main class="body">
        ${this.outline(session, sheet)}
        <div class="sheet">
          <h2>${sheet.title}</h2>
          ${keyed(
            placeKey(this.place),
            sheet.sections.map(
              (section) =>
                html`<sheet-section id=${section.id} .made=${() => shownSection(section, sheet)} .refusals=${this.refusals}>${this.plan(section, results)}</sheet-section>`,
            ),
          )}
        </div>
        <div class="side">
          ${this.why(session)}
          <section class="results" aria-label="Results">
            <results-board .board=${this.board}></results-board>
            ${options.map(
              (option) => html`<h4>${option.title}</h4>
                <check-list .checks=${openChecks(option.results, measures)} option=${option.id}></check-list>`,
            )}
          </section>
        </div>
      </main>
      <result-bar .options=${options} measures=${this.measures}></result-bar>
    `;
  }

  protected override updated(): void {
    const { coming } = this;
    this.coming = undefined;
    if (coming === 'sheet') this.renderRoot.querySelector('h2')?.scrollIntoView({ block: 'nearest' });
    if (coming !== 'answer') return;
    for (const scrolled of this.renderRoot.querySelectorAll('.side, .why')) scrolled.scrollTop = 0;
    void this.renderRoot.querySelector('why-panel')?.come();
  }

  /** Beside the areas it is drawn from. */
  private plan(section: ComposedSection, results: OptionResults): TemplateResult | typeof nothing {
    if (!section.tables.some(({ table }) => table.name === areasTable)) return nothing;
    return html`<plan-drawer
      slot=${areasTable}
      .floor=${measuredFloor(results)}
      measures=${this.measures}
      refusal=${this.refusals.get('plan') ?? ''}
      @plan-edit=${this.onPlanEdit}
    ></plan-drawer>`;
  }

  private readonly onPlanEdit = ({ detail }: CustomEvent<Edit>): void => {
    const { session } = this;
    if (session === undefined) return;
    const done = session.dispatch(detail);
    this.refusals = done.kind === 'refused' ? new Map([['plan', done.reason]]) : noRefusals;
  };

  private readonly onStopDecided = ({ detail }: SheetEvents['stop-decided']): void => {
    const edit = this.session && decisionEdit(this.session, detail);
    if (edit !== undefined) this.session?.dispatch(edit);
  };

  /** The option whose sheet is in view, or the first: all share shop and floor. */
  private optionInView({ quote }: QuoteSession): string {
    const { place } = this;
    const inView = quote.options.find((option) => place.kind === 'option' && option.id === place.option);
    return (inView ?? quote.options[0])?.id ?? '';
  }

  private outline(session: QuoteSession, { sections }: SheetInView): TemplateResult {
    const places: { place: SheetPlace; title: string }[] = [
      { place: { kind: 'floor' }, title: 'The floor' },
      ...session.quote.options.map(({ id, title }) => ({ place: { kind: 'option', option: id } as const, title })),
      { place: { kind: 'shop' }, title: 'Shop rates' },
    ];
    return html`<nav aria-label="Sheets">
      ${places.map(({ place, title }) => {
        const here = samePlace(place, this.place);
        return html`<button type="button" aria-current=${here ? 'page' : 'false'} @click=${() => this.turnTo(place)}>${title}</button>
          ${
            here
              ? html`<div class="sections">
                ${sections.map(
                  ({ id, title: section }) =>
                    html`<button type="button" @click=${() => this.goTo(id)}>${section}</button>`,
                )}
              </div>`
              : nothing
          }`;
      })}
    </nav>`;
  }

  private why(session: QuoteSession): TemplateResult | typeof nothing {
    const asked = this.trail.at(-1);
    const why = this.told(session, asked);
    if (asked === undefined || why === undefined) return nothing;
    const title = session.quote.options.find((option) => option.id === asked.option)?.title ?? '';
    return html`<section class="why" aria-label="Why" @keydown=${this.onWhyKey}>
      <button class="plain close" type="button" @click=${this.onCloseWhy}>Close</button>
      <why-panel
        .why=${why}
        option=${asked.option}
        optionTitle=${title}
        cameFrom=${this.told(session, this.trail.at(-2))?.title ?? ''}
        @walked-back=${this.onWalkedBack}
      ></why-panel>
    </section>`;
  }

  /** Nothing once it is gone from the quote. */
  private told(session: QuoteSession, asked: AskedWhy | undefined): WhyView | undefined {
    const results = asked && session.results(asked.option);
    if (asked === undefined || results === undefined) return undefined;
    const cell = askedCell(asked, results);
    return cell === undefined ? undefined : whyView(results, cell, this.measures);
  }

  private turnTo(place: SheetPlace): void {
    this.place = place;
    this.endRefusals();
    this.coming = 'sheet';
  }

  private readonly endRefusals = (): void => {
    this.refusals = noRefusals;
  };

  private goTo(section: string): void {
    const sections = [...this.renderRoot.querySelectorAll('sheet-section')];
    sections.find((candidate) => candidate.id === section)?.come();
  }

  private readonly onWhy = (event: SheetEvents['why-asked']): void => {
    const { session } = this;
    const [from] = event.composedPath();
    if (session === undefined) return;
    const option = event.detail.option ?? this.optionInView(session);
    const results = session.results(option);
    const asked = results && askedAt(option, results, event.detail.cell);
    if (asked === undefined) return;
    // What is asked elsewhere than in the answer is a question of its own.
    const isStep = from instanceof WhyPanel;
    if (!isStep && from instanceof HTMLElement) this.askedFrom = from;
    this.answer(isStep ? [...this.trail, asked] : [asked]);
  };

  private readonly onWalkedBack = (): void => this.answer(this.trail.slice(0, -1));

  private answer(trail: readonly AskedWhy[]): void {
    this.trail = trail;
    this.coming = 'answer';
  }

  private readonly onWhyKey = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') this.onCloseWhy();
  };

  private readonly onCloseWhy = (): void => {
    const { askedFrom } = this;
    this.trail = [];
    this.askedFrom = undefined;
    // What it was asked from may be gone with its sheet.
    const back = askedFrom?.isConnected ? askedFrom : this.renderRoot.querySelector<HTMLElement>('[aria-current=page]');
    back?.focus();
  };

  private readonly onSheetEvent = (event: SheetEvents[SheetEventType]): void => {
    const { session, place, priceList } = this;
    const results = session?.results(this.optionInView(session));
    const type = sheetEventTypes.find((known) => known === event.type);
    if (session === undefined || results === undefined || type === undefined) return;
    const { edit, at } = editOf(type, event.detail, { sheet: place, results, priceList });
    const done = session.dispatch(edit);
    this.refusals =
      done.kind === 'refused' ? new Map([[at, refusalWords(edit, done.reason, results, this.measures)]]) : noRefusals;
  };
}

/** Half-typed text belongs to its sheet: another sheet, though of the same lines, is drawn anew. */
function placeKey(place: SheetPlace): string {
  return place.kind === 'option' ? place.option : place.kind;
}

function samePlace(a: SheetPlace, b: SheetPlace): boolean {
  return a.kind === 'option' && b.kind === 'option' ? a.option === b.option : a.kind === b.kind;
}

declare global {
  interface HTMLElementTagNameMap {
    'costing-face': CostingFace;
  }
}
