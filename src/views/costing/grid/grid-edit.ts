import type { ShownField } from '../../parts/shown-field.ts';
import { type EntryDetail, readEntry, readWords } from '../../parts/typed-entry.ts';
import type { UnreadText } from './grid-cell.ts';
import type { GridPlace, PressedKey } from './grid-keys.ts';

/** A cell that is being edited. */
export interface CellEdit {
  readonly place: GridPlace;
  readonly draft: string;
}

/** What a key does in a cell that nobody edits. */
export type CellAction =
  | { readonly kind: 'edit' }
  /** Begins to edit with this text in the place of what stands. */
  | { readonly kind: 'type'; readonly text: string }
  | { readonly kind: 'toggle' }
  | { readonly kind: 'ask why' }
  /** Back to our standard, or to the formula. */
  | { readonly kind: 'go back' }
  /** Drops a text that could not be taken. */
  | { readonly kind: 'drop' }
  /** Keeps the page from scrolling. */
  | { readonly kind: 'stay' };

export type Commit =
  | { readonly kind: 'unchanged' }
  | { readonly kind: 'fault'; readonly unread: UnreadText }
  | { readonly kind: 'entered'; readonly detail: EntryDetail };

/** Whether it is typed: a number, or words. */
function isTyped(kind: ShownField['kind']): boolean {
  return kind === 'number' || kind === 'words';
}

/** Whether a cell takes an entry: one that is typed, chosen or ticked. */
export function isEntry({ kind }: ShownField): boolean {
  return kind === 'yesNo' || isTyped(kind) || kind === 'choice';
}

export function actionAfterKey(pressed: PressedKey, field: ShownField): CellAction | undefined {
  if (pressed.ctrlKey || pressed.metaKey) return undefined;
  if (pressed.altKey) return pressed.key === 'ArrowDown' && field.kind === 'choice' ? { kind: 'edit' } : undefined;
  switch (pressed.key) {
    case 'Enter':
      return actionOfEnter(field);
    case 'F2':
      return isTyped(field.kind) || field.kind === 'choice' || mayRetype(field) ? { kind: 'edit' } : undefined;
    case 'Delete':
      return { kind: 'go back' };
    case 'Escape':
      return { kind: 'drop' };
    case 'Backspace':
      return isTyped(field.kind) ? { kind: 'type', text: '' } : undefined;
    case ' ':
      return field.kind === 'yesNo' ? undefined : { kind: 'stay' };
    default:
      return pressed.key.length === 1 ? actionOfCharacter(pressed.key, field) : undefined;
  }
}

function actionOfEnter(field: ShownField): CellAction {
  if (field.kind === 'yesNo') return { kind: 'toggle' };
  return isEntry(field) ? { kind: 'edit' } : { kind: 'ask why' };
}

function actionOfCharacter(text: string, field: ShownField): CellAction | undefined {
  if (isTyped(field.kind)) return { kind: 'type', text };
  return field.kind === 'choice' ? { kind: 'edit' } : undefined;
}

/** A result that a number was typed over already; the first time is asked for in the sentence under the grid. */
function mayRetype(field: ShownField): boolean {
  return field.typeOver !== 'never' && field.standing === 'departed';
}

/** What a cell's editor begins with. */
export function draftOf(field: ShownField, unread: UnreadText | undefined): string {
  return unread?.text ?? (field.kind === 'choice' ? field.chosen : field.typed);
}

/** Reads what an edit leaves in a cell. */
export function commitOf({ draft }: CellEdit, field: ShownField, unread: UnreadText | undefined): Commit {
  if (draft === draftOf(field, unread)) return { kind: 'unchanged' };
  if (field.kind === 'choice') return { kind: 'entered', detail: { value: draft } };
  const read = field.kind === 'words' ? readWords(draft) : readEntry(draft, field.unit, field.measures);
  if (read.kind === 'fault') return { kind: 'fault', unread: { text: draft, reason: read.reason } };
  return {
    kind: 'entered',
    detail: field.typeOver === 'departure' ? { ...read.detail, instead: true } : read.detail,
  };
}

/** How the text of an edit is understood, where it may be read in two ways. */
export function echoOf(edit: CellEdit | undefined, field: ShownField): string {
  if (edit === undefined || field.kind === 'choice' || field.kind === 'words') return '';
  const read = readEntry(edit.draft, field.unit, field.measures);
  return read.kind === 'entry' ? read.echo : '';
}
