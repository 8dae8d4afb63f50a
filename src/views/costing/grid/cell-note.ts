import { html, nothing, type TemplateResult } from 'lit';
import type { ShownField } from '../../parts/shown-field.ts';
import { backWords, boundsWords, mayGoBack, standingWords, typedWords } from '../sheet/standing-words.ts';

/** What the sentence under a grid offers for the cell that has focus. */
export interface NoteActions {
  readonly back: () => void;
  readonly typeOver: () => void;
  /** The other answer where yes or no was worked out. */
  readonly answer: (value: 1 | 0) => void;
  readonly askWhy: () => void;
}

/** The sentence about a cell: how it stands, where it comes from, what is usual, what may be entered, the way back. */
export function cellNote(field: ShownField, label: string, echo: string, on: NoteActions): TemplateResult {
  const standing = [standingWords(field), typedWords(field)].filter((text) => text !== '').join(', ');
  const source = field.source === '' ? '' : `From: ${field.source}.`;
  return html`
    <p>
      <strong>${label}</strong>: ${standing}. ${source} ${boundsWords(field)}
      ${echo === '' ? nothing : html`<span class="echo">${echo}</span>`}
    </p>
    ${mayGoBack(field) ? button(capital(backWords(field)), on.back) : nothing}
    ${overrule(field, on)}
    ${field.cell === undefined ? nothing : button('Why', on.askWhy)}
  `;
}

function overrule(field: ShownField, on: NoteActions): TemplateResult | typeof nothing {
  if (field.typeOver === 'never' || (field.kind !== 'result' && field.standing === 'departed')) return nothing;
  if (field.typeOver !== 'answer')
    return button(field.standing === 'departed' ? 'Type another' : 'Type over it', on.typeOver);
  const isYes = field.typed === '1';
  return button(isYes ? 'Say no instead' : 'Say yes instead', () => on.answer(isYes ? 0 : 1));
}

function button(words: string, act: () => void): TemplateResult {
  return html`<button class="quiet" type="button" @click=${act}>${words}</button>`;
}

function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}
