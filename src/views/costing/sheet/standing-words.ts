import { notSaid } from '../../../template/written-text.ts';
import type { ShownField } from '../../parts/shown-field.ts';

/** How a value stands beside our standard: “changed from our 5 %”, “typed over the formula”. */
export function standingWords(field: ShownField): string {
  switch (field.standing) {
    case 'changed':
      if (isNewWords(field)) return 'written here';
      return field.standard === '' ? 'changed' : `changed from our ${field.standard}`;
    case 'departed':
      return field.worked === '' ? 'typed over the formula' : `typed over the formula, which gives ${field.worked}`;
    case 'unchecked':
      if (field.kind === 'words' && field.shown === '') return notSaid;
      return 'our standard, not checked yet';
    case 'checked':
      return 'our standard, checked';
    case 'worked out':
      return 'worked out';
    case 'constant':
      return 'a constant';
    default:
      return field.standing satisfies never;
  }
}

/** Words where our standard has none. */
function isNewWords({ kind, standard }: ShownField): boolean {
  return kind === 'words' && standard === '';
}

/** Whether there is a way back to what stood before. */
export function mayGoBack({ standing }: ShownField): boolean {
  return standing === 'changed' || standing === 'departed';
}

/** Where the way back leads. */
export function backWords(field: ShownField): string {
  if (field.standing === 'departed') return 'back to the formula';
  if (isNewWords(field)) return `back to ${notSaid}`;
  return field.standard === '' ? 'back' : `back to ${field.standard}`;
}

/** What is usual and what may be entered: “Usually 3 to 8 %, likely 5 %. 0 to 100 % may be entered.” */
export function boundsWords({ range, limits }: ShownField): string {
  const usual = range === '' ? [] : [`Usually ${range}.`];
  const allowed = limits === '' ? [] : [`${limits} may be entered.`];
  return [...usual, ...allowed].join(' ');
}

/** How it was typed, where that says more than the number shown: `22' 6"`. */
export function typedWords({ kind, typed, unit }: ShownField): string {
  return kind === 'number' && unit.text !== 'date' && /[^\d.−-]/.test(typed) ? `typed as ${typed}` : '';
}
