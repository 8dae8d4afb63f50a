import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { sharedStyles } from '../parts/shared.styles.ts';
import { send } from '../parts/sheet-events.ts';
import { readEntry } from '../parts/typed-entry.ts';
import type { FieldView } from './field-view.ts';
import { sheetTableStyles } from './sheet-table.styles.ts';
import type { ColumnView, RowView, TableView } from './sheet-view.ts';

interface ColumnGroup {
  readonly title: string;
  readonly span: number;
}

/**
 * A table of a sheet: rows of the trade, columns under plain headings, the first column staying in view.
 *
 * @fires cell-entered, cell-reset, row-added, row-removed, why-asked
 */
@customElement('sheet-table')
export class SheetTable extends LitElement {
  static override styles = [sharedStyles, sheetTableStyles];

  @property({ attribute: false }) table: TableView | undefined;
  /** Refusals by `table.row.column`. */
  @property({ attribute: false }) refusals: ReadonlyMap<string, string> = new Map();

  @state() private everyColumn = false;
  /** Texts that could not be read, by `row.column`, with why. */
  @state() private unread: ReadonlyMap<string, { readonly text: string; readonly reason: string }> = new Map();

  override render(): TemplateResult | typeof nothing {
    const { table } = this;
    if (table === undefined) return nothing;
    const places = table.columns.flatMap((column, at) => (column.detail && !this.everyColumn ? [] : [at]));
    const columns = places.flatMap((at) => table.columns[at] ?? []);
    return html`
      <div class="frame" role="region" tabindex="0" aria-label=${table.title}>
        <table>
          <caption>${table.title}</caption>
          <thead>
            ${this.groups(columns)}
            <tr>
              ${columns.map((column) => html`<th scope="col" class=${column.words ? 'words' : ''}>${column.label}</th>`)}
              ${table.free ? html`<td></td>` : nothing}
            </tr>
          </thead>
          <tbody>
            ${table.rows.map((row) => this.row(table, row, places))}
          </tbody>
        </table>
        ${table.rows.length === 0 ? html`<p class="light">No rows: nothing of this is on the job.</p>` : nothing}
      </div>
      ${this.faults(table)}
      <div class="actions">
        ${
          table.free
            ? html`<button class="plain" type="button" @click=${() => send(this, 'row-added', { table: table.name })}>Add a row</button>`
            : nothing
        }
        ${
          table.columns.some((column) => column.detail)
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
      </div>
    `;
  }

  private showEveryColumn(): void {
    this.everyColumn = !this.everyColumn;
  }

  private groups(columns: readonly ColumnView[]): TemplateResult | typeof nothing {
    const groups: ColumnGroup[] = [];
    for (const { group } of columns) {
      const last = groups.at(-1);
      if (last?.title === group) groups[groups.length - 1] = { title: group, span: last.span + 1 };
      else groups.push({ title: group, span: 1 });
    }
    if (groups.length < 2) return nothing;
    return html`<tr>
      ${groups.map(({ title, span }) =>
        title === ''
          ? html`<td colspan=${span}></td>`
          : html`<th class="group" scope="colgroup" colspan=${span}>${title}</th>`,
      )}
    </tr>`;
  }

  private row(table: TableView, row: RowView, places: readonly number[]): TemplateResult {
    const fields = places.flatMap((at) => row.fields[at] ?? []);
    const [first, ...rest] = fields;
    return html`<tr>
      <th scope="row">${first === undefined ? row.label : this.content(table, row, first)}</th>
      ${rest.map(
        (field) => html`<td class=${field.kind === 'choice' ? 'words' : ''}>
          <span class="caption" aria-hidden="true">${field.label}</span>
          <span class="content">${this.content(table, row, field)}</span>
        </td>`,
      )}
      ${
        table.free
          ? html`<td class="away">
            <button
              class="take-away"
              type="button"
              aria-label="Take away ${row.label}"
              @click=${() => send(this, 'row-removed', { table: table.name, row: row.id })}
            >
              ✕
            </button>
          </td>`
          : nothing
      }
    </tr>`;
  }

  private content(table: TableView, row: RowView, field: FieldView): TemplateResult {
    const label = `${row.label}, ${field.label}`;
    const enter = (value: number | string, typed?: string): void =>
      send(this, 'cell-entered', {
        table: table.name,
        row: row.id,
        column: field.name,
        value,
        ...(typed !== undefined && { typed }),
      });
    switch (field.kind) {
      case 'choice':
        return html`<select
          class=${standingClass(field)}
          aria-label=${label}
          @change=${(event: Event) => event.target instanceof HTMLSelectElement && enter(event.target.value)}
        >
          ${field.options.map((option) => html`<option value=${option.code} ?selected=${option.code === field.chosen}>${option.label}</option>`)}
        </select>`;
      case 'yesNo':
        return html`<input
          type="checkbox"
          aria-label=${label}
          .checked=${field.typed === '1'}
          @change=${(event: Event) => event.target instanceof HTMLInputElement && enter(event.target.checked ? 1 : 0)}
        />`;
      case 'number':
        return this.numberCell(row, field, label, enter);
      case 'text':
      case 'result':
        return html`<button
          class="value ${field.failed ? 'failed' : ''}"
          type="button"
          aria-label="Why: ${label}, ${field.shown} ${field.suffix}"
          @click=${() => field.cell !== undefined && send(this, 'why-asked', { cell: field.cell })}
        >
          ${field.shown}<span class="unit">${field.suffix}</span>
        </button>`;
      default:
        return field.kind satisfies never;
    }
  }

  private numberCell(
    row: RowView,
    field: FieldView,
    label: string,
    enter: (value: number | string, typed?: string) => void,
  ): TemplateResult {
    const key = `${row.id}.${field.name}`;
    const unread = this.unread.get(key);
    return html`${field.prefix === '' ? nothing : html`<span class="light">${field.prefix}</span>`}<span class=${field.standing === 'unchecked' ? 'unchecked' : ''}
        ><input
          type="text"
          inputmode="decimal"
          autocomplete="off"
          class=${standingClass(field)}
          aria-label=${label}
          aria-invalid=${unread === undefined ? 'false' : 'true'}
          .value=${live(unread?.text ?? field.typed)}
          @change=${(event: Event) => event.target instanceof HTMLInputElement && this.onTyped(key, event.target.value, field, enter)} /></span
      ><span class="unit">${field.suffix}</span>`;
  }

  private onTyped(
    key: string,
    text: string,
    field: FieldView,
    enter: (value: number | string, typed?: string) => void,
  ): void {
    const read = readEntry(text, field.unit);
    const unread = new Map(this.unread);
    if (read.kind === 'fault') unread.set(key, { text, reason: read.reason });
    else unread.delete(key);
    this.unread = unread;
    if (read.kind === 'entry') enter(read.detail.value, read.detail.typed);
  }

  private faults(table: TableView): TemplateResult[] {
    const rowLabel = (key: string): string => table.rows.find((row) => key.startsWith(`${row.id}.`))?.label ?? '';
    const own = [...this.unread].map(
      ([key, { reason }]) => html`<p class="error" role="alert">${rowLabel(key)}: ${reason}</p>`,
    );
    const refused = [...this.refusals]
      .filter(([key]) => key.startsWith(`${table.name}.`))
      .map(([, reason]) => html`<p class="error" role="alert">${reason}</p>`);
    return [...own, ...refused];
  }
}

function standingClass(field: FieldView): string {
  return field.standing === 'changed' || field.standing === 'departed' ? 'changed' : '';
}

declare global {
  interface HTMLElementTagNameMap {
    'sheet-table': SheetTable;
  }
}
