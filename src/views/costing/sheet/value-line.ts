import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import '../../parts/number-field.ts';
import '../../parts/words-field.ts';
import { sharedStyles } from '../../parts/shared.styles.ts';
import { send } from '../../parts/sheet-events.ts';
import type { ShownField } from '../../parts/shown-field.ts';
import type { EntryDetail } from '../../parts/typed-entry.ts';
import { backWords, boundsWords, mayGoBack, standingWords } from './standing-words.ts';
import { valueLineStyles } from './value-line.styles.ts';

/**
 * One value on a line: its name, its control or its number, where it comes from, and the way back.
 *
 * @fires entered - what was typed or chosen; over a formula with `instead`
 * @fires went-back - to our standard, or to the formula
 * @fires why-asked
 */
@customElement('value-line')
export class ValueLine extends LitElement {
  static override styles = [sharedStyles, valueLineStyles];

  @property({ attribute: false }) field: ShownField | undefined;
  /** The full name of the value, where its own label is not enough: “Bay, Width”. */
  @property() label = '';
  @property() refusal = '';

  /** Whether a number is being typed over the formula. */
  @state() private isTypingOver = false;

  private pullsFocus = false;

  override render(): TemplateResult | typeof nothing {
    const { field } = this;
    if (field === undefined) return nothing;
    return html`<div class="line ${field.kind === 'yesNo' ? 'yes-no' : ''}">
      ${this.caption(field)} ${this.isTypingOver ? this.typingOver(field) : this.control(field)} ${field.kind === 'text' ? nothing : this.origin(field)}
      ${
        this.refusal === '' || field.kind === 'number' || field.kind === 'words' || this.isTypingOver
          ? nothing
          : html`<p class="error" role="alert" id="refused">${this.refusal} ${inForce(field)}</p>`
      }
    </div>`;
  }

  protected override updated(): void {
    if (!this.pullsFocus) return;
    this.pullsFocus = false;
    this.focus();
  }

  /** Brings focus to its control, as soon as that is there. */
  override focus(): void {
    this.pullsFocus = !this.hasUpdated;
    this.renderRoot?.querySelector<HTMLElement>('number-field, words-field, select, input, .number')?.focus();
  }

  private name(field: ShownField): string {
    return this.label === '' ? field.label : this.label;
  }

  /** What has no cell has no why either. */
  private caption(field: ShownField): TemplateResult {
    if (field.cell === undefined) return html`<span class="name">${field.label}</span>`;
    return html`<button class="name" type="button" aria-label="Why: ${this.name(field)}" @click=${() => this.ask(field)}>
      ${field.label}
    </button>`;
  }

  private control(field: ShownField): TemplateResult {
    switch (field.kind) {
      case 'text':
        return html`<span class="words">${field.shown}</span>`;
      case 'words':
        return html`<words-field
          label=${this.name(field)}
          text=${field.typed}
          refusal=${this.refusal}
          @entered=${(event: CustomEvent<EntryDetail>) => this.enter(event.detail)}
        ></words-field>`;
      case 'result':
        return this.result(field);
      case 'choice':
        return html`<select
          class=${field.standing === 'unchecked' ? 'unchecked' : ''}
          aria-label=${this.name(field)}
          aria-describedby="refused"
          @change=${(event: Event) => event.target instanceof HTMLSelectElement && this.enter({ value: event.target.value })}
        >
          ${field.options.map(({ code, label }) => html`<option value=${code} .selected=${live(code === field.chosen)}>${label}</option>`)}
        </select>`;
      case 'yesNo':
        return html`<label class="result ${field.standing === 'unchecked' ? 'unchecked' : ''}"
          ><input
            type="checkbox"
            aria-label=${this.name(field)}
            .checked=${live(field.typed === '1')}
            @change=${(event: Event) => event.target instanceof HTMLInputElement && this.enter({ value: event.target.checked ? 1 : 0 })} /><span
            class="unit"
            >${field.typed === '1' ? 'yes' : 'no'}</span
          ></label
        >`;
      case 'number':
        return this.numberField(field, this.name(field), (detail) => this.enter(detail));
      default:
        return field.kind satisfies never;
    }
  }

  private result(field: ShownField): TemplateResult {
    const gave = field.standing === 'departed' && field.worked !== '' ? field.worked : '';
    return html`<button class="number ${field.failed ? 'failed' : ''}" type="button" @click=${() => this.ask(field)}>
      <span class="hidden">Why: ${this.name(field)},</span>
      ${gave === '' ? nothing : html`<s><span class="hidden">formula gives</span> ${gave}</s>`}
      <span class=${field.chosen === '' ? '' : 'word'}>${field.shown}</span> <span class="unit">${field.suffix}</span>
    </button>`;
  }

