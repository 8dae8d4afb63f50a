import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readProducts } from '../pricelist/read-products.ts';
import { type BuiltSheet, type OfferedSheet, type PinnedSheets, pinSheets } from '../quote/sheet-store.ts';
import { composeSheet } from '../template/compose.ts';
import type { ProductRow } from '../template/entries.ts';
import { productFieldsOf } from '../template/product-fields.ts';
import { readJson } from '../template/sheet-limits.ts';
import { StackCompilers } from '../template/stack-of.ts';

/** What the app is built with: sheets and products, or what is wrong in them. */
export interface ReadShipped {
  /** The price list, shop, floor and parts. */
  readonly under: readonly BuiltSheet[];
  readonly systems: readonly BuiltSheet[];
  readonly offered: readonly OfferedSheet[];
  readonly products: readonly ProductRow[];
  /** Every fault with its file. */
  readonly faults: readonly string[];
  /** The files that were read. */
  readonly paths: readonly string[];
}

const layers = ['pricelist', 'shop', 'floor', 'parts', 'systems'];

/** Reads, checks and hashes every sheet under a folder of templates, compiles every system on them, and reads the price list. */
export async function readShipped(folder: string): Promise<ReadShipped> {
  const faults: string[] = [];
  const paths: string[] = [];
  const read = (path: string): string => {
    paths.push(join(folder, path));
    return readFileSync(join(folder, path), 'utf8');
  };
  const files = new Map<string, unknown>();
  for (const path of sheetPaths(folder)) {
    const json = readJson(read(path));
    if (json.kind === 'fault') faults.push(`${path}: ${json.reason}`);
    else files.set(path, json.value);
  }
  const pinned = await pinSheets(files);
  faults.push(...pinned.faults.map(({ path, reason }) => `${path}: ${reason}`));
  const [priceList] = pinned.store.library.priceLists.values();
  const products = priceList === undefined ? [] : productsOf(priceList.id, pinned, read, faults);
  if (faults.length === 0) faults.push(...faultsOfStacks(pinned));
  const { library, hashOf } = pinned.store;
  const offered = [...library.systems.values()].map(
    ({ id, title, summary }): OfferedSheet => ({ id, title, summary: summary ?? '', hash: hashOf('system', id) ?? '' }),
  );
  const built = [...pinned.raw].map(([hash, value]): BuiltSheet => ({ hash, value }));
  const isSystem = ({ hash }: BuiltSheet): boolean => offered.some((system) => system.hash === hash);
  return {
    under: built.filter((sheet) => !isSystem(sheet)),
    systems: built.filter(isSystem),
    offered,
    products,
    faults,
    paths,
  };
}

function sheetPaths(folder: string): readonly string[] {
  return layers.flatMap((layer) =>
    readdirSync(join(folder, layer))
      .sort()
      .map((id) => `${layer}/${id}/template.json`)
      .filter((path) => existsSync(join(folder, path))),
  );
}

function productsOf(
  id: string,
  { store: { library } }: PinnedSheets,
  read: (path: string) => string,
  faults: string[],
): readonly ProductRow[] {
  const priceList = library.priceLists.get(id);
  if (priceList === undefined) return [];
  const path = `pricelist/${id}/products.csv`;
  const { kinds, fields } = productFieldsOf(composeSheet(priceList, new Map()).sheet, (at, reason) => {
    faults.push(`pricelist/${id}/template.json: ${at}: ${reason}`);
  });
  const { products, faults: own } = readProducts(read(path), [...fields.values()], kinds.keys());
  for (const { line, column, reason } of own)
    faults.push(`${path}, line ${line}${column === '' ? '' : `, ${column}`}: ${reason}`);
  return [...products.values()];
}

/** Whether every system prices a floor on the first shop, floor and price list. */
function faultsOfStacks({ store: { library } }: PinnedSheets): string[] {
  const [priceList] = library.priceLists.values();
  const [shop] = library.shops.values();
  const [floor] = library.floors.values();
  if (!priceList || !shop || !floor)
    return ['A price list, a shop and a floor are wanted, each in a folder of its own.'];
  const compilers = new StackCompilers();
  return [...library.systems.values()].flatMap((system) =>
    compilers
      .stackOf({ priceList, shop, floor, system }, library.parts)
      .faults.map(({ path, reason }) => (path === '' ? `${system.id}: ${reason}` : `${path}: ${reason}`)),
  );
}
