import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { ifDefined } from 'lit/directives/if-defined.js';
import { formatQuantity } from '../../units/format.ts';
import { feet, writeLength } from '../../units/length-text.ts';
import type { Measures } from '../../units/measures.ts';
import { readTypedIn, textToKeep } from '../../units/typed-measure.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import { lengthPadStyles } from './length-pad.styles.ts';

/** Two sides of an area, with what was typed for each. */
export interface MeasuredSides {
  readonly length: MeasuredSide;
  readonly width: MeasuredSide;
}

interface MeasuredSide {
  /** In feet. */
  readonly value: number;
  readonly typed?: string;
}

type Side = 'length' | 'width';

const half = ' 1/2';
/** In feet. Common practice, no source: the floors of garages, basements and patios are shorter. */
const longestUsualSide = 100;
/** Digits that may be feet and inches without a mark: 227, 2211. */
const feetThenInches = /^(\d{1,2})(\d|1[01])$/;
const metresThenCentimetres = /^(\d{1,2})(\d\d)$/;
const keys = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '0'] as const;
/**
 * Big keys for two sides in feet and inches, or in metres, for one hand in a garage. The phone's own keyboard stays away; a
 * keyboard types into it all the same.
 *
 * @fires measured - both sides read
 */
@customElement('length-pad')
export class LengthPad extends LitElement {
  static override styles = [sharedStyles, lengthPadStyles];

  @property() heading = 'Measure';
  @property() measures: Measures = 'us';
  /** Sides as they stand, in feet; a side nobody types anew stays. */
  @property({ attribute: false }) current: { readonly length: number; readonly width: number } | undefined;

  @state() private texts: Readonly<Record<Side, string>> = { length: '', width: '' };
  @state() private side: Side = 'length';
  @state() private fault = '';

  @query('dialog') private readonly dialog: HTMLDialogElement | null | undefined;

  /** Shows the pad; the sides start empty, so that a digit starts a new measure. */
  open(): void {
    this.texts = { length: '', width: '' };
    this.side = 'length';
    this.fault = '';
    this.dialog?.showModal();
  }

  override render(): TemplateResult {
    // While it is open the page behind it, with its status region, is not to be heard.
    const role = this.dialog?.open === true ? 'status' : undefined;
    return html`<dialog aria-labelledby="heading" @keydown=${this.onKeyboard} @close=${() => this.requestUpdate()}>
      <h2 id="heading">${this.heading}</h2>
      <div class="sides">${this.sideButton('length', 'Length')} ${this.sideButton('width', 'Width')}</div>
      <div role=${ifDefined(role)}>${this.fault === '' ? [this.reading('length', 'Length'), this.reading('width', 'Width')] : nothing}</div>
      ${this.fault === '' ? nothing : html`<p class="error" role="alert">${this.fault}</p>`}
      <div class=${this.measures === 'us' ? 'keys' : 'keys metres'}>
        ${this.signedRows()}
        <button type="button" @click=${this.rubOut} aria-label="Rub out">⌫</button>
        ${this.key('0', '0')} ${this.measures === 'us' ? nothing : this.key('.', '.')}
        <button class="done" type="button" @click=${this.onNext}>${this.side === 'length' ? 'Width next' : 'Done'}</button>
        <button class="wide" type="button" @click=${() => this.dialog?.close()}>Leave as it was</button>
      </div>
    </dialog>`;
  }

  /** Digits by threes; in feet and inches each row ends with a sign. */
  private signedRows(): TemplateResult {
    const signs: readonly (readonly [text: string, label: string])[] =
      this.measures === 'us'
        ? [
            ["'", 'ft'],
            ['"', 'in'],
            [half, '½'],
          ]
        : [];
    const rows = [0, 3, 6].map((from, at) => ({ digits: keys.slice(from, from + 3), sign: signs[at] }));
    return html`${rows.map(
      ({ digits, sign }) =>
        html`${digits.map((key) => this.key(key, key))} ${sign === undefined ? nothing : this.key(...sign)}`,
    )}`;
  }

