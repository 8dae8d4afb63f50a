import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellValue } from '../../formula/cells.ts';
import type { Edit } from '../../quote/edit.ts';
import { lineValue, type OptionResults } from '../../quote/option-results.ts';
import type { SheetPlace, StoredValue } from '../../quote/quote-document.ts';
import { openChecks } from '../../quote/told-checks.ts';
import type { DispatchResult, QuoteSession } from '../../session/quote-session.ts';
import type { ProductRow } from '../../template/entries.ts';
import { resultLines } from '../../template/result-lines.ts';
import { formatQuantity } from '../../units/format.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import type { CellEntered, LineEntered, SheetEvents } from '../parts/sheet-events.ts';
import type { EntryDetail } from '../parts/typed-entry.ts';
import { type BoardOption, boardView } from './board-view.ts';
import './check-list.ts';
import { costingFaceStyles } from './costing-face.styles.ts';
import { editWords } from './edit-words.ts';
import { newRowEdit } from './new-row.ts';
import './results-board.ts';
import './sheet-section.ts';
import { sheetView } from './sheet-view.ts';
import './why-panel.ts';
import { whyView } from './why-view.ts';

interface AskedWhy {
  readonly option: string;
  readonly cell: number;
}

/**
 * Costing: every entry of the shop, floor and system sheets as labelled fields, the results of all options live beside
 * them, and an explanation of any number on a touch.
 */
@customElement('costing-face')
export class CostingFace extends LitElement {
  static override styles = [sharedStyles, costingFaceStyles];

  @property({ attribute: false }) session: QuoteSession | undefined;
  /** Every product that may be chosen. */
  @property({ attribute: false }) priceList: ReadonlyMap<string, ProductRow> = new Map();

  @state() private place: SheetPlace = { kind: 'floor' };
  @state() private asked: AskedWhy | undefined;
  @state() private refusals: ReadonlyMap<string, string> = new Map();
  @state() private refusal = '';

  private unsubscribe: (() => void) | undefined;
  private earlier = new Map<string, CellValue>();

  override connectedCallback(): void {
    super.connectedCallback();
    this.addEventListener('why-asked', this.onWhy);
    this.unsubscribe = this.session?.subscribe(() => this.requestUpdate());
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.removeEventListener('why-asked', this.onWhy);
    this.unsubscribe?.();
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (session === undefined) return nothing;
    const options = this.options(session);
    const results = this.resultsInView(session);
    return html`
      ${this.header(session)}
      <main class="body">
        <div class="sheet">${this.outline(session)} ${results === undefined ? nothing : this.sheet(session, results)}</div>
        <div class="side">
          <section class="why ${this.asked === undefined ? '' : 'asked'}" aria-label="Why">
            <button class="plain close" type="button" @click=${() => this.closeWhy()}>Close</button>
            ${this.why(session)}
          </section>
          <section class="results" aria-label="Results">
            <results-board .board=${boardView(options, (option, line) => this.earlier.get(`${option} ${line}`))}></results-board>
            ${options.map(
              (option) => html`<h4>${option.title}</h4>
                <check-list .checks=${openChecks(option.results)} option=${option.id}></check-list>`,
            )}
          </section>
        </div>
      </main>
      <div class="bar" aria-hidden="true">
        ${options.map((option) => html`<div><strong>${priceText(option.results)}</strong>${option.title}</div>`)}
      </div>
    `;
  }

  private options(session: QuoteSession): BoardOption[] {
    return session.quote.options.flatMap(({ id, title }) => {
      const results = session.results(id);
      return results === undefined ? [] : [{ id, title, results }];
    });
  }

  /** The option whose sheet is in view, or the first: all share shop and floor. */
  private optionInView(session: QuoteSession): string {
    return this.place.kind === 'option' ? this.place.option : (session.quote.options[0]?.id ?? '');
  }

  private resultsInView(session: QuoteSession): OptionResults | undefined {
    return session.results(this.optionInView(session));
  }

  private header(session: QuoteSession): TemplateResult {
    const results = this.resultsInView(session);
    const undo = editWords(session.undoable, results);
    const redo = editWords(session.redoable, results);
    return html`<header>
      <h1>${session.quote.title}<small>An invented floor, firm and price list</small></h1>
      <button class="plain" type="button" ?disabled=${undo === ''} @click=${() => this.step(session, 'undo')}>
        Undo${undo === '' ? '' : `: ${undo}`}
      </button>
      <button class="plain" type="button" ?disabled=${redo === ''} @click=${() => this.step(session, 'redo')}>
        Redo${redo === '' ? '' : `: ${redo}`}
      </button>
      ${this.refusal === '' ? nothing : html`<p class="refused" role="alert">${this.refusal}</p>`}
    </header>`;
  }

  private outline(session: QuoteSession): TemplateResult {
    const places: { place: SheetPlace; title: string }[] = [
      { place: { kind: 'floor' }, title: 'The floor' },
      ...session.quote.options.map(({ id, title }) => ({ place: { kind: 'option', option: id } as const, title })),
      { place: { kind: 'shop' }, title: 'Shop rates' },
    ];
    return html`<nav aria-label="Sheets">
      ${places.map(
        ({ place, title }) => html`<button
          type="button"
          aria-current=${samePlace(place, this.place) ? 'page' : 'false'}
          @click=${() => {
            this.place = place;
          }}
        >
          ${title}
        </button>`,
      )}
    </nav>`;
  }

