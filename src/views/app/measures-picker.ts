import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Measures } from '../../units/measures.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import { measuresOffered } from './measures-choice.ts';

/**
 * Chooses feet and gallons, or metres and litres. It changes how a quote is shown, never the quote.
 *
 * @fires measures-chosen
 */
@customElement('measures-picker')
export class MeasuresPicker extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: inline-block;
      }

      select {
        min-height: 2.25rem;
      }
    `,
  ];

  @property() measures: Measures = 'us';

  override render(): TemplateResult {
    return html`<label
      >Units
      <select @change=${this.onChange}>
        ${measuresOffered.map(({ measures, label }) => html`<option value=${measures} ?selected=${measures === this.measures}>${label}</option>`)}
      </select></label
    >`;
  }

  private onChange(event: Event): void {
    const { target } = event;
    if (!(target instanceof HTMLSelectElement)) return;
    const chosen = measuresOffered.find(({ measures }) => measures === target.value)?.measures;
    if (chosen !== undefined) this.dispatchEvent(new CustomEvent<Measures>('measures-chosen', { detail: chosen }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'measures-picker': MeasuresPicker;
  }
}