  private sideButton(side: Side, name: string): TemplateResult {
    return html`<button class="side" type="button" aria-pressed=${this.side === side ? 'true' : 'false'} @click=${() => this.turnTo(side)} @focus=${() => this.turnTo(side)}>
      <small>${name}${this.measures === 'us' ? '' : ', m'}</small>${this.shown(side)}
    </button>`;
  }

  private key(text: string, label: string): TemplateResult {
    return html`<button type="button" @click=${() => this.type(text)}>${label}</button>`;
  }

  private turnTo(side: Side): void {
    this.side = side;
  }

  private shown(side: Side): TemplateResult {
    const { current } = this;
    if (this.texts[side] !== '') return html`${this.texts[side]}`;
    return html`<span class="light">${current === undefined ? '–' : writeLength(current[side], this.measures)}</span>`;
  }

  /** How a side is read while it is typed. */
  private reading(side: Side, name: string): TemplateResult | typeof nothing {
    const text = this.texts[side];
    if (text === '') return nothing;
    const read = readTypedIn(text, feet, this.measures);
    if (read.kind === 'fault') return html`<p>${name} cannot be read: ${read.reason}</p>`;
    const question = longSideQuestion(text, read.value, this.measures);
    return question === '' && read.echo === undefined ? nothing : html`<p>${name}: ${question || read.echo}</p>`;
  }

  private type(text: string): void {
    const before = this.texts[this.side];
    // Half an inch more belongs before the mark of inches.
    const after = text === half && before.endsWith('"') ? `${before.slice(0, -1)}${half}"` : before + text;
    this.texts = { ...this.texts, [this.side]: after };
    this.fault = '';
  }

  private rubOut(): void {
    this.texts = { ...this.texts, [this.side]: this.texts[this.side].slice(0, -1) };
    this.fault = '';
  }

  private onKeyboard(event: KeyboardEvent): void {
    if (/^[\d'" .,/-]$/.test(event.key)) this.type(event.key);
    else if (event.key === 'Backspace') this.rubOut();
    else if (event.key === 'Enter' && isSide(event.target)) this.onNext();
    else return;
    event.preventDefault();
  }

  private onNext(): void {
    if (this.side === 'length') {
      this.side = 'width';
      this.renderRoot.querySelector<HTMLElement>('.side:last-child')?.focus();
      return;
    }
    const [length, width] = [this.read('length'), this.read('width')];
    if (length === undefined || width === undefined) return;
    this.dialog?.close();
    this.dispatchEvent(new CustomEvent<MeasuredSides>('measured', { detail: { length, width } }));
  }

  private read(side: Side): MeasuredSide | undefined {
    const typed = this.texts[side];
    if (typed === '' && this.current !== undefined) {
      const value = this.current[side];
      return this.measures === 'us' ? { value, typed: writeLength(value, 'us') } : { value };
    }
    const read = readTypedIn(typed, feet, this.measures);
    if (read.kind === 'number' && read.value > 0) {
      const kept = this.measures === 'us' ? typed : textToKeep(typed, read.value, feet, this.measures);
      return { value: read.value, ...(kept !== undefined && { typed: kept }) };
    }
    this.side = side;
    this.fault = `${side === 'length' ? 'Length' : 'Width'}: ${read.kind === 'fault' ? read.reason : 'more than 0 is wanted.'}`;
    return undefined;
  }
}

/** Asks about a side that is longer than sides are: the mark of feet may have been left out. '' for any other. */
function longSideQuestion(text: string, length: number, measures: Measures): string {
  if (length <= longestUsualSide) return '';
  const asked = `${formatQuantity(length, feet, { measures })}, as long as that?`;
  const [, whole = '', rest = ''] = (measures === 'us' ? feetThenInches : metresThenCentimetres).exec(text) ?? [];
  if (whole === '') return asked;
  return measures === 'us'
    ? `${asked} For ${whole}' ${rest}" press ft after ${whole}.`
    : `${asked} For ${whole}.${rest} m press the point after ${whole}.`;
}

function isSide(target: EventTarget | null): boolean {
  return target instanceof HTMLDialogElement || (target instanceof HTMLElement && target.classList.contains('side'));
}

declare global {
  interface HTMLElementTagNameMap {
    'length-pad': LengthPad;
  }
}
