import { html, LitElement, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { QuoteSession } from '../../session/quote-session.ts';
import type { Measures } from '../../units/measures.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import type { KeptQuotes } from './kept-quotes.ts';

type Loaded = 'not yet' | 'loading' | 'ready' | 'failed';

/** Where the Day face is. The face itself comes when it is first looked at, so that the first price does not wait for it. */
@customElement('day-place')
export class DayPlace extends LitElement {
  static override styles = [sharedStyles];

  @property({ attribute: false }) session: QuoteSession | undefined;
  @property({ attribute: false }) quotes: KeptQuotes | undefined;
  @property() measures: Measures = 'us';

  @state() private loaded: Loaded = 'not yet';

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.loaded === 'not yet') void this.load();
  }

  override render(): TemplateResult {
    switch (this.loaded) {
      case 'not yet':
      case 'loading':
        return html`<main><p>Laying out the day …</p></main>`;
      case 'failed':
        return html`<main>
          <p>The day could not be loaded. <button class="plain" type="button" @click=${this.load}>Try again</button></p>
        </main>`;
      case 'ready':
        return html`<day-face .session=${this.session} .quotes=${this.quotes} measures=${this.measures}></day-face>`;
      default:
        return this.loaded satisfies never;
    }
  }

  private readonly load = async (): Promise<void> => {
    this.loaded = 'loading';
    try {
      await import('./day-face.ts');
      this.loaded = 'ready';
    } catch {
      // Off the net before it was ever fetched: said, and tried again on a touch.
      this.loaded = 'failed';
    }
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'day-place': DayPlace;
  }
}
