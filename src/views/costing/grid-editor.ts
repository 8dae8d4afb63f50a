import type { EntryDetail } from '../parts/typed-entry.ts';
import type { FieldView } from './field-view.ts';
import type { UnreadText } from './grid-cell.ts';
import { type CellEdit, commitOf, placeKey } from './grid-edit.ts';
import { type GridPlace, isSamePlace } from './grid-keys.ts';

/** Half-typed text of a grid: the cell that is edited, and the texts that could not be taken. */
export class GridEditor {
  private current: CellEdit | undefined;
  private texts: ReadonlyMap<string, UnreadText> = new Map();
  /** The last text that was read and sent upward: it comes back into its cell when it is refused. */
  private offered: { readonly key: string; readonly text: string } | undefined;
  private readonly changed: () => void;
  private readonly entered: (place: GridPlace, detail: EntryDetail) => void;

  constructor(changed: () => void, entered: (place: GridPlace, detail: EntryDetail) => void) {
    this.changed = changed;
    this.entered = entered;
  }

  get edit(): CellEdit | undefined {
    return this.current;
  }

  /** Texts that could not be taken, by `placeKey`. */
  get unread(): ReadonlyMap<string, UnreadText> {
    return this.texts;
  }

  unreadAt(place: GridPlace): UnreadText | undefined {
    return this.texts.get(placeKey(place));
  }

  /** What is being typed at a place, undefined when it is not edited. */
  draftAt(place: GridPlace): string | undefined {
    return this.current !== undefined && isSamePlace(this.current.place, place) ? this.current.draft : undefined;
  }

  begin(place: GridPlace, draft: string): void {
    this.current = { place, draft };
    this.changed();
  }

  /** Takes what was typed and ends; a text that cannot be read stays at its cell. False then. */
  finish(field: FieldView | undefined): boolean {
    const { current: edit } = this;
    this.stop();
    if (edit === undefined || field === undefined) return true;
    const key = placeKey(edit.place);
    const commit = commitOf(edit, field, this.texts.get(key));
    switch (commit.kind) {
      case 'unchanged':
        return !this.texts.has(key);
      case 'fault':
        this.note(key, commit.unread);
        return false;
      case 'entered':
        this.note(key, undefined);
        // A refused choice goes back to the one in force: its code is no text that somebody typed.
        this.offered = field.kind === 'choice' ? undefined : { key, text: edit.draft };
        this.entered(edit.place, commit.detail);
        return true;
      default:
        return commit satisfies never;
    }
  }

  /** Ends without taking anything. */
  stop(): void {
    this.current = undefined;
    this.changed();
  }

  drop(place: GridPlace): void {
    this.note(placeKey(place), undefined);
  }

  reset(): void {
    this.current = undefined;
    this.offered = undefined;
    this.texts = new Map();
  }

  /** Keeps a refused text at its cell. `refusals` are keyed by `table.row.column`. */
  keepRefused(table: string, refusals: ReadonlyMap<string, string>): void {
    const { offered } = this;
    const reason = offered && refusals.get(`${table}.${offered.key}`);
    if (offered !== undefined && reason !== undefined) this.note(offered.key, { text: offered.text, reason });
  }

  private note(key: string, text: UnreadText | undefined): void {
    const texts = new Map(this.texts);
    if (text === undefined) texts.delete(key);
    else texts.set(key, text);
    this.texts = texts;
    this.changed();
  }
}
