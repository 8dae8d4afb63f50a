import { type ReadSheet, readSheetValue } from './read-sheet.ts';
import type { SheetFault } from './sheet-fault.ts';
import type { Layer, SheetFile } from './sheet-schema.ts';

/** The sheet files at hand, by layer and id. */
export interface TemplateLibrary {
  readonly priceLists: ReadonlyMap<string, SheetFile>;
  readonly shops: ReadonlyMap<string, SheetFile>;
  readonly floors: ReadonlyMap<string, SheetFile>;
  readonly systems: ReadonlyMap<string, SheetFile>;
  readonly parts: ReadonlyMap<string, SheetFile>;
}

export interface LibraryResult {
  readonly library: TemplateLibrary;
  /** Every file that is a sheet, by its path. */
  readonly sheets: ReadonlyMap<string, SheetFile>;
  readonly faults: readonly SheetFault[];
}

/** Gathers sheet files, given as parsed JSON by their path; two files of one layer with one id are a fault. */
export function libraryOf(
  files: ReadonlyMap<string, unknown>,
  readValue: (value: unknown) => ReadSheet = readSheetValue,
): LibraryResult {
  const byLayer: Record<Layer, Map<string, SheetFile>> = {
    pricelist: new Map(),
    shop: new Map(),
    floor: new Map(),
    system: new Map(),
    part: new Map(),
  };
  const sheets = new Map<string, SheetFile>();
  const faults: SheetFault[] = [];
  for (const [path, value] of files) {
    const read = readValue(value);
    faults.push(...read.faults.map((fault) => ({ ...fault, path: `${path}: ${fault.path}` })));
    if (read.sheet === undefined) continue;
    sheets.set(path, read.sheet);
    const { layer, id } = read.sheet;
    if (byLayer[layer].has(id)) faults.push({ path, reason: `There is another ${layer} sheet “${id}”.` });
    byLayer[layer].set(id, read.sheet);
  }
  const library = {
    priceLists: byLayer.pricelist,
    shops: byLayer.shop,
    floors: byLayer.floor,
    systems: byLayer.system,
    parts: byLayer.part,
  };
  return { library, sheets, faults };
}
