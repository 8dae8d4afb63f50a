import { contentHash } from '../../src/quote/canonical-json.ts';
import type { RawSheets } from '../../src/quote/stored-sheets.ts';

/** Sheet files as a store keeps them. */
export async function sheetsByHash(files: Iterable<unknown>): Promise<RawSheets> {
  const hashed = await Promise.all([...files].map(async (file) => [await contentHash(file), file] as const));
  return new Map(hashed);
}
