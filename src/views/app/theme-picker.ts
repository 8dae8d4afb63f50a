import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { sharedStyles } from '../parts/shared.styles.ts';
import { readTheme, showTheme, themes } from './theme-choice.ts';

/** Chooses light, dark or sun, and shows what was chosen last. */
@customElement('theme-picker')
export class ThemePicker extends LitElement {
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

  override connectedCallback(): void {
    super.connectedCallback();
    showTheme(readTheme());
  }

  override render(): TemplateResult {
    const current = readTheme();
    return html`<label
      >Screen
      <select @change=${this.onChange}>
        ${themes.map(({ theme, label }) => html`<option value=${theme} ?selected=${theme === current}>${label}</option>`)}
      </select></label
    >`;
  }

  private onChange(event: Event): void {
    const { target } = event;
    if (!(target instanceof HTMLSelectElement)) return;
    const chosen = themes.find(({ theme }) => theme === target.value)?.theme;
    if (chosen !== undefined) showTheme(chosen);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'theme-picker': ThemePicker;
  }
}
