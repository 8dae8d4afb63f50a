import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { ToldCheck } from '../../../quote/told-checks.ts';
import { OutOfSight } from '../out-of-sight.ts';
import { sharedStyles } from '../shared.styles.ts';
import { send } from '../sheet-events.ts';
import './stop-pass.ts';

const words = { stop: 'Stop', caution: 'Caution', note: 'Note' } as const;
const shapes = { stop: '■', caution: '▲', note: '●' } as const;

/**
 * Checks of an option that do not hold: each a sentence with a word and a shape for how grave it is. Stops,
 * then cautions stay in the open; notes fold under a heading that says how many there are.
 *
 * @fires why-asked, stop-decided
 */
@customElement('check-list')
export class CheckList extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
        contain: layout style;
      }

      ul {
        list-style: none;
        margin: 0;
        padding: 0;
      }

      li {
        padding: 0.5rem 0.75rem;
        margin-bottom: 0.25rem;
        border-left: 4px solid var(--rule);
      }

      .stop {
        border-color: var(--stop);
        background: var(--stop-wash);
      }

      .caution {
        border-color: var(--caution);
        background: var(--caution-wash);
      }

      .word {
        font-weight: 600;
      }

      .passed {
        border-color: var(--stop);
      }

      .stop .word {
        color: var(--stop);
      }

      .caution .word {
        color: var(--caution);
      }

      button {
        text-align: left;
      }

      summary {
        min-height: 2.75rem;
        padding: 0.625rem 0.75rem;
        cursor: pointer;
        font-weight: 600;
      }
    `,
  ];

  @property({ attribute: false }) checks: readonly ToldCheck[] = [];
  @property() option = '';

  private readonly sight = new OutOfSight(this, '8rem');

  protected override async scheduleUpdate(): Promise<void> {
    await this.sight.turn();
    super.scheduleUpdate();
  }

  override render(): TemplateResult {
    const notes = this.of('note');
    const grave = [...this.of('stop'), ...this.of('caution')];
    return html`${grave.length === 0 ? html`<p class="light">${noneWords(notes.length)}</p>` : this.list(grave)}
    ${
      notes.length === 0
        ? nothing
        : html`<details>
          <summary>Notes (${notes.length})</summary>
          ${this.list(notes)}
        </details>`
    }`;
  }

  /** In sheet order. */
  private of(grave: ToldCheck['severity']): readonly ToldCheck[] {
    return this.checks.filter(({ severity }) => severity === grave);
  }

  private list(checks: readonly ToldCheck[]): TemplateResult {
    return html`<ul>
      ${repeat(
        checks,
        ({ name }) => name,
        (check) => html`<li class=${check.passed === undefined ? check.severity : 'passed'}>
          <button type="button" @click=${() => send(this, 'why-asked', { cell: check.cell, option: this.option })}>
            <span class="word"><span aria-hidden="true">${shapes[check.severity]}</span> ${check.passed === undefined ? words[check.severity] : 'Stop, passed'}</span>
            ${check.says}
          </button>
          ${check.severity === 'stop' ? html`<stop-pass .check=${check} option=${this.option}></stop-pass>` : nothing}
        </li>`,
      )}
    </ul>`;
  }
}

function noneWords(notes: number): string {
  return notes === 0 ? 'No check is open.' : 'No stop and no caution is open.';
}

declare global {
  interface HTMLElementTagNameMap {
    'check-list': CheckList;
  }
}
