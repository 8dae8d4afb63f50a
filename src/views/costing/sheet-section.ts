import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../parts/number-field.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import { send } from '../parts/sheet-events.ts';
import type { EntryDetail } from '../parts/typed-entry.ts';
import type { FieldView } from './field-view.ts';
import { sheetSectionStyles } from './sheet-section.styles.ts';
import './sheet-table.ts';
import type { SectionView } from './sheet-view.ts';

/**
 * A section of a sheet: its lines, each with its value and where that comes from, and its tables.
 *
 * @fires line-entered, line-reset, cell-entered, cell-reset, row-added, row-removed, why-asked
 */
@customElement('sheet-section')
export class SheetSection extends LitElement {
  static override styles = [sharedStyles, sheetSectionStyles];

  @property({ attribute: false }) section: SectionView | undefined;
  /** Refusals by line name, or by `table.row.column`. */
  @property({ attribute: false }) refusals: ReadonlyMap<string, string> = new Map();

  override render(): TemplateResult | typeof nothing {
    const { section } = this;
    if (section === undefined) return nothing;
    return html`
      <h3 id="title">${section.title}</h3>
      ${section.note === '' ? nothing : html`<p class="note">${section.note}</p>`}
      ${section.tables.map((table) => html`<sheet-table .table=${table} .refusals=${this.refusals}></sheet-table>`)}
      ${section.lines.map((field) => this.line(field))}
    `;
  }

  private line(field: FieldView): TemplateResult {
    return html`
      <div class="line">
        <button class="name" type="button" aria-label="Why: ${field.label}" @click=${() => this.ask(field)}>${field.label}</button>
        ${this.control(field)} ${field.kind === 'text' ? nothing : this.origin(field)}
      </div>
    `;
  }

  private control(field: FieldView): TemplateResult {
    const enter = (detail: EntryDetail): void => send(this, 'line-entered', { line: field.name, ...detail });
    switch (field.kind) {
      case 'text':
        return html`<span class="words">${field.shown}</span>`;
      case 'result':
        return html`<span class="result ${field.failed ? 'failed' : ''}">
          <span class=${field.chosen === '' ? '' : 'word'}>${field.shown}</span><span class="unit">${field.suffix}</span>
        </span>`;
      case 'choice':
        return html`<select
          class=${field.standing === 'unchecked' ? 'unchecked' : ''}
          aria-label=${field.label}
          @change=${(event: Event) => event.target instanceof HTMLSelectElement && enter({ value: event.target.value })}
        >
          ${field.options.map(({ code, label }) => html`<option value=${code} ?selected=${code === field.chosen}>${label}</option>`)}
        </select>`;
      case 'yesNo':
        return html`<span class="result"
          ><input
            type="checkbox"
            aria-label=${field.label}
            .checked=${field.typed === '1'}
            @change=${(event: Event) => event.target instanceof HTMLInputElement && enter({ value: event.target.checked ? 1 : 0 })} /><span
            class="unit"
            >${field.typed === '1' ? 'yes' : 'no'}</span
          ></span
        >`;
      case 'number':
        return html`<number-field
          label=${field.label}
          .unit=${field.unit}
          text=${field.typed}
          prefix=${field.prefix}
          suffix=${field.suffix}
          refusal=${this.refusals.get(field.name) ?? ''}
          ?unchecked=${field.standing === 'unchecked'}
          @entered=${(event: CustomEvent<EntryDetail>) => enter(event.detail)}
        ></number-field>`;
      default:
        return field.kind satisfies never;
    }
  }

  private origin(field: FieldView): TemplateResult {
    if (field.standing === 'changed' || field.standing === 'departed') {
      const words = field.standing === 'departed' ? 'typed over the formula' : `changed from our ${field.standard}`;
      return html`<span class="from changed"
        >${words}
        <button class="back" type="button" @click=${() => send(this, 'line-reset', { line: field.name })}>back</button></span
      >`;
    }
    if (field.standing === 'worked out') return html`<span class="from"></span>`;
    return html`<span class="from">${[field.source, field.range, 'not checked yet'].filter((text) => text !== '').join(' · ')}</span>`;
  }

  private ask(field: FieldView): void {
    if (field.cell !== undefined) send(this, 'why-asked', { cell: field.cell });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sheet-section': SheetSection;
  }
}
