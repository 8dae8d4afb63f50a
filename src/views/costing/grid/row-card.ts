import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { cellName } from '../../../formula/cell-name.ts';
import { sharedStyles } from '../../parts/shared.styles.ts';
import { send } from '../../parts/sheet-events.ts';
import type { EntryDetail } from '../../parts/typed-entry.ts';
import '../sheet/value-line.ts';
import type { ShownField } from '../../parts/shown-field.ts';
import type { ShownRow, ShownTable } from '../sheet/shown-table.ts';
import { mayGoBack } from '../sheet/standing-words.ts';
import { isEntry } from './grid-edit.ts';
import { actionWords, isAllowed, rowActions, sendAction } from './row-actions.ts';

/**
 * A row of a table on a phone: its name and its three telling numbers, opening to a form with every column.
 *
 * @fires cell-entered, cell-reset, row-moved, row-removed, why-asked
 */
@customElement('row-card')
export class RowCard extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
        border-bottom: 1px solid var(--rule);
      }

      .head {
        display: block;
        width: 100%;
        min-height: 2.75rem;
        padding: 0.5rem 0;
        text-align: left;
      }

      .name {
        display: flex;
        justify-content: space-between;
        gap: 0.5rem;
        font-weight: 600;
      }

      .sign {
        color: var(--ink-light);
      }

      .telling {
        display: grid;
        grid-template-columns: repeat(3, minmax(0, 1fr));
        gap: 0.5rem;
        padding-top: 0.125rem;
      }

      .number {
        display: block;
        overflow-wrap: anywhere;
      }

      .caption,
      .unit {
        color: var(--ink-light);
        font-size: var(--small);
      }

      .caption {
        display: block;
        line-height: 1.2;
      }

      .mark {
        color: var(--resin);
        font-size: 0.75rem;
      }

      .failed {
        color: var(--stop);
      }

      .form {
        padding: 0 0 0.5rem 0.75rem;
        border-left: 2px solid var(--hairline);
      }

      h5 {
        margin: 0.75rem 0 0;
        font-size: var(--small);
        font-weight: 600;
        color: var(--ink-light);
      }

      .actions {
        display: flex;
        flex-wrap: wrap;
        gap: 0.5rem;
        padding-top: 0.75rem;
      }

      .actions button {
        font-size: var(--small);
      }

      .actions button[aria-disabled='true'] {
        color: var(--ink-light);
        border-color: var(--hairline);
      }
    `,
  ];

  @property({ attribute: false }) table: ShownTable | undefined;
  @property({ attribute: false }) row: ShownRow | undefined;
  /** Its place among the rows, counted from 0. */
  @property({ type: Number }) at = 0;
  /** Refusals by `table.row.column`. */
  @property({ attribute: false }) refusals: ReadonlyMap<string, string> = new Map();

  @state() private isOpen = false;

  private isUnfolding = false;

  override render(): TemplateResult | typeof nothing {
    const { table, row } = this;
    if (table === undefined || row === undefined) return nothing;
    const sign = this.isOpen ? '▴' : '▾';
    return html`
      <button class="head" type="button" aria-expanded=${this.isOpen ? 'true' : 'false'} @click=${() => this.toggle()}>
        <span class="name">
          <span>${row.label}${row.fields.some(mayGoBack) ? this.mark() : nothing}</span>
          <span class="sign" aria-hidden="true">${sign}</span>
        </span>
        <span class="telling">${tellingFields(table, row).map(tellingNumber)}</span>
      </button>
      ${this.isOpen ? this.form(table, row) : nothing}
    `;
  }

  /** Opens the card and brings focus to its first entry. */
  unfold(): void {
    this.isOpen = true;
    this.isUnfolding = true;
    this.requestUpdate();
  }

  protected override updated(): void {
    if (!this.isUnfolding) return;
    this.isUnfolding = false;
    const lines = [...this.renderRoot.querySelectorAll('value-line')];
    lines.find(({ field }) => field !== undefined && isEntry(field))?.focus();
  }

  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('.head')?.focus();
  }

  /** The control within it that has focus. */
  focusedControl(): HTMLElement | undefined {
    const active = this.shadowRoot?.activeElement;
    return active instanceof HTMLElement ? active : undefined;
  }

  private toggle(): void {
    this.isOpen = !this.isOpen;
  }

  private mark(): TemplateResult {
    return html` <span class="mark" title="something is changed"
      ><span aria-hidden="true">◆</span><span class="hidden">something is changed</span></span
    >`;
  }

  private form(table: ShownTable, row: ShownRow): TemplateResult {
    const columns = table.columns.map((column, at) => ({ column, field: row.fields[at] }));
    return html`<div class="form">
      ${columns.map(({ column, field }, at) => {
        if (field === undefined || isRowName(field, row, at)) return nothing;
        const isNewGroup = column.group !== '' && column.group !== columns[at - 1]?.column.group;
        return html`${isNewGroup ? html`<h5>${column.group}</h5>` : nothing} ${this.line(table, row, field)}`;
      })}
      ${table.free ? this.actions(table, row) : nothing}
    </div>`;
  }

  private line(table: ShownTable, row: ShownRow, field: ShownField): TemplateResult {
    const place = { table: table.name, row: row.id, column: field.name };
    return html`<value-line
      .field=${field}
      label="${row.label}, ${field.label}"
      refusal=${this.refusals.get(cellName(table.name, row.id, field.name)) ?? ''}
      @entered=${(event: CustomEvent<EntryDetail>) => send(this, 'cell-entered', { ...place, ...event.detail })}
      @went-back=${() => send(this, 'cell-reset', place)}
    ></value-line>`;
  }

  private actions(table: ShownTable, row: ShownRow): TemplateResult {
    return html`<div class="actions">
      ${rowActions.map((action) => {
        const allowed = isAllowed(action, this.at, table.rows.length);
        return html`<button
          class="plain"
          type="button"
          aria-disabled=${allowed ? 'false' : 'true'}
          aria-label="${actionWords[action]}: ${row.label}"
          @click=${() => allowed && sendAction(this, action, table.name, row.id, this.at)}
        >
          ${actionWords[action]}
        </button>`;
      })}
    </div>`;
  }
}

function tellingFields(table: ShownTable, row: ShownRow): readonly ShownField[] {
  return row.fields.filter(({ name }) => table.telling.includes(name));
}

function tellingNumber(field: ShownField): TemplateResult {
  return html`<span class="number ${field.failed ? 'failed' : ''}"
    ><span class="caption">${field.label}</span>${field.shown} <span class="unit">${field.suffix}</span></span
  >`;
}

/** The first column, where it only says the row's name again. */
function isRowName(field: ShownField, row: ShownRow, at: number): boolean {
  return at === 0 && field.kind === 'result' && field.shown === row.label;
}

declare global {
  interface HTMLElementTagNameMap {
    'row-card': RowCard;
  }
}
