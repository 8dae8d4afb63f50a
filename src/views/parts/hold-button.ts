import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { sharedStyles } from './shared.styles.ts';

const holdTime = 900;

/**
 * A button that acts only when it is held for a second, by finger, mouse or key: what lies behind it is not for
 * whoever happens to touch it.
 *
 * @fires held
 */
@customElement('hold-button')
export class HoldButton extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: inline-block;
      }

      button {
        position: relative;
        overflow: hidden;
        touch-action: none;
        user-select: none;
      }

      .fill {
        position: absolute;
        inset: auto 0 0;
        height: 4px;
        background: var(--resin);
        transform: scaleX(0);
        transform-origin: left;
      }

      .holding .fill {
        transform: scaleX(1);
        transition: transform 900ms linear;
      }
    `,
  ];

  @property() label = '';
  @property() hint = 'Hold for a second';

  @state() private holding = false;

  private timer: ReturnType<typeof setTimeout> | undefined;
  /** By a finger or the mouse, not by a key. */
  private isPressed = false;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.let();
  }

  override render(): TemplateResult {
    return html`<button
      class="plain ${this.holding ? 'holding' : ''}"
      type="button"
      aria-describedby="hint"
      title=${this.hint}
      @pointerdown=${this.onPress}
      @pointerup=${this.let}
      @pointerleave=${this.let}
      @pointercancel=${this.let}
      @keydown=${this.onKey}
      @keyup=${this.let}
      @blur=${this.let}
      @contextmenu=${(event: Event) => event.preventDefault()}
    >
      ${this.label}<span class="fill"></span><span class="hidden" id="hint">${this.hint}</span>
    </button>`;
  }

  private hold(): void {
    if (this.holding) return;
    this.holding = true;
    this.timer = setTimeout(() => {
      this.let();
      if (this.isPressed) spareWhatComes();
      this.dispatchEvent(new CustomEvent('held'));
    }, holdTime);
  }

  private readonly onPress = (): void => {
    this.isPressed = true;
    this.hold();
  };

  private let(): void {
    clearTimeout(this.timer);
    this.holding = false;
  }

  private onKey(event: KeyboardEvent): void {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    this.isPressed = false;
    this.hold();
  }
}

/**
 * What the button uncovered may lie under the finger that still presses: when that lifts, its click is no press of it. The
 * next press or key is.
 */
function spareWhatComes(): void {
  const over = new AbortController();
  const options = { capture: true, signal: over.signal };
  const drop = (event: Event): void => {
    event.preventDefault();
    event.stopPropagation();
    over.abort();
  };
  addEventListener('click', drop, options);
  for (const next of ['pointerdown', 'keydown']) addEventListener(next, () => over.abort(), options);
}

declare global {
  interface HTMLElementTagNameMap {
    'hold-button': HoldButton;
  }
}
