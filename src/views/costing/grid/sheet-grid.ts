import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { sharedStyles } from '../../parts/shared.styles.ts';
import { send } from '../../parts/sheet-events.ts';
import type { ShownField } from '../../parts/shown-field.ts';
import { insertAtCaret, signKeys, signKeysStyles } from '../../parts/sign-keys.ts';
import type { EntryDetail } from '../../parts/typed-entry.ts';
import { giveUpRefused } from '../../parts/typed-field.ts';
import type { ShownTable } from '../sheet/shown-table.ts';
import { mayGoBack } from '../sheet/standing-words.ts';
import { cellNote } from './cell-note.ts';
import type { CellHandlers } from './grid-cell.ts';
import { actionAfterKey, type CellAction, draftOf, echoOf, isEntry } from './grid-edit.ts';
import { GridEditor } from './grid-editor.ts';
import { gridFaults } from './grid-faults.ts';
import { type FocusPull, focusCell, isControl } from './grid-focus.ts';
import { columnGroups, headerRows } from './grid-header.ts';
import { type GridPlace, type GridShape, nextPlace, placeAfterKey, placeKept } from './grid-keys.ts';
import { gridRows } from './grid-rows.ts';
import { fieldAt, gridShape, placeOf, shownColumns, takesEntry } from './grid-shape.ts';
import { sendAction } from './row-actions.ts';
import { sheetGridStyles } from './sheet-grid.styles.ts';

/**
 * A table of a sheet as a grid: one tab stop, keys move between its cells, and a sentence under it tells how the cell
 * with focus stands, with the way back.
 *
 * @slot actions - what may be done with the table as a whole, beside that sentence
 * @fires cell-entered, cell-reset, row-moved, row-removed, why-asked, refused-given-up
 * @fires emptied - its last row went while it held focus
 */
@customElement('sheet-grid')
export class SheetGrid extends LitElement {
  static override styles = [sharedStyles, signKeysStyles, sheetGridStyles];

  @property({ attribute: false }) table: ShownTable | undefined;
  @property({ type: Boolean }) everyColumn = false;
  /** Refusals by `table.row.column`. */
  @property({ attribute: false }) refusals: ReadonlyMap<string, string> = new Map();

  /** The one cell that Tab stops at. */
  @state() private place: GridPlace | undefined;
  @state() private isActive = false;

  private shape: GridShape = { rows: [], columns: [] };
  private hadFocus = false;
  /** What the next repaint does with focus. */
  private pull: FocusPull | 'none' = 'none';
  private readonly editor = new GridEditor(
    () => this.requestUpdate(),
    (place, detail) => this.enter(place, detail),
    () => giveUpRefused(this),
  );

  /** Brings focus to the first entry of a row. */
  focusRow(row: string): void {
    const { columns } = this.shape;
    const column = columns.find((name) => takesEntry(this.table, { row, column: name }));
    this.go({ row, column: column ?? columns[0] ?? '' });
  }

  /** Brings focus back to the cell that had it. */
  override focus(): void {
    if (this.place !== undefined) focusCell(this.renderRoot, this.place, 'cell');
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    this.hadFocus = Boolean(this.shadowRoot?.activeElement);
    const earlier = changed.get('table');
    if (earlier !== undefined && earlier.name !== this.table?.name) this.editor.reset();
    const shape = gridShape(this.table, this.everyColumn);
    this.place = placeKept(this.place, this.shape, shape);
    this.shape = shape;
    if (this.table) this.editor.follow(this.table, this.refusals);
  }

