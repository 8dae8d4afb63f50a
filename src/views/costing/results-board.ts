import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { sharedStyles } from '../parts/shared.styles.ts';
import { send } from '../parts/sheet-events.ts';
import type { BoardRow, BoardView } from './board-view.ts';
import { focusCell } from './grid-focus.ts';
import { type GridPlace, type GridShape, placeAfterKey, placeKept } from './grid-keys.ts';
import { placeOf } from './grid-shape.ts';

/**
 * The results of every option beside each other, in the order an owner reads them: a grid with one tab stop, in which keys
 * move from number to number, and a click or Enter asks why.
 *
 * @fires why-asked
 */
@customElement('results-board')
export class ResultsBoard extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
        /* Laid out and painted by itself, at every change of a number. */
        contain: layout style;
      }

      table {
        border-collapse: collapse;
        width: 100%;
      }

      th,
      td {
        padding: 0.125rem 0.375rem;
        text-align: right;
        border-bottom: 1px solid var(--hairline);
        vertical-align: baseline;
      }

      th[scope='row'],
      thead th:first-child {
        text-align: left;
        font-weight: 400;
      }

      thead th {
        font-weight: 600;
        vertical-align: bottom;
      }

      .price td {
        font-size: var(--larger);
        font-weight: 600;
        color: var(--resin);
        line-height: 1.1;
      }

      .heading th {
        padding-top: 0.75rem;
        color: var(--ink-light);
        font-size: var(--small);
        text-align: left;
      }

      tbody td {
        height: 1.75rem;
        white-space: nowrap;
        font-weight: 600;
        cursor: help;
      }

      /* Three options and more have no room for a unit beside every number. */
      .many th,
      .many td {
        padding-inline: 0.25rem;
      }

      .many tbody td {
        white-space: normal;
      }

      .many .price td {
        font-size: var(--large);
      }

      tbody td:hover {
        color: var(--resin);
      }

      .unit {
        color: var(--ink-light);
        font-size: var(--small);
        font-weight: 400;
      }

      .moved {
        text-decoration: underline;
        text-decoration-color: var(--resin);
        text-decoration-thickness: 2px;
        text-underline-offset: 3px;
      }

      /* What stands on a line by itself is not underlined with the rest. */
      .delta {
        display: inline-block;
        width: 100%;
        color: var(--ink-light);
        font-size: var(--small);
        font-weight: 400;
        min-height: 1.25rem;
      }

      .failed {
        color: var(--stop);
      }

      @media (max-width: 40rem) {
        table {
          table-layout: fixed;
        }

        tbody td {
          white-space: normal;
        }

        .price td {
          font-size: var(--large);
        }
      }
    `,
  ];

  @property({ attribute: false }) board: BoardView | undefined;

  /** The one cell that Tab stops at: a line and an option. */
  @state() private place: GridPlace | undefined;

  private shape: GridShape = { rows: [], columns: [] };

  /** Brings focus to the number that was looked at last. */
  override focus(): void {
    if (this.place !== undefined) focusCell(this.renderRoot, this.place, 'cell');
  }

  protected override willUpdate(): void {
    const { rows = [], options = [] } = this.board ?? {};
    const shape = {
      rows: rows.flatMap((row) => (row.kind === 'line' ? [row.line] : [])),
      columns: options.map(({ id }) => id),
    };
    this.place = placeKept(this.place, this.shape, shape);
    this.shape = shape;
  }

  override render(): TemplateResult | typeof nothing {
    const { board, place } = this;
    if (board === undefined) return nothing;
    const columns = board.options.length;
    return html`<p class="hidden" id="hint">Enter on a number tells why it is so.</p>
      <table
        role="grid"
        aria-describedby="hint"
        class=${columns > 2 ? 'many' : ''}
        @click=${this.onClick}
        @keydown=${this.onKey}
        @focusin=${this.onFocus}
      >
      <caption class="hidden">Results, side by side</caption>
      <thead>
        <tr>
          <td></td>
          ${board.options.map((option) => html`<th scope="col">${option.title}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${board.rows.map((row) => {
          const stop = row.kind === 'line' && row.line === place?.row ? place.column : undefined;
          return guard([row, columns, stop], () => this.row(row, columns, stop));
        })}
      </tbody>
    </table>`;
  }

  /** `stop` is the option whose number in this row Tab stops at. */
  private row(row: BoardRow, columns: number, stop: string | undefined): TemplateResult {
    if (row.kind === 'heading')
      return html`<tr class="heading"><th scope="rowgroup" colspan=${columns + 1}>${row.title}</th></tr>`;
    return html`<tr class=${row.line === 'price' ? 'price' : ''} data-row=${row.line}>
      <th scope="row">${row.label}</th>
      ${row.values.map(
        ({ optionId, shown, suffix, delta, failed }) => html`<td
          data-column=${optionId}
          tabindex=${optionId === stop ? 0 : -1}
          class="${delta === '' ? '' : 'moved'} ${failed ? 'failed' : ''}"
        >${shown} <span class="unit">${suffix}</span>${row.line === 'price' ? html`<span class="delta">${delta}</span>` : nothing}</td>`,
      )}
    </tr>`;
  }

  private readonly onFocus = ({ target }: FocusEvent): void => {
    this.place = placeOf(target) ?? this.place;
  };

  private readonly onClick = ({ target }: MouseEvent): void => {
    this.ask(placeOf(target));
  };

  private readonly onKey = (event: KeyboardEvent): void => {
    const place = placeOf(event.target);
    if (place === undefined) return;
    const next = placeAfterKey(place, event, this.shape);
    if (next !== undefined) focusCell(this.renderRoot, next, 'cell');
    else if (event.key === 'Enter' || event.key === ' ') this.ask(place);
    else return;
    event.preventDefault();
  };

  private ask(place: GridPlace | undefined): void {
    const row = this.board?.rows.find((one) => one.kind === 'line' && one.line === place?.row);
    const value = row?.kind === 'line' ? row.values.find(({ optionId }) => optionId === place?.column) : undefined;
    if (value === undefined) return;
    this.place = place;
    send(this, 'why-asked', { cell: value.cell, option: value.optionId });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'results-board': ResultsBoard;
  }
}
