import { readSheetValue } from '../template/read-sheet.ts';
import type { SheetFault } from '../template/sheet-fault.ts';
import type { SheetFile } from '../template/sheet-schema.ts';
import type { Edit, SingleEdit } from './edit.ts';
import type { QuoteDocument, SheetHash } from './quote-document.ts';
import type { LogEntry } from './quote-log.ts';
import type { SheetStore } from './sheet-store.ts';

/** Sheet files as parsed JSON, each under its hash. */
export type RawSheets = ReadonlyMap<SheetHash, unknown>;

/** The hashes of every sheet a quote stands on. */
export function pinnedHashes({ sheets, options }: QuoteDocument): ReadonlySet<SheetHash> {
  const { priceList, shop, floor, parts } = sheets;
  return new Set([priceList, shop, floor, ...Object.values(parts), ...options.map((option) => option.system)]);
}

/** The hashes of systems that undo or redo may bring back. */
export function hashesInLog(entries: readonly LogEntry[]): ReadonlySet<SheetHash> {
  const edits = entries.flatMap(({ edit, inverse }) => [edit, inverse].flatMap(singleEdits));
  return new Set(edits.flatMap((edit) => (edit.kind === 'addOption' ? [edit.option.system] : [])));
}

/** A store that also finds the sheets a stored quote was made with; new quotes are made from the same templates as before. */
export function withStoredSheets(
  store: SheetStore,
  stored: RawSheets,
): { readonly store: SheetStore; readonly faults: readonly SheetFault[] } {
  const sheets = new Map<SheetHash, SheetFile>(store.sheets);
  const faults: SheetFault[] = [];
  for (const [hash, value] of stored) {
    if (sheets.has(hash)) continue;
    const { sheet, faults: own } = readSheetValue(value);
    faults.push(...own);
    if (sheet !== undefined) sheets.set(hash, sheet);
  }
  return { store: { ...store, sheets }, faults };
}

function singleEdits(edit: Edit): readonly SingleEdit[] {
  return edit.kind === 'several' ? edit.edits : [edit];
}
