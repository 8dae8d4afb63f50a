import { css, html, nothing, type TemplateResult } from 'lit';
import { lengthScale } from '../../units/feet-inches.ts';
import { type Measures, unitIn } from '../../units/measures.ts';
import type { Unit } from '../../units/unit.ts';

interface Sign {
  readonly text: string;
  readonly name: string;
}

const feetAndInches: readonly Sign[] = [
  { text: '′', name: 'feet' },
  { text: '″', name: 'inches' },
];
const arithmetic: readonly Sign[] = [
  { text: '/', name: 'divided by' },
  { text: '+', name: 'plus' },
  { text: '×', name: 'times' },
];

/** The signs that a phone's number pad lacks and a field of this unit reads. */
function signsFor(unit: Unit, measures: Measures): readonly Sign[] {
  if (unit.text === 'date') return [];
  return lengthScale(unitIn(unit, measures)) === undefined ? arithmetic : [...feetAndInches, ...arithmetic];
}

/** A row of keys beside a field that has focus, on devices that are touched; a key leaves the focus in the field. */
export function signKeys(
  unit: Unit,
  measures: Measures,
  type: (sign: string) => void,
): TemplateResult | typeof nothing {
  const signs = signsFor(unit, measures);
  if (signs.length === 0) return nothing;
  return html`<div class="signs" role="group" aria-label="Signs">
    ${signs.map(
      ({ text, name }) => html`<button
        type="button"
        tabindex="-1"
        aria-label=${name}
        @pointerdown=${(event: Event) => event.preventDefault()}
        @mousedown=${(event: Event) => event.preventDefault()}
        @click=${() => type(text)}
      >
        ${text}
      </button>`,
    )}
  </div>`;
}

/**
 * Writes a sign where the caret stands, as if it were typed. Where all of the text is selected, as when a field has just
 * got focus, the sign goes behind it: `24` becomes `24′`.
 */
export function insertAtCaret(input: HTMLInputElement, sign: string): void {
  const { length } = input.value;
  const to = input.selectionEnd ?? length;
  const isWhole = input.selectionStart === 0 && to === length;
  input.setRangeText(sign, isWhole ? length : (input.selectionStart ?? length), to, 'end');
  input.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
}

export const signKeysStyles = css`
  .signs {
    display: none;
    gap: 0.25rem;
  }

  .signs button {
    min-width: 2.75rem;
    min-height: 2.75rem;
    border: 1px solid var(--rule);
    border-radius: 4px;
    background: var(--concrete);
    font-size: var(--large);
  }

  @media (pointer: coarse) {
    .signs {
      display: flex;
    }
  }
`;
