import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { type PassedStop, passLimits } from '../../../quote/quote-document.ts';
import type { ToldCheck } from '../../../quote/told-checks.ts';
import { keepSetting, keptSetting } from '../../../storage/kept-settings.ts';
import { instantWords } from '../instant-words.ts';
import { sharedStyles } from '../shared.styles.ts';
import { send } from '../sheet-events.ts';

/** Under which this browser keeps the name that was given last. */
const nameSetting = 'who-goes-ahead';

/**
 * What becomes of a stop: somebody goes ahead past it, with a name and a reason, or it stands again. Some have no way round.
 *
 * @fires stop-decided
 */
@customElement('stop-pass')
export class StopPass extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
        padding-top: 0.25rem;
      }

      p {
        margin: 0 0 0.25rem;
      }

      form {
        display: grid;
        gap: 0.5rem;
        padding-top: 0.25rem;
      }

      label {
        display: grid;
        font-size: var(--small);
      }

      input {
        font-size: 1rem;
        min-height: 2.75rem;
      }

      .error {
        color: var(--stop);
        font-size: var(--small);
      }

      .do {
        display: flex;
        flex-wrap: wrap;
        gap: 0.5rem;
      }
    `,
  ];

  @property({ attribute: false }) check: ToldCheck | undefined;
  @property() option = '';

  @state() private asking = false;
  @state() private missing: 'by' | 'why' | undefined;

  override render(): TemplateResult | typeof nothing {
    const { check } = this;
    if (check === undefined || check.severity !== 'stop' || check.verdict !== 'fails') return nothing;
    if (check.absolute)
      return html`<p class="light">There is no way round this stop: what it says has to be put right.</p>`;
    if (check.passed !== undefined)
      return html`<p>${passWords(check.passed)}</p>
        <button class="plain" type="button" @click=${() => this.decide(check)}>Let it stop again</button>`;
    return html`${check.lapsed ? html`<p class="light">${lapsedWords(check.lapsed)}</p>` : nothing}
    ${
      this.asking
        ? this.form()
        : html`<button class="plain" type="button" @click=${this.onAsk}>Go ahead anyway</button>`
    }`;
  }

  private form(): TemplateResult {
    const wrong = (field: 'by' | 'why'): boolean => this.missing === field;
    return html`<form novalidate @submit=${this.onSubmit} @keydown=${this.onKey}>
      <label>Who goes ahead
        <input name="by" autocomplete="name" maxlength=${passLimits.by} .value=${keptSetting(nameSetting) ?? ''} aria-invalid=${wrong('by')} aria-describedby="error" />
      </label>
      <label>Why it is right to go ahead
        <input name="why" autocomplete="off" maxlength=${passLimits.why} aria-invalid=${wrong('why')} aria-describedby="error" />
      </label>
      <div class="error" id="error" role="alert">${this.missing === undefined ? '' : missingWords[this.missing]}</div>
      <div class="do">
        <button class="plain" type="submit">Go ahead</button>
        <button class="plain" type="button" @click=${this.onLeave}>Leave it stopped</button>
      </div>
    </form>`;
  }

  private readonly onAsk = async (): Promise<void> => {
    this.asking = true;
    await this.updateComplete;
    const fields = [...this.renderRoot.querySelectorAll('input')];
    (fields.find(({ value }) => value === '') ?? fields[0])?.focus();
  };

  private readonly onLeave = async (): Promise<void> => {
    this.asking = false;
    this.missing = undefined;
    await this.updateComplete;
    this.renderRoot.querySelector('button')?.focus();
  };

  private readonly onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') void this.onLeave();
  };

  private readonly onSubmit = (event: SubmitEvent): void => {
    event.preventDefault();
    const { check } = this;
    const said = (name: string): string =>
      this.renderRoot.querySelector<HTMLInputElement>(`[name=${name}]`)?.value.trim() ?? '';
    const given = { by: said('by'), why: said('why') };
    this.missing = given.by === '' ? 'by' : given.why === '' ? 'why' : undefined;
    if (this.missing !== undefined) {
      this.renderRoot.querySelector<HTMLInputElement>(`[name=${this.missing}]`)?.focus();
      return;
    }
    keepSetting(nameSetting, given.by);
    if (check !== undefined) this.decide(check, given);
  };

  private async decide({ name }: ToldCheck, given?: Pick<PassedStop, 'by' | 'why'>): Promise<void> {
    this.asking = false;
    send(this, 'stop-decided', { option: this.option, check: name, ...(given && { given }) });
    await this.updateComplete;
    // What was pressed is gone; what takes it back stands in its place.
    this.renderRoot.querySelector('button')?.focus();
  }
}

const missingWords = { by: 'Say who goes ahead.', why: 'Say why it is right to go ahead.' };

function passWords({ by, why, at }: PassedStop): string {
  return `${by} went ahead, ${instantWords(at)}: ${why}`;
}

function lapsedWords({ by, at, said }: PassedStop): string {
  return `${by} went ahead, ${instantWords(at)}, when it said: “${said}”`;
}

declare global {
  interface HTMLElementTagNameMap {
    'stop-pass': StopPass;
  }
}
