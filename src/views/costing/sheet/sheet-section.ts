import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import { sharedStyles } from '../../parts/shared.styles.ts';
import { send } from '../../parts/sheet-events.ts';
import type { EntryDetail } from '../../parts/typed-entry.ts';
import './value-line.ts';
import { OutOfSight } from '../../parts/out-of-sight.ts';
import type { ShownField } from '../../parts/shown-field.ts';
import { sheetSectionStyles } from './sheet-section.styles.ts';
import '../grid/grid-or-cards.ts';
import type { ShownSection } from './shown-sheet.ts';

/**
 * A section of a sheet: its tables and its lines. What is drawn of a table stands below it, in the slot of its name.
 *
 * @fires line-entered, line-reset, lines-checked, cell-entered, cell-reset, row-added, row-moved, row-removed, why-asked
 */
@customElement('sheet-section')
export class SheetSection extends LitElement {
  static override styles = [sharedStyles, sheetSectionStyles];

  /** Makes what is shown of it, asked for when it is drawn: out of view that is later. */
  @property({ attribute: false }) made: (() => ShownSection) | undefined;
  /** Refusals by line name, or by `table.row.column`. */
  @property({ attribute: false }) refusals: ReadonlyMap<string, string> = new Map();

  private shown: ShownSection | undefined;
  private readonly sight = new OutOfSight(this, '30rem');

  protected override async scheduleUpdate(): Promise<void> {
    await this.sight.turn();
    super.scheduleUpdate();
  }

  /** Brings the section into view, with the focus at its heading. */
  come(): void {
    this.scrollIntoView({ block: 'start' });
    this.renderRoot.querySelector<HTMLElement>('#title')?.focus({ preventScroll: true });
  }

  /** Nothing is drawn of a section of which nothing moved. */
  protected override shouldUpdate(changed: PropertyValues<this>): boolean {
    const before = this.shown;
    this.shown = this.made?.();
    return this.shown !== before || changed.has('refusals');
  }

  override render(): TemplateResult | typeof nothing {
    const section = this.shown;
    if (section === undefined) return nothing;
    return html`
      <h3 id="title" tabindex="-1">${section.title}</h3>
      ${section.unchecked.length === 0 ? nothing : this.unchecked(section)}
      ${section.note === '' ? nothing : html`<p class="note">${section.note}</p>`}
      ${isEmpty(section) ? html`<p class="light">Nothing of this is on the job.</p>` : nothing}
      ${repeat(
        section.tables,
        (table) => table.name,
        (table) =>
          html`<grid-or-cards .table=${table} .refusals=${this.refusals}></grid-or-cards><slot name=${table.name}></slot>`,
      )}
      ${repeat(
        section.lines,
        (field) => field.name,
        (field) => this.line(field),
      )}
    `;
  }

  /** Said once a section; at the lines themselves a dotted rule shows it. */
  private unchecked({ title, unchecked: { length }, unchecked: checked }: ShownSection): TemplateResult {
    const lines = `${length} ${length === 1 ? 'line' : 'lines'}`;
    return html`<p class="unchecked">
      ${lines} not checked yet
      <button
        class="quiet"
        type="button"
        aria-label="mark as checked: ${title}, ${lines}"
        @click=${() => send(this, 'lines-checked', { checked })}
      >
        mark as checked
      </button>
    </p>`;
  }

  private line(field: ShownField): TemplateResult {
    const line = field.name;
    return html`<value-line
      .field=${field}
      refusal=${this.refusals.get(line) ?? ''}
      @entered=${(event: CustomEvent<EntryDetail>) => send(this, 'line-entered', { line, ...event.detail })}
      @went-back=${() => send(this, 'line-reset', { line })}
    ></value-line>`;
  }
}

/** Its texts are told only while they hold. */
function isEmpty({ lines, tables }: ShownSection): boolean {
  return lines.length === 0 && tables.length === 0;
}

declare global {
  interface HTMLElementTagNameMap {
    'sheet-section': SheetSection;
  }
}