  private numberField(field: ShownField, label: string, enter: (detail: EntryDetail) => void): TemplateResult {
    return html`<number-field
      label=${label}
      .unit=${field.unit}
      measures=${field.measures}
      text=${field.typed}
      prefix=${field.prefix}
      suffix=${field.suffix}
      hint=${boundsWords(field)}
      refusal=${this.refusal}
      ?unchecked=${field.standing === 'unchecked'}
      @entered=${(event: CustomEvent<EntryDetail>) => enter(event.detail)}
    ></number-field>`;
  }

  /** A number in the place of what the formula gives; Escape keeps the formula. */
  private typingOver(field: ShownField): TemplateResult {
    return html`<div @keydown=${this.onTypingKey} @focusout=${this.onTypingOut}>
      ${this.numberField(field, `Instead of the formula: ${this.name(field)}`, (detail) => {
        this.endTypingOver();
        this.enter(field.typeOver === 'departure' ? { ...detail, instead: true } : detail);
      })}
    </div>`;
  }

  private origin(field: ShownField): TemplateResult {
    const constant = field.standing === 'constant' ? 'a constant' : '';
    const words = [field.source, field.range, constant].filter((text) => text !== '').join(' · ');
    // What the formula gives stands crossed out beside a result, and needs no saying again.
    const wordsOfStanding = field.kind === 'result' ? 'typed over the formula' : standingWords(field);
    if (mayGoBack(field))
      return html`<span class="from"
        ><span class="changed">${wordsOfStanding}</span>
        <button class="quiet" type="button" aria-label="${this.name(field)}: ${backWords(field)}" @click=${() => this.goBack()}>
          back
        </button>
        ${field.kind === 'result' ? this.overrule(field, 'type another') : nothing}
        ${words}</span
      >`;
    const unchecked = isUnchecked(field) ? html`<span class="hidden">not checked yet</span>` : nothing;
    return html`<span class="from">${words} ${unchecked} ${this.overrule(field, 'type over it')}</span>`;
  }

  private overrule(field: ShownField, typeWords: string): TemplateResult | typeof nothing {
    if (field.typeOver === 'never') return nothing;
    const isYes = field.typed === '1';
    const answerWords = isYes ? 'say no instead' : 'say yes instead';
    const words = field.typeOver === 'answer' ? answerWords : typeWords;
    const act = (): void => (field.typeOver === 'answer' ? this.enter({ value: isYes ? 0 : 1 }) : this.typeOver());
    return html`<button
      class="quiet type-over"
      type="button"
      aria-label="${this.name(field)}: ${words}"
      @click=${act}
    >
      ${words}
    </button>`;
  }

  private typeOver(): void {
    this.isTypingOver = true;
    this.pullsFocus = true;
  }

  private endTypingOver(): void {
    this.isTypingOver = false;
  }

  private onTypingOut(): void {
    const field = this.renderRoot.querySelector('number-field');
    if (field === null || !field.hasFault) this.endTypingOver();
  }

  private onTypingKey(event: KeyboardEvent): void {
    if (event.key !== 'Escape') return;
    this.endTypingOver();
    this.pullsFocus = true;
  }

  private goBack(): void {
    this.dispatchEvent(new CustomEvent('went-back'));
  }

  private enter(detail: EntryDetail): void {
    this.dispatchEvent(new CustomEvent<EntryDetail>('entered', { detail }));
    // Refused, the same field stands; what was ticked or chosen is to show it again.
    this.requestUpdate();
  }

  private ask({ cell }: ShownField): void {
    if (cell !== undefined) send(this, 'why-asked', { cell });
  }
}

/** Shown by a dotted rule, and told to those who listen; a field says itself that nothing is written in it. */
function isUnchecked({ kind, shown, standing }: ShownField): boolean {
  return standing === 'unchecked' && (kind !== 'words' || shown !== '');
}

/** A refused choice is gone from its control, so the sentence says what stands there. */
function inForce({ kind, shown }: ShownField): string {
  return kind === 'choice' && shown !== '' ? `${shown} still counts.` : '';
}

declare global {
  interface HTMLElementTagNameMap {
    'value-line': ValueLine;
  }
}
