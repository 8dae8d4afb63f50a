import { readFileSync } from 'node:fs';
import { type ReadProducts, readProducts } from '../../src/pricelist/read-products.ts';
import { compileStack } from '../../src/template/compile.ts';
import { composeSheet } from '../../src/template/compose.ts';
import { readJson } from '../../src/template/sheet-limits.ts';
import type { SheetFile } from '../../src/template/sheet-schema.ts';
import { type LibraryResult, libraryOf } from '../../src/template/template-library.ts';
import { repository, repositoryFiles } from './repository-files.ts';

const read = (path: string): string => readFileSync(`${repository}/${path}`, 'utf8');

/** Paths of every template file, such as `templates/parts/coats/template.json`. */
export const templatePaths: readonly string[] = repositoryFiles().filter((path) =>
  /^templates\/[^/]+\/[^/]+\/template\.json$/.test(path),
);

export function shippedLibrary(): LibraryResult {
  const files = templatePaths.map((path): [string, unknown] => {
    const json = readJson(read(path));
    if (json.kind === 'fault') throw new Error(`${path}: ${json.reason}`);
    return [path, json.value];
  });
  return libraryOf(new Map(files));
}

/** The products beside a shipped price list. */
export function shippedProducts(priceList: SheetFile): ReadProducts {
  const { stack } = compileStack([composeSheet(priceList, new Map()).sheet]);
  const csv = read(`templates/pricelist/${priceList.id}/products.csv`);
  return readProducts(csv, [...stack.products.fields.values()], stack.products.kinds.keys());
}
