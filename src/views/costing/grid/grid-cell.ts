import { html, nothing, type TemplateResult } from 'lit';
import { ifDefined } from 'lit/directives/if-defined.js';
import { live } from 'lit/directives/live.js';
import { notSaid } from '../../../template/written-text.ts';
import type { ShownField } from '../../parts/shown-field.ts';
import { mayGoBack, standingWords } from '../sheet/standing-words.ts';
import { actionWords, type RowAction, rowActions } from './row-actions.ts';

/** A text that could not be taken, which stays at its cell with the reason. */
export interface UnreadText {
  readonly text: string;
  readonly reason: string;
}

/** A cell of a grid as it stands now. */
export interface CellState {
  readonly field: ShownField;
  /** Row and column: “Bay, Width”. */
  readonly label: string;
  /** Counted from 1, over all columns, also those that are not shown. */
  readonly position: number;
  readonly isRowHeader: boolean;
  /** Whether it is the one tab stop of its table. */
  readonly isCurrent: boolean;
  /** What is being typed or chosen; undefined when nobody edits the cell. */
  readonly draft: string | undefined;
  readonly unread: UnreadText | undefined;
  readonly faultId: string;
}

/** What happens in a cell that is being edited, or in its box. */
export interface CellHandlers {
  readonly draftChanged: (draft: string) => void;
  readonly draftChosen: (code: string) => void;
  readonly left: () => void;
  readonly toggled: (isOn: boolean) => void;
}

export function gridCell(cell: CellState, on: CellHandlers): TemplateResult {
  const { field } = cell;
  const isResult = field.kind === 'result' || field.kind === 'text';
  const tabindex = field.kind === 'yesNo' ? undefined : tabindexOf(cell);
  const readonly = isResult && cell.draft === undefined ? 'true' : undefined;
  const invalid = cell.unread === undefined ? undefined : 'true';
  const described = descriptionOf(cell);
  const words = isWords(field) ? 'words' : '';
  if (cell.isRowHeader)
    return html`<th
      scope="row"
      class=${isResult ? 'result' : 'entry'}
      data-column=${field.name}
      tabindex=${ifDefined(tabindex)}
      aria-colindex=${cell.position}
      aria-readonly=${ifDefined(readonly)}
      aria-invalid=${ifDefined(invalid)}
      aria-describedby=${ifDefined(described)}
    >
      ${content(cell, on)}
    </th>`;
  return html`<td
    class="${isResult ? 'result' : 'entry'} ${words}"
    data-column=${field.name}
    tabindex=${ifDefined(tabindex)}
    aria-colindex=${cell.position}
    aria-readonly=${ifDefined(readonly)}
    aria-invalid=${ifDefined(invalid)}
    aria-describedby=${ifDefined(described)}
  >
    ${content(cell, on)}
  </td>`;
}

function tabindexOf({ isCurrent }: CellState): 0 | -1 {
  return isCurrent ? 0 : -1;
}

function descriptionOf({ isCurrent, unread, faultId }: CellState): string | undefined {
  const ids = [...(unread === undefined ? [] : [faultId]), ...(isCurrent ? ['note'] : [])];
  return ids.length === 0 ? undefined : ids.join(' ');
}

function isWords({ kind, chosen }: ShownField): boolean {
  return kind === 'choice' || kind === 'words' || chosen !== '';
}

function content(cell: CellState, on: CellHandlers): TemplateResult {
  const { field } = cell;
  if (field.kind === 'yesNo') return box(cell, on);
  const editor = cell.draft === undefined ? nothing : editorOf(cell, cell.draft, on);
  return html`<span class=${valueClass(cell)}>${shown(cell)}${
    field.kind === 'choice' ? html`<span class="more" aria-hidden="true">▾</span>` : nothing
  }</span>${mark(field)}${editor}`;
}

function valueClass({ field, unread }: CellState): string {
  const failed = field.failed || unread !== undefined ? 'failed' : '';
  return `value ${field.standing === 'unchecked' ? 'unchecked' : ''} ${failed}`;
}

function shown({ field, unread }: CellState): TemplateResult {
  if (unread !== undefined) return html`${unread.text}`;
  if (field.kind === 'words' && field.shown === '') return html`<span class="unit">${notSaid}</span>`;
  const unit = field.suffix === '' ? nothing : html`<span class="unit">${field.suffix}</span>`;
  const gave =
    field.standing !== 'departed' || field.worked === ''
      ? nothing
      : html`<s><span class="hidden">formula gives </span>${field.worked}</s> `;
  return html`${gave}${field.shown}${unit}`;
}

function mark(field: ShownField): TemplateResult | typeof nothing {
  if (!mayGoBack(field)) return nothing;
  const words = standingWords(field);
  return html`<span class="mark" title=${words}><span aria-hidden="true">◆</span><span class="hidden">${words}</span></span>`;
}

function box(cell: CellState, on: CellHandlers): TemplateResult {
  const { field } = cell;
  return html`<label class="box"
    ><input
      type="checkbox"
      tabindex=${tabindexOf(cell)}
      aria-label=${cell.label}
      aria-describedby=${ifDefined(descriptionOf(cell))}
      .checked=${live(field.typed === '1')}
      @change=${(event: Event) => event.target instanceof HTMLInputElement && on.toggled(event.target.checked)} /></label
    >${mark(field)}`;
}

/** It lies over the cell's value, so that no column changes its width. */
function editorOf({ field, label, unread, faultId }: CellState, draft: string, on: CellHandlers): TemplateResult {
  if (field.kind === 'choice')
    return html`<select
      class="editor"
      aria-label=${label}
      @change=${(event: Event) => event.target instanceof HTMLSelectElement && on.draftChosen(event.target.value)}
      @blur=${() => on.left()}
    >
      ${field.options.map((option) => html`<option value=${option.code} ?selected=${option.code === draft}>${option.label}</option>`)}
    </select>`;
  return html`<input
    class="editor"
    type="text"
    inputmode=${inputModeOf(field)}
    autocomplete="off"
    spellcheck="false"
    aria-label=${label}
    aria-invalid=${unread === undefined ? 'false' : 'true'}
    aria-describedby="${unread === undefined ? '' : faultId} note"
    .value=${live(draft)}
    @input=${(event: Event) => event.target instanceof HTMLInputElement && on.draftChanged(event.target.value)}
    @blur=${() => on.left()}
  />`;
}

function inputModeOf({ kind, unit }: ShownField): 'text' | 'numeric' | 'decimal' {
  if (kind === 'words') return 'text';
  return unit.text === 'date' ? 'numeric' : 'decimal';
}

const actionSigns = { 'row-up': '↑', 'row-down': '↓', 'row-away': '✕' } as const;

/** The last cell of a row that may be moved or taken away. */
export function actionsCell(
  row: string,
  position: number,
  state: (action: RowAction) => { readonly isCurrent: boolean; readonly isAllowed: boolean },
  act: (action: RowAction) => void,
): TemplateResult {
  return html`<td class="actions-cell" aria-colindex=${position}>
    ${rowActions.map((action) => {
      const { isCurrent, isAllowed } = state(action);
      return html`<button
        type="button"
        data-column=${action}
        tabindex=${isCurrent ? '0' : '-1'}
        aria-label="${actionWords[action]}: ${row}"
        title=${actionWords[action]}
        aria-disabled=${isAllowed ? 'false' : 'true'}
        @click=${() => isAllowed && act(action)}
      >
        <span aria-hidden="true">${actionSigns[action]}</span>
      </button>`;
    })}
  </td>`;
}
