import { html, LitElement, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { sharedStyles } from '../parts/shared.styles.ts';
import { movedWords, type ToldOptions } from './told-options.ts';

/** Milliseconds after the last change: sooner, and each of many quick changes would be said; later, and none seems to have come. */
const untilSaid = 500;
/** Milliseconds that words are away before the same are said again: a text that stays is no news to a screen reader. */
const away = 100;

/**
 * The page’s one status region, for those who listen. It says what moved of a quote’s options, and before that what an
 * element tells of the change. The last change has the word: what was told of one before it and not said yet is dropped.
 */
@customElement('status-region')
export class StatusRegion extends LitElement {
  static override styles = sharedStyles;

  @state() private said = '';

  private read: (() => ToldOptions) | undefined;
  private known: ToldOptions | undefined;
  private hasMoved = false;
  private words = '';
  private timer: ReturnType<typeof setTimeout> | undefined;

  /** Begins with the options of a quote, as they stand when things rest. */
  follow(read: () => ToldOptions): void {
    this.forget();
    this.read = read;
    this.sayAtRest();
  }

  /** Numbers of the quote are others now. */
  optionsMoved(): void {
    this.hasMoved = true;
    this.words = '';
    this.sayAtRest();
  }

  tell(words: string): void {
    this.words = words;
    this.sayAtRest();
  }

  /** Nothing of the quote is said any more. */
  forget(): void {
    clearTimeout(this.timer);
    this.read = undefined;
    this.known = undefined;
    this.hasMoved = false;
    this.words = '';
    this.said = '';
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.forget();
  }

  override render(): TemplateResult {
    return html`<div class="hidden" role="status">${this.said}</div>`;
  }

  private sayAtRest(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(this.sayNow, untilSaid);
  }

  private readonly sayNow = (): void => {
    const now = this.read?.();
    const moved = now !== undefined && this.hasMoved ? movedWords(this.known, now) : '';
    const words = [this.words, moved].filter((each) => each !== '').join(' ');
    this.known = now;
    this.hasMoved = false;
    this.words = '';
    if (words !== '') this.write(words);
  };

  private write(words: string): void {
    if (words === this.said) {
      this.said = '';
      this.timer = setTimeout(() => this.write(words), away);
    } else this.said = words;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'status-region': StatusRegion;
  }
}
