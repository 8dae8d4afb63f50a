import { cellName } from '../../../formula/cell-name.ts';
import type { ShownField } from '../../parts/shown-field.ts';
import type { EntryDetail } from '../../parts/typed-entry.ts';
import type { ShownTable } from '../sheet/shown-table.ts';
import type { UnreadText } from './grid-cell.ts';
import { type CellEdit, commitOf, draftOf } from './grid-edit.ts';
import { type GridPlace, isSamePlace } from './grid-keys.ts';

/** A text that could not be taken, over what stands in its cell. */
interface KeptText extends UnreadText {
  readonly over: string;
}

/** Half-typed text of a grid: the cell that is edited, and the texts that could not be taken. */
export class GridEditor {
  private current: CellEdit | undefined;
  private texts: ReadonlyMap<string, KeptText> = new Map();
  /** The last text that was read and sent upward: it comes back into its cell when it is refused. */
  private offered: { readonly key: string; readonly text: string; readonly over: string } | undefined;
  private table = '';
  private refusals: ReadonlyMap<string, string> = new Map();
  private readonly changed: () => void;
  private readonly entered: (place: GridPlace, detail: EntryDetail) => void;
  private readonly gaveUp: () => void;

  /** `gaveUp` is called when what was refused is dropped. */
  constructor(changed: () => void, entered: (place: GridPlace, detail: EntryDetail) => void, gaveUp: () => void) {
    this.changed = changed;
    this.entered = entered;
    this.gaveUp = gaveUp;
  }

  get edit(): CellEdit | undefined {
    return this.current;
  }

  /** Texts that could not be taken, by `table.row.column`. */
  get unread(): ReadonlyMap<string, UnreadText> {
    return this.texts;
  }

  unreadAt(place: GridPlace): UnreadText | undefined {
    return this.texts.get(this.nameOf(place));
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
  finish(field: ShownField | undefined): boolean {
    const { current: edit } = this;
    this.stop();
    if (edit === undefined || field === undefined) return true;
    const key = this.nameOf(edit.place);
    const commit = commitOf(edit, field, this.texts.get(key));
    switch (commit.kind) {
      case 'unchanged':
        return !this.texts.has(key);
      case 'fault':
        this.note(key, { ...commit.unread, over: standing(field) });
        return false;
      case 'entered':
        this.note(key, undefined);
        // A refused choice goes back to the one in force: its code is no text that somebody typed.
        this.offered = field.kind === 'choice' ? undefined : { key, text: edit.draft, over: standing(field) };
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
    const key = this.nameOf(place);
    this.note(key, undefined);
    if (this.refusals.has(key)) this.gaveUp();
  }

  reset(): void {
    this.current = undefined;
    this.offered = undefined;
    this.texts = new Map();
  }

  /**
   * Follows what stands in the table and what was refused of it, by `table.row.column`. A refused text stays at its cell;
   * a text over a value that is another now, as after Undo, no longer hides it.
   */
  follow(table: ShownTable, refusals: ReadonlyMap<string, string>): void {
    this.table = table.name;
    this.dropOutdated(table);
    if (refusals === this.refusals) return;
    this.refusals = refusals;
    const { offered } = this;
    const reason = offered && refusals.get(offered.key);
    if (offered !== undefined && reason !== undefined) this.note(offered.key, { ...offered, reason });
  }

  private dropOutdated(table: ShownTable): void {
    const { offered, texts, current } = this;
    if (offered === undefined && texts.size === 0) return;
    const values = new Map(
      table.rows.flatMap((row) =>
        row.fields.map((field) => [cellName(table.name, row.id, field.name), standing(field)] as const),
      ),
    );
    if (offered !== undefined && values.get(offered.key) !== offered.over) this.offered = undefined;
    const edited = current && this.nameOf(current.place);
    for (const [key, { over }] of texts) if (key !== edited && values.get(key) !== over) this.note(key, undefined);
  }

  private nameOf({ row, column }: GridPlace): string {
    return cellName(this.table, row, column);
  }

  private note(key: string, text: KeptText | undefined): void {
    const texts = new Map(this.texts);
    if (text === undefined) texts.delete(key);
    else texts.set(key, text);
    this.texts = texts;
    this.changed();
  }
}

/** What an editor of the cell would begin with, which tells whether its value is another. */
function standing(field: ShownField): string {
  return draftOf(field, undefined);
}
