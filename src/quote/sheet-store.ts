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

/** Sheet files that were read and hashed. */
export interface PinnedSheets {
  readonly store: SheetStore;
  /** The parsed JSON of every sheet, under its hash. */
  readonly raw: ReadonlyMap<SheetHash, unknown>;
  /** Faults of the files' shape. */
  readonly faults: readonly SheetFault[];
}

/** Reads and hashes sheet files, given as parsed JSON by their path; each is read once and hashed once. */
export async function pinSheets(files: ReadonlyMap<string, unknown>): Promise<PinnedSheets> {
  const { library, sheets: read, faults } = libraryOf(files);
  const sheets = new Map<SheetHash, SheetFile>();
  const raw = new Map<SheetHash, unknown>();
  const hashes = new Map<string, SheetHash>();
  for (const [path, sheet] of read) {
    const value = files.get(path);
    const hash = await contentHash(value);
    sheets.set(hash, sheet);
    raw.set(hash, value);
    hashes.set(`${sheet.layer} ${sheet.id}`, hash);
  }
  return { store: { sheets, library, hashOf: (layer, id) => hashes.get(`${layer} ${id}`) }, raw, faults };
}
