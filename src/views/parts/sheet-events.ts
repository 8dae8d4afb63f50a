import type { EntryDetail } from './typed-entry.ts';

/** Typed events of sheets, from a field up to the face that holds the session. */
export interface LineEntered extends EntryDetail {
  readonly line: string;
}

export interface CellEntered extends EntryDetail {
  readonly table: string;
  readonly row: string;
  readonly column: string;
}

export interface SheetEvents {
  'line-entered': CustomEvent<LineEntered>;
  /** Back to our standard. */
  'line-reset': CustomEvent<{ readonly line: string }>;
  /** Somebody looked at these lines, and our standard is right here. */
  'lines-checked': CustomEvent<{ readonly checked: readonly string[] }>;
  'cell-entered': CustomEvent<CellEntered>;
  'cell-reset': CustomEvent<{ readonly table: string; readonly row: string; readonly column: string }>;
  'row-added': CustomEvent<{ readonly table: string }>;
  'row-removed': CustomEvent<{ readonly table: string; readonly row: string }>;
  /** `to` is the row's new place, counted from 0. */
  'row-moved': CustomEvent<{ readonly table: string; readonly row: string; readonly to: number }>;
  /** Asks why a cell is what it is. */
  'why-asked': CustomEvent<{ readonly cell: number; readonly option?: string }>;
  /** Somebody goes ahead past a stop or, without `given`, lets it stop again. */
  'stop-decided': CustomEvent<{
    readonly option: string;
    readonly check: string;
    readonly given?: { readonly by: string; readonly why: string };
  }>;
}

declare global {
  interface HTMLElementEventMap extends SheetEvents {}
}

/** Sends one of the sheet events upward, through shadow roots. */
export function send<K extends keyof SheetEvents>(from: EventTarget, type: K, detail: SheetEvents[K]['detail']): void {
  from.dispatchEvent(new CustomEvent(type, { detail, bubbles: true, composed: true }));
}
