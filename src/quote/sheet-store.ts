import { readBuiltSheet } from '../template/read-sheet.ts';
import type { SheetFault } from '../template/sheet-fault.ts';
import type { Layer, SheetFile } from '../template/sheet-schema.ts';
import { type LibraryResult, libraryOf, type TemplateLibrary } from '../template/template-library.ts';
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

/** A sheet that was read, checked and hashed when the app was built. */
export interface BuiltSheet {
  readonly hash: SheetHash;
  /** Its parsed JSON. */
  readonly value: unknown;
}

/** What a new quote may be made of, without its sheet. */
export interface OfferedSheet {
  readonly id: string;
  readonly title: string;
  readonly summary: string;
  readonly hash: SheetHash;
}

/** The sheets that come with the app. Systems come when one is wanted. */
export interface ShippedSheets {
  /** The price list, shop, floor and parts: what lies under every system. */
  readonly under: PinnedSheets;
  readonly systems: readonly OfferedSheet[];
  /** Those under them and every system. Rejects where they cannot be fetched. */
  readonly whole: () => Promise<PinnedSheets>;
}

/** Reads and hashes sheet files, given as parsed JSON by their path; each is read once and hashed once. */
export async function pinSheets(files: ReadonlyMap<string, unknown>): Promise<PinnedSheets> {
  const read = libraryOf(files);
  const hashes = new Map<string, SheetHash>();
  for (const path of read.sheets.keys()) hashes.set(path, await contentHash(files.get(path)));
  return pinned(read, files, (path) => hashes.get(path) ?? '');
}

/** The same for sheets that were checked and hashed when the app was built. */
export function pinBuilt(built: readonly BuiltSheet[]): PinnedSheets {
  const values = new Map(built.map(({ hash, value }) => [hash, value]));
  return pinned(libraryOf(values, readBuiltSheet), values, (hash) => hash);
}

function pinned(
  { library, sheets: read, faults }: LibraryResult,
  files: ReadonlyMap<string, unknown>,
  hashAt: (path: string) => SheetHash,
): PinnedSheets {
  const sheets = new Map<SheetHash, SheetFile>();
  const raw = new Map<SheetHash, unknown>();
  const hashes = new Map<string, SheetHash>();
  for (const [path, sheet] of read) {
    const hash = hashAt(path);
    sheets.set(hash, sheet);
    raw.set(hash, files.get(path));
    hashes.set(`${sheet.layer} ${sheet.id}`, hash);
  }
  return { store: { sheets, library, hashOf: (layer, id) => hashes.get(`${layer} ${id}`) }, raw, faults };
}