  private sheet(session: QuoteSession, results: OptionResults): TemplateResult {
    const names = new Map(
      [...this.priceList.values(), ...session.quote.products].map(({ product, name, kind }) => [
        product,
        { code: product, label: name, kind },
      ]),
    );
    const view = sheetView(session.quote, this.place, results, names);
    return html`<h2>${view.title}</h2>
      ${view.sections.map(
        (section) => html`<sheet-section
          .section=${section}
          .refusals=${this.refusals}
          @line-entered=${(event: SheetEvents['line-entered']) => this.enterLine(session, event.detail)}
          @line-reset=${(event: SheetEvents['line-reset']) => this.dispatch(session, event.detail.line, { kind: 'enterLine', sheet: this.place, ...event.detail })}
          @cell-entered=${(event: SheetEvents['cell-entered']) => this.enterCell(session, event.detail)}
          @cell-reset=${(event: SheetEvents['cell-reset']) => this.dispatch(session, cellKey(event.detail), { kind: 'enterCell', sheet: this.place, ...event.detail })}
          @row-added=${(event: SheetEvents['row-added']) => this.addRow(session, results, event.detail.table)}
          @row-removed=${(event: SheetEvents['row-removed']) => this.dispatch(session, event.detail.table, { kind: 'removeRow', sheet: this.place, ...event.detail })}
        ></sheet-section>`,
      )}`;
  }

  private why(session: QuoteSession): TemplateResult {
    const { asked } = this;
    const results = asked && session.results(asked.option);
    const title = session.quote.options.find((option) => option.id === asked?.option)?.title ?? '';
    return html`<why-panel
      .why=${asked && results ? whyView(results, asked.cell) : undefined}
      option=${asked?.option ?? ''}
      optionTitle=${title}
    ></why-panel>`;
  }

  private readonly onWhy = (event: SheetEvents['why-asked']): void => {
    const { session } = this;
    if (session === undefined) return;
    this.asked = { option: event.detail.option ?? this.optionInView(session), cell: event.detail.cell };
  };

  private closeWhy(): void {
    this.asked = undefined;
  }

  private enterLine(session: QuoteSession, { line, ...entry }: LineEntered): void {
    this.dispatch(session, line, {
      kind: 'enterLine',
      sheet: this.place,
      line,
      value: stored(entry),
      ...this.productOf(entry),
    });
  }

  private enterCell(session: QuoteSession, { table, row, column, ...entry }: CellEntered): void {
    const edit: Edit = {
      kind: 'enterCell',
      sheet: this.place,
      table,
      row,
      column,
      value: stored(entry),
      ...this.productOf(entry),
    };
    this.dispatch(session, cellKey({ table, row, column }), edit);
  }

  private addRow(session: QuoteSession, results: OptionResults, table: string): void {
    this.dispatch(session, table, newRowEdit(results, this.place, table));
  }

  /** The price-list row of a product that is chosen, so that the quote keeps it. */
  private productOf({ value }: EntryDetail): { product?: ProductRow } {
    const product = typeof value === 'string' ? this.priceList.get(value) : undefined;
    return product === undefined ? {} : { product };
  }

  private dispatch(session: QuoteSession, key: string, edit: Edit): void {
    this.remember(session);
    this.take(session.dispatch(edit), key);
  }

  private step(session: QuoteSession, direction: 'undo' | 'redo'): void {
    this.remember(session);
    this.take(session[direction](), '');
  }

  private take(result: DispatchResult, key: string): void {
    const refused = result.kind === 'refused' ? result.reason : '';
    const atField = key.includes('.') || key !== '';
    this.refusals = new Map(refused !== '' && atField ? [[key, refused]] : []);
    this.refusal = atField && key.includes('.') ? '' : refused;
  }

  /** Keeps what every result was, to show how far the next change moves it. */
  private remember(session: QuoteSession): void {
    this.earlier = new Map(
      this.options(session).flatMap(({ id, results }) =>
        resultLines.map((line) => [`${id} ${line}`, lineValue(results, line)] as const),
      ),
    );
  }
}

function stored({ value, typed }: EntryDetail): StoredValue {
  return typed === undefined ? value : { value, typed };
}

function cellKey({ table, row, column }: { table: string; row: string; column: string }): string {
  return `${table}.${row}.${column}`;
}

function samePlace(a: SheetPlace, b: SheetPlace): boolean {
  return a.kind === 'option' && b.kind === 'option' ? a.option === b.option : a.kind === b.kind;
}

function priceText(results: OptionResults): string {
  const cell = results.option.plan.lines.get('price');
  const value = cell === undefined ? undefined : results.read(cell);
  const type = cell === undefined ? undefined : results.option.plan.cells[cell]?.type;
  return typeof value === 'number' && type?.kind === 'number' ? formatQuantity(value, type.unit) : 'incomplete';
}

declare global {
  interface HTMLElementTagNameMap {
    'costing-face': CostingFace;
  }
}
