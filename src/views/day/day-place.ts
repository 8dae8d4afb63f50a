import { html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { QuoteSession } from '../../session/quote-session.ts';
import type { Measures } from '../../units/measures.ts';
import { LoadedWhenWanted } from '../parts/loaded-when-wanted.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import type { KeptQuotes } from './kept-quotes.ts';

/** Where the Day face is. The face itself comes when it is first looked at, so that the first price does not wait for it. */
@customElement('day-place')
export class DayPlace extends LitElement {
  static override styles = [sharedStyles];

  @property({ attribute: false }) session: QuoteSession | undefined;
  @property({ attribute: false }) quotes: KeptQuotes | undefined;
  @property() measures: Measures = 'us';

  private readonly face = new LoadedWhenWanted(this, () => import('./day-face.ts'));

  override connectedCallback(): void {
    super.connectedCallback();
    this.face.want();
  }

  override render(): TemplateResult {
    switch (this.face.state) {
      case 'not yet':
      case 'loading':
        return html`<main><p>Laying out the day …</p></main>`;
      case 'failed':
        return html`<main>
          <p>The day could not be loaded. <button class="plain" type="button" @click=${this.face.load}>Try again</button></p>
        </main>`;
      case 'ready':
        return html`<day-face .session=${this.session} .quotes=${this.quotes} measures=${this.measures}></day-face>`;
      default:
        return this.face.state satisfies never;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'day-place': DayPlace;
  }
}
