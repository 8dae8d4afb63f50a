import { html, nothing, type TemplateResult } from 'lit';
import { classMap } from 'lit/directives/class-map.js';
import type { ShownColumn } from '../sheet/shown-columns.ts';

/** Letters of a label that three lines of a narrow column take. */
const shortLabel = 20;

/** A column with its position over all columns of its table, counted from 1. */
export interface PlacedColumn {
  readonly column: ShownColumn;
  readonly position: number;
}

interface ColumnGroup {
  readonly title: string;
  readonly span: number;
}

/** Groups of neighbouring columns; none when nothing is grouped. */
export function columnGroups(columns: readonly ShownColumn[]): readonly ColumnGroup[] {
  const groups: ColumnGroup[] = [];
  for (const { group } of columns) {
    const last = groups.at(-1);
    if (last?.title === group) groups[groups.length - 1] = { title: group, span: last.span + 1 };
    else groups.push({ title: group, span: 1 });
  }
  return groups.length < 2 ? [] : groups;
}

/** The heading rows of a grid: the groups where there are any, then the columns. `total` counts the actions' column too. */
export function headerRows(columns: readonly PlacedColumn[], total: number, hasActions: boolean): TemplateResult {
  const groups = columnGroups(columns.map(({ column }) => column));
  return html`${
    groups.length === 0
      ? nothing
      : html`<tr aria-rowindex="1">
          ${groups.map(({ title, span }) =>
            title === ''
              ? html`<td colspan=${span}></td>`
              : html`<th class="group" scope="colgroup" colspan=${span}>${title}</th>`,
          )}
          ${hasActions ? html`<td></td>` : nothing}
        </tr>`
  }
    <tr aria-rowindex=${groups.length === 0 ? 1 : 2}>
      ${columns.map(
        ({ column, position }) => html`<th
          scope="col"
          class=${classMap({ words: column.words, long: column.label.length > shortLabel })}
          aria-colindex=${position}
        >
          ${column.label}
        </th>`,
      )}
      ${
        hasActions
          ? html`<th scope="col" class="actions-head" aria-colindex=${total}><span class="hidden">Move or take away</span></th>`
          : nothing
      }
    </tr>`;
}
