import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Measures } from '../../../units/measures.ts';
import { LoadedWhenWanted } from '../loaded-when-wanted.ts';
import { NarrowScreen, oneColumn } from '../narrow-screen.ts';
import { sharedStyles } from '../shared.styles.ts';
import type { MeasuredFloor } from './measured-floor.ts';

/**
 * Where the plan of the floor is: open where it pushes no price out of sight, folded on a phone. The plan itself comes when it is first looked
 * at, so that the first price does not wait for it.
 *
 * @fires plan-edit
 */
@customElement('plan-drawer')
export class PlanDrawer extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
        margin: 0.75rem 0;
      }

      .refusal {
        color: var(--stop);
      }
    `,
  ];

  @property({ attribute: false }) floor: MeasuredFloor | undefined;
  @property() measures: Measures = 'us';
  /** Why the last change of the plan was refused. */
  @property() refusal = '';

  @state() private chosen: boolean | undefined;

  private readonly drawing = new LoadedWhenWanted(this, () => import('./floor-plan.ts'));
  private readonly screen = new NarrowScreen(this, oneColumn);

  override render(): TemplateResult | typeof nothing {
    if (this.floor === undefined) return nothing;
    return html`<button class="plain" type="button" aria-expanded=${this.isOpen ? 'true' : 'false'} @click=${this.onToggle}>
        Plan <span aria-hidden="true">${this.isOpen ? '▾' : '▸'}</span>
      </button>
      ${this.isOpen ? this.plan() : nothing}`;
  }

  protected override updated(): void {
    if (this.isOpen && this.floor !== undefined) this.drawing.want();
  }

  private plan(): TemplateResult {
    switch (this.drawing.state) {
      case 'not yet':
      case 'loading':
        return html`<p class="light">Drawing the plan …</p>`;
      case 'failed':
        return html`<p>The plan could not be loaded. <button class="plain" type="button" @click=${this.drawing.load}>Try again</button></p>`;
      case 'ready':
        return html`<floor-plan .floor=${this.floor} .measures=${this.measures}></floor-plan>
          ${this.refusal === '' ? nothing : html`<p class="refusal" role="alert">${this.refusal}</p>`}`;
      default:
        return this.drawing.state satisfies never;
    }
  }

  private get isOpen(): boolean {
    return this.chosen ?? !this.screen.isNarrow;
  }

  private readonly onToggle = (): void => {
    this.chosen = !this.isOpen;
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'plan-drawer': PlanDrawer;
  }
}
