import { readSheetValue } from '../template/read-sheet.ts';
import type { SheetFault } from '../template/sheet-fault.ts';
import type { Layer, SheetFile } from '../template/sheet-schema.ts';
import { libraryOf, type TemplateLibrary } from '../template/template-library.ts';
import { contentHash } from './canonical-json.ts';
import type { SheetHash } from './quote-document.ts';

/** Sheets that quotes pin, each under the SHA-256 of its canonical JSON; a sheet never changes under its hash. */
export interface SheetStore {
  readonly sheets: ReadonlyMap<SheetHash, SheetFile>;
  /** The templates a new quote may be made from, and the hash of each. */
  readonly library: TemplateLibrary;
  hashOf(layer: Layer, id: string): SheetHash | undefined;
}

/** Hashes sheet files given as parsed JSON by their path. Faults of the files' shape come along. */
export async function pinSheets(
  files: ReadonlyMap<string, unknown>,
): Promise<{ readonly store: SheetStore; readonly faults: readonly SheetFault[] }> {
  const { library, faults } = libraryOf(files);
  const sheets = new Map<SheetHash, SheetFile>();
  const hashes = new Map<string, SheetHash>();
  for (const value of files.values()) {
    const { sheet } = readSheetValue(value);
    if (sheet === undefined) continue;
    const hash = await contentHash(value);
    sheets.set(hash, sheet);
    hashes.set(`${sheet.layer} ${sheet.id}`, hash);
  }
  return { store: { sheets, library, hashOf: (layer, id) => hashes.get(`${layer} ${id}`) }, faults };
}
