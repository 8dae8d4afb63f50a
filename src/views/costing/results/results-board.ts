import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { optionTableStyles } from '../../parts/option-table.styles.ts';
import { Settled } from '../../parts/settled.ts';
import { sharedStyles } from '../../parts/shared.styles.ts';
import { send } from '../../parts/sheet-events.ts';
import { focusCell } from '../grid/grid-focus.ts';
import { type GridPlace, type GridShape, placeAfterKey, placeKept } from '../grid/grid-keys.ts';
import { placeOf } from '../grid/grid-shape.ts';
import { type BoardGroup, type BoardRow, type BoardView, movesOn } from './board-view.ts';

/** Milliseconds that what moved is underlined after the last change. */
const underlined = 1000;

/**
 * The results of every option beside each other, in the order an owner reads them: a grid with one tab stop, in which keys
 * move from number to number, and a click or Enter asks why. While it is `fresh`, what the last change moved is underlined.
 *
 * @fires why-asked
 */
@customElement('results-board')
export class ResultsBoard extends LitElement {
  static override styles = [
    sharedStyles,
    optionTableStyles,
    css`
      :host {
        display: block;
        /* Laid out and painted by itself, at every change of a number. */
        contain: layout style;
      }

      .options {
        --lead: minmax(0, 1.5fr);
      }

      /* Three options and more leave less room for what a line is called, and none for a unit beside a number. */
      .many {
        --lead: minmax(0, 1.3fr);
      }

      tr {
        border-bottom: 1px solid var(--hairline);
        align-items: baseline;
      }

      th,
      td {
        padding: 0.125rem 0.375rem;
        text-align: right;
      }

      .many th,
      .many td {
        padding-inline: 0.25rem;
      }

      th[scope='row'] {
        padding-left: 0;
        text-align: left;
        font-weight: 400;
      }

      thead tr {
        align-items: end;
      }

      .price td {
        padding-left: 0;
        font-size: var(--larger);
        font-weight: 600;
        color: var(--resin);
        line-height: 1.1;
      }

      .many .price td {
        font-size: var(--large);
      }

      .heading th {
        padding: 0.75rem 0 0.125rem;
        color: var(--ink-light);
        font-size: var(--small);
        text-align: left;
      }

      tbody td {
        min-height: 1.75rem;
        font-weight: 600;
        cursor: help;
      }

      tbody td:focus-visible {
        outline-offset: -2px;
      }

      tbody td:hover {
        color: var(--resin);
      }

      .unit {
        color: var(--ink-light);
        font-size: var(--small);
        font-weight: 400;
        white-space: nowrap;
      }

      :host([fresh]) .moved {
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
        .price td {
          font-size: var(--large);
        }

        .many .price td {
          font-size: 1rem;
        }
      }
    `,
  ];

  @property({ attribute: false }) board: BoardView | undefined;

  /** The one cell that Tab stops at: a line and an option. */
  @state() private place: GridPlace | undefined;

  private shape: GridShape = { rows: [], columns: [] };
  private rest: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    new Settled(this);
  }

  /** Brings focus to the number that was looked at last. */
  override focus(): void {
    if (this.place !== undefined) focusCell(this.renderRoot, this.place, 'cell');
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.settle();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('board') && this.board !== undefined && movesOn(this.board, changed.get('board'))) this.freshen();
    const { groups = [], options = [] } = this.board ?? {};
    const shape = {
      rows: groups.flatMap(({ rows }) => rows.map(({ line }) => line)),
      columns: options.map(({ id }) => id),
    };
    this.place = placeKept(this.place, this.shape, shape);
    this.shape = shape;
  }

  override render(): TemplateResult | typeof nothing {
    const { board } = this;
    if (board === undefined) return nothing;
    const columns = board.options.length;
    return html`<p class="hidden" id="hint">Enter on a number tells why it is so.</p>
      <table
        role="grid"
        aria-describedby="hint"
        class="options columns-${columns} ${columns > 2 ? 'many' : ''}"
        @click=${this.onClick}
        @keydown=${this.onKey}
        @focusin=${this.onFocus}
      >
        <caption class="hidden">Results, side by side</caption>
        <thead>
          <tr role="row">
            <td role="gridcell"></td>
            ${board.options.map((option) => html`<th role="columnheader" scope="col">${option.title}</th>`)}
          </tr>
        </thead>
        ${board.groups.map((group) => this.group(group))}
      </table>`;
  }

  /** By one attribute of the whole: nothing is drawn again when the second is over. */
  private freshen(): void {
    clearTimeout(this.rest);
    this.toggleAttribute('fresh', true);
    this.rest = setTimeout(this.settle, underlined);
  }

  private readonly settle = (): void => {
    clearTimeout(this.rest);
    this.removeAttribute('fresh');
  };

  private group({ title, rows }: BoardGroup): TemplateResult {
    return html`<tbody>
      ${
        title === ''
          ? nothing
          : html`<tr role="row" class="heading"><th role="rowheader" scope="rowgroup">${title}</th></tr>`
      }
      ${rows.map((row) => {
        const stop = row.line === this.place?.row ? this.place.column : undefined;
        return guard([row, stop], () => this.row(row, stop));
      })}
    </tbody>`;
  }

  /** `stop` is the option whose number in this row Tab stops at. */
  private row({ line, label, values }: BoardRow, stop: string | undefined): TemplateResult {
    return html`<tr role="row" class=${line === 'price' ? 'price' : ''} data-row=${line}>
      <th role="rowheader" scope="row">${label}</th>
      ${values.map(
        ({ optionId, shown, suffix, delta, failed }) => html`<td
          role="gridcell"
          data-column=${optionId}
          tabindex=${optionId === stop ? 0 : -1}
          class="${delta === '' ? '' : 'moved'} ${failed ? 'failed' : ''}"
        >${shown}${suffix === '' ? nothing : html` <span class="unit">${suffix}</span>`}${line === 'price' ? html`<span class="delta">${delta}</span>` : nothing}</td>`,
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
    const rows = this.board?.groups.flatMap((group) => group.rows) ?? [];
    const values = rows.find(({ line }) => line === place?.row)?.values;
    const value = values?.find(({ optionId }) => optionId === place?.column);
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
