import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { sharedStyles } from '../parts/shared.styles.ts';
import { send } from '../parts/sheet-events.ts';
import type { BoardRow, BoardView } from './board-view.ts';

/**
 * The results of every option beside each other, in the order an owner reads them.
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

      .price td button {
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

      td button {
        min-height: 1.75rem;
        white-space: nowrap;
        font-weight: 600;
      }

      /* Three options and more have no room for a unit beside every number. */
      .many th,
      .many td {
        padding-inline: 0.25rem;
      }

      .many td button {
        white-space: normal;
        text-align: right;
      }

      .many .price td button {
        font-size: var(--large);
      }

      td button:hover {
        color: var(--resin);
      }

      .unit {
        color: var(--ink-light);
        font-size: var(--small);
        font-weight: 400;
      }

      .moved button {
        text-decoration: underline;
        text-decoration-color: var(--resin);
        text-decoration-thickness: 2px;
        text-underline-offset: 3px;
      }

      .delta {
        display: block;
        color: var(--ink-light);
        font-size: var(--small);
        min-height: 1.25rem;
      }

      .failed {
        color: var(--stop);
      }

      @media (max-width: 40rem) {
        table {
          table-layout: fixed;
        }

        td button {
          white-space: normal;
          text-align: right;
        }

        .price td button {
          font-size: var(--large);
        }
      }
    `,
  ];

  @property({ attribute: false }) board: BoardView | undefined;

  override render(): TemplateResult | typeof nothing {
    const { board } = this;
    if (board === undefined) return nothing;
    return html`<table class=${board.options.length > 2 ? 'many' : ''}>
      <caption class="hidden">Results, side by side</caption>
      <thead>
        <tr>
          <td></td>
          ${board.options.map((option) => html`<th scope="col">${option.title}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${board.rows.map((row) => guard([row, board.options.length], () => this.row(row, board.options.length)))}
      </tbody>
    </table>`;
  }

  private row(row: BoardRow, columns: number): TemplateResult {
    return row.kind === 'heading'
      ? html`<tr class="heading"><th scope="rowgroup" colspan=${columns + 1}>${row.title}</th></tr>`
      : html`<tr class=${row.line === 'price' ? 'price' : ''}>
                <th scope="row">${row.label}</th>
                ${row.values.map(
                  (value) => html`<td class=${value.delta === '' ? '' : 'moved'}>
                    <button
                      type="button"
                      class=${value.failed ? 'failed' : ''}
                      aria-label="Why: ${row.label}, ${value.option}, ${value.shown} ${value.suffix}"
                      @click=${() => send(this, 'why-asked', { cell: value.cell, option: value.optionId })}
                    >
                      ${value.shown} <span class="unit">${value.suffix}</span></button
                    >${row.line === 'price' ? html`<span class="delta">${value.delta}</span>` : nothing}
                  </td>`,
                )}
              </tr>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'results-board': ResultsBoard;
  }
}
