import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { KeptByCells } from '../../../quote/kept-by-cells.ts';
import type { OptionResults } from '../../../quote/option-results.ts';
import { isHeldBack } from '../../../quote/told-checks.ts';
import type { Measures } from '../../../units/measures.ts';
import { notYet, shownResult, wholePrice } from '../../parts/line-words.ts';
import type { NamedResults } from '../../parts/named-results.ts';

const figures = ['price_per_sqft', 'gross_margin', 'net_margin', 'paid_hours'] as const;
const keptFigures = new KeptByCells<readonly string[]>();

/** The results an owner never loses sight of: price, price by the area, gross, net and paid hours of each option. */
@customElement('result-bar')
export class ResultBar extends LitElement {
  static override styles = css`
    :host {
      position: fixed;
      inset: auto 0 0;
      z-index: 1;
      display: flex;
      justify-content: center;
      flex-wrap: wrap;
      gap: 0 3rem;
      padding: 0.5rem 1rem;
      background: var(--paper);
      border-top: 1px solid var(--rule);
    }

    div {
      white-space: nowrap;
      overflow: hidden;
      text-overflow: ellipsis;
    }

    strong {
      color: var(--resin);
      font-size: var(--large);
    }

    .held strong {
      color: var(--ink-light);
    }

    .mark {
      color: var(--stop);
      font-weight: 600;
    }

    @media (max-width: 52rem) {
      :host {
        display: none;
      }
    }
  `;

  @property({ attribute: false }) options: readonly NamedResults[] = [];
  @property() measures: Measures = 'us';

  override render(): TemplateResult {
    return html`${this.options.map((option) => this.option(option))}`;
  }

  private option({ title, results }: NamedResults): unknown {
    const [held, price, told] = [isHeldBack(results), wholePrice(results), figuresOf(results, this.measures)];
    return guard([title, held, price, told], () => this.figures(title, held, price, told));
  }

  private figures(
    title: string,
    held: boolean,
    price: string,
    [perFoot, gross, net, paid]: readonly string[],
  ): TemplateResult {
    return html`<div class=${held ? 'held' : ''}>
        ${title} <strong>${price}</strong> ${held ? html`<span class="mark">${notYet}</span> ` : nothing}· ${perFoot} · gross ${gross} · net ${net} · ${paid} paid
      </div>`;
  }
}

function figuresOf(results: OptionResults, measures: Measures): readonly string[] {
  return keptFigures.of(results, measures, [], () => figures.map((name) => shownResult(results, name, measures)));
}

declare global {
  interface HTMLElementTagNameMap {
    'result-bar': ResultBar;
  }
}
