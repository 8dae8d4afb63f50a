import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Measures } from '../../../units/measures.ts';
import { shownLine } from '../../parts/line-words.ts';
import type { NamedResults } from '../../parts/named-results.ts';
import { sharedStyles } from '../../parts/shared.styles.ts';
import { dayTableStyles } from '../day-face.styles.ts';
import { chooserStyles } from './chooser.styles.ts';
import { worth } from './worth-words.ts';

/** What two options of a quote are worth to the firm, with the calendar full and with it empty. */
@customElement('option-worth')
export class OptionWorth extends LitElement {
  static override styles = [sharedStyles, dayTableStyles, chooserStyles];

  @property({ attribute: false }) options: readonly NamedResults[] = [];
  @property() measures: Measures = 'us';

  @state() private first = '';
  @state() private second = '';

  override render(): TemplateResult {
    const { options } = this;
    const first = options.find(({ id }) => id === this.first) ?? options[0];
    const second =
      options.find(({ id }) => id === this.second && id !== first?.id) ?? options.find(({ id }) => id !== first?.id);
    return html`<section aria-label="What they are worth">
      <h2>What they are worth</h2>
      ${
        first === undefined || second === undefined
          ? html`<p>Choose a second system on the Price face: then it says which of the two earns more, with the calendar full and with it empty.</p>`
          : this.compared(first, second)
      }
    </section>`;
  }

  private compared(first: NamedResults, second: NamedResults): TemplateResult {
    const view = worth(first, second);
    const area = shownLine(first.results, 'floor_area', this.measures);
    return html`${this.options.length > 2 ? this.chooser(first, second) : nothing}
      ${
        view.kind === 'incomplete'
          ? html`<p>${view.words}</p>`
          : html`<p>${view.full}</p>
            <p>${view.empty}</p>
            <p class="light">What a job earns is counted after commission and fees and before overhead.</p>
            <table>
              <caption class="hidden">What they are worth on ${area}</caption>
              <thead>
                <tr>
                  <th scope="col" class="words">On ${area}</th>
                  <th scope="col">${first.title}</th>
                  <th scope="col">${second.title}</th>
                </tr>
              </thead>
              <tbody>
                ${view.rows.map(
                  (row) => html`<tr>
                    <th scope="row" class="words">${row.label}</th>
                    <td>${row.first}</td>
                    <td>${row.second}</td>
                  </tr>`,
                )}
              </tbody>
            </table>`
      }`;
  }

  private chooser(first: NamedResults, second: NamedResults): TemplateResult {
    const choice = (label: string, chosen: string, offered: readonly NamedResults[], take: (id: string) => void) =>
      html`<label
        >${label}
        <select @change=${(event: Event) => event.target instanceof HTMLSelectElement && take(event.target.value)}>
          ${offered.map(({ id, title }) => html`<option value=${id} ?selected=${id === chosen}>${title}</option>`)}
        </select></label
      >`;
    const others = this.options.filter(({ id }) => id !== first.id);
    return html`<div class="choices">
      ${choice('Compare', first.id, this.options, (id) => {
        this.first = id;
      })}
      ${choice('with', second.id, others, (id) => {
        this.second = id;
      })}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'option-worth': OptionWorth;
  }
}
