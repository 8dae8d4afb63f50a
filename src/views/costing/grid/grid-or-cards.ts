import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import { NarrowScreen } from '../../parts/narrow-screen.ts';
import { sharedStyles } from '../../parts/shared.styles.ts';
import { send } from '../../parts/sheet-events.ts';
import { tableFaults } from './grid-faults.ts';
import './row-card.ts';
import { RowCard } from './row-card.ts';
import './sheet-grid.ts';
import type { ShownTable } from '../sheet/shown-table.ts';

/**
 * A table of a sheet: rows of the trade in a grid, or each row a card on a phone.
 *
 * @fires cell-entered, cell-reset, row-added, row-moved, row-removed, why-asked
 */
@customElement('grid-or-cards')
export class GridOrCards extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
        contain: layout style;
        margin: 0.5rem 0 1rem;
      }
    
      h4 {
        margin: 0.75rem 0 0.25rem;
        font-size: 1rem;
        font-weight: 600;
      }
    
      ul {
        list-style: none;
        margin: 0;
        padding: 0;
        border-top: 1px solid var(--rule);
      }
    
      .error {
        margin: 0.25rem 0;
        color: var(--stop);
        font-size: var(--small);
      }
    
      .actions {
        display: flex;
        flex-wrap: wrap;
        flex: none;
        gap: 0.5rem;
        padding: 0.25rem 0;
      }
    
      .actions button {
        min-height: 2.25rem;
        font-size: var(--small);
      }
    
      @media (pointer: coarse) {
        .actions button {
          min-height: 2.75rem;
        }
      }
    `,
  ];

  @property({ attribute: false }) table: ShownTable | undefined;
  /** Refusals by `table.row.column`, or by the table where it is of a whole row. */
  @property({ attribute: false }) refusals: ReadonlyMap<string, string> = new Map();

  @state() private everyColumn = false;

  private readonly screen = new NarrowScreen(this);
  /** The rows there were when another was asked for. */
  private rowsBefore: ReadonlySet<string> | undefined;
  private card:
    | { readonly at: number; readonly element: RowCard; readonly focused: HTMLElement | undefined }
    | undefined;

  protected override willUpdate(): void {
    const active = this.shadowRoot?.activeElement;
    this.card =
      active instanceof RowCard
        ? { at: this.cards().indexOf(active), element: active, focused: active.focusedControl() }
        : undefined;
  }

  override render(): TemplateResult | typeof nothing {
    const { table } = this;
    if (table === undefined) return nothing;
    return this.screen.isNarrow ? this.cardList(table) : this.grid(table);
  }

  private actions(table: ShownTable, hasDetail: boolean): TemplateResult {
    return html`<div class="actions" slot="actions">
        ${table.free ? html`<button class="plain add" type="button" @click=${() => this.addRow(table)}>Add a row</button>` : nothing}
        ${
          hasDetail
            ? html`<button
              class="plain"
              type="button"
              aria-pressed=${this.everyColumn ? 'true' : 'false'}
              @click=${() => this.showEveryColumn()}
            >
              Every column
            </button>`
            : nothing
        }
      </div>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (!changed.has('table')) return;
    const added = this.rowsBefore && this.table?.rows.find(({ id }) => !this.rowsBefore?.has(id));
    if (added !== undefined) this.focusRow(added.id);
    else this.keepCardFocus();
  }

  private grid(table: ShownTable): TemplateResult {
    return html`<sheet-grid
      .table=${table}
      .refusals=${this.refusals}
      ?everyColumn=${this.everyColumn}
      @emptied=${() => this.focusAdd()}
      >${this.actions(
        table,
        table.columns.some((column) => column.detail),
      )}</sheet-grid
    >${noteOf(table)}`;
  }

  private cardList(table: ShownTable): TemplateResult {
    if (table.rows.length === 0)
      return html`<h4>${table.title}</h4>
        ${noteOf(table)}
        <p class="light">No rows: nothing of this is on the job.</p>
        ${tableFaults(table, this.refusals)} ${this.actions(table, false)}`;
    return html`<h4 id="title">${table.title}</h4>
      ${noteOf(table)}
      <ul aria-labelledby="title">
        ${repeat(
          table.rows,
          (row) => row.id,
          (row, at) => html`<li>
            <row-card .table=${table} .row=${row} .at=${at} .refusals=${this.refusals}></row-card>
          </li>`,
        )}
      </ul>
      ${tableFaults(table, this.refusals)} ${this.actions(table, false)}`;
  }

  private showEveryColumn(): void {
    this.everyColumn = !this.everyColumn;
  }

  private addRow(table: ShownTable): void {
    this.rowsBefore = new Set(table.rows.map(({ id }) => id));
    send(this, 'row-added', { table: table.name });
  }

  private focusRow(row: string): void {
    this.rowsBefore = undefined;
    this.renderRoot.querySelector('sheet-grid')?.focusRow(row);
    this.cards()
      .find((card) => card.row?.id === row)
      ?.unfold();
  }

  /** Where a card went from under the focus, its neighbour takes it; a card that moved keeps it. */
  private keepCardFocus(): void {
    const { card } = this;
    if (card === undefined || this.shadowRoot?.activeElement === card.element) return;
    if (card.element.isConnected) {
      (card.focused ?? card.element).focus();
      return;
    }
    const cards = this.cards();
    const neighbour = cards[Math.min(card.at, cards.length - 1)];
    if (neighbour === undefined) this.focusAdd();
    else neighbour.focus();
  }

  private focusAdd(): void {
    this.renderRoot.querySelector<HTMLElement>('.add')?.focus();
  }

  private cards(): RowCard[] {
    return [...(this.renderRoot?.querySelectorAll('row-card') ?? [])];
  }
}

function noteOf({ note }: ShownTable): TemplateResult | typeof nothing {
  return note === '' ? nothing : html`<p class="light">${note}</p>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'grid-or-cards': GridOrCards;
  }
}