  override render(): TemplateResult | typeof nothing {
    const { table } = this;
    if (table === undefined) return nothing;
    const columns = shownColumns(table, this.everyColumn);
    const headers = columnGroups(columns.map(({ column }) => column)).length === 0 ? 1 : 2;
    const total = table.columns.length + (table.free ? 1 : 0);
    return html`<div @focusin=${this.onFocusIn} @focusout=${this.onFocusOut}>
      <div class="frame">
        <table
          role="grid"
          aria-rowcount=${headers + table.rows.length}
          aria-colcount=${total}
          @keydown=${this.onKey}
          @click=${this.onClick}
        >
          <caption><span class="title">${table.title}</span></caption>
          <thead>${headerRows(columns, total, table.free)}</thead>
          <tbody>
            ${gridRows(table, columns, headers, {
              place: this.place,
              editor: this.editor,
              refusals: this.refusals,
              handlers: (place) => this.handlers(place),
              act: (row, at, action) => {
                this.go({ row: row.id, column: action });
                sendAction(this, action, table.name, row.id, at);
              },
            })}
          </tbody>
        </table>
        ${table.rows.length === 0 ? html`<p class="light">No rows: nothing of this is on the job.</p>` : nothing}
      </div>
      ${gridFaults(table, this.editor.unread, this.refusals)}
      <div class="under">
        <div class="note" id="note">${this.isActive ? this.note(table) : nothing}</div>
        <slot name="actions"></slot>
      </div>
    </div>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    const lost = this.hadFocus && !this.shadowRoot?.activeElement ? 'cell' : 'none';
    const pull = this.pull === 'none' ? lost : this.pull;
    this.pull = 'none';
    if (pull !== 'none') this.focusPlace(pull);
    // A number that grew may have pushed its own cell out of sight.
    if (changed.has('table')) this.shadowRoot?.activeElement?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  private handlers(place: GridPlace): CellHandlers {
    return {
      draftChanged: (draft) => this.editor.begin(place, draft),
      draftChosen: (draft) => {
        this.editor.begin(place, draft);
        this.editor.finish(fieldAt(this.table, place));
        this.pull = 'cell';
      },
      left: () => {
        // A window that loses focus gives it back to the field.
        if (this.editor.draftAt(place) !== undefined && document.hasFocus())
          this.editor.finish(fieldAt(this.table, place));
      },
      toggled: (isOn) => this.enter(place, { value: isOn ? 1 : 0 }),
    };
  }

  private note(table: ShownTable): TemplateResult | typeof nothing {
    const { place } = this;
    const field = fieldAt(table, place);
    const row = table.rows.find(({ id }) => id === place?.row);
    if (place === undefined || field === undefined || row === undefined) return nothing;
    const sign = (text: string): void => {
      const editor = this.shadowRoot?.activeElement;
      if (editor instanceof HTMLInputElement) insertAtCaret(editor, text);
    };
    const isTyping = this.editor.edit !== undefined && field.kind !== 'choice' && field.kind !== 'words';
    return html`${cellNote(field, `${row.label}, ${field.label}`, echoOf(this.editor.edit, field), {
      back: () => this.goBack(place, field),
      typeOver: () => this.start(place, field),
      answer: (value) => this.enter(place, { value }),
      askWhy: () => this.ask(field),
    })}${isTyping ? signKeys(field.unit, field.measures, sign) : nothing}`;
  }

  private readonly onFocusIn = ({ target }: FocusEvent): void => {
    this.isActive = true;
    this.place = placeOf(target) ?? this.place;
  };

  private readonly onFocusOut = ({ currentTarget, relatedTarget }: FocusEvent): void => {
    const isWithin =
      currentTarget instanceof Node && relatedTarget instanceof Node && currentTarget.contains(relatedTarget);
    if (!isWithin) this.isActive = false;
  };

  /** The first click edits with all of the text selected; the next is in the field, which puts its caret there. */
  private readonly onClick = ({ target }: MouseEvent): void => {
    const place = placeOf(target);
    const field = fieldAt(this.table, place);
    if (place === undefined || field === undefined || isControl(target)) return;
    this.place = place;
    if (isEntry(field) && field.kind !== 'yesNo') this.start(place, field);
    else this.ask(field);
  };

  private readonly onKey = (event: KeyboardEvent): void => {
    const place = placeOf(event.target);
    if (place === undefined || event.isComposing) return;
    if (this.editor.edit !== undefined) {
      this.onEditorKey(event, place);
      return;
    }
    const next = placeAfterKey(place, event, this.shape);
    if (next !== undefined) {
      event.preventDefault();
      this.go(next);
      return;
    }
    const field = fieldAt(this.table, place);
    const action = field && actionAfterKey(event, field);
    if (field === undefined || action === undefined) return;
    event.preventDefault();
    this.perform(action, place, field);
  };

  private perform(action: CellAction, place: GridPlace, field: ShownField): void {
    switch (action.kind) {
      case 'edit':
        this.start(place, field);
        break;
      case 'type':
        this.start(place, field, action.text);
        break;
      case 'toggle':
        this.enter(place, { value: field.typed === '1' ? 0 : 1 });
        break;
      case 'ask why':
        this.ask(field);
        break;
      case 'go back':
        this.goBack(place, field);
        break;
      case 'drop':
        this.editor.drop(place);
        break;
      case 'stay':
        break;
      default:
        action satisfies never;
    }
  }

  /** Enter takes the text, Escape gives back the value, Tab goes on to the next entry, the arrows to the next row. */
  private onEditorKey(event: KeyboardEvent, place: GridPlace): void {
    const field = fieldAt(this.table, place);
    switch (event.key) {
      case 'Escape':
        this.editor.stop();
        this.editor.drop(place);
        this.pull = 'cell';
        break;
      case 'Enter':
        if (this.editor.finish(field)) this.pull = 'cell';
        else if (field !== undefined) this.start(place, field);
        break;
      case 'Tab': {
        const next = nextPlace(place, event.shiftKey ? -1 : 1, this.shape, (near) => takesEntry(this.table, near));
        this.editor.finish(field);
        this.go(next ?? place);
        // Without a next entry the key leads out of the table.
        if (next === undefined) return;
        break;
      }
      case 'ArrowUp':
      case 'ArrowDown':
        if (field?.kind === 'choice') return;
        this.editor.finish(field);
        this.go(placeAfterKey(place, event, this.shape) ?? place);
        break;
      default:
        return;
    }
    event.preventDefault();
  }

  private go(place: GridPlace): void {
    this.place = place;
    this.pull = 'cell';
    this.requestUpdate();
  }

  /** Begins to edit: with all of what stands, or with the first character of another text. */
  private start(place: GridPlace, field: ShownField, text?: string): void {
    this.place = place;
    this.pull = text === undefined ? 'whole text' : 'end of text';
    this.editor.begin(place, text ?? draftOf(field, this.editor.unreadAt(place)));
  }

  private enter(place: GridPlace, detail: EntryDetail): void {
    if (this.table) send(this, 'cell-entered', { table: this.table.name, ...place, ...detail });
  }

  private goBack(place: GridPlace, field: ShownField): void {
    this.editor.drop(place);
    if (this.table && mayGoBack(field)) send(this, 'cell-reset', { table: this.table.name, ...place });
    this.go(place);
  }

  private ask({ cell }: ShownField): void {
    if (cell !== undefined) send(this, 'why-asked', { cell });
  }

  private focusPlace(pull: FocusPull): void {
    if (this.place === undefined) this.dispatchEvent(new CustomEvent('emptied'));
    else focusCell(this.renderRoot, this.place, pull);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sheet-grid': SheetGrid;
  }
}
