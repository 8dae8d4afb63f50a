import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';

/** Bytes of all JavaScript of a built app, each file compressed by brotli at its best. */
export async function scriptSize(folder: string): Promise<number> {
  const names = await readdir(folder, { recursive: true });
  const scripts = names.filter((name) => name.endsWith('.js'));
  if (scripts.length === 0) throw new Error(`There is no JavaScript in ${folder}`);
  const sizes = await Promise.all(
    scripts.map(async (name) => brotliCompressSync(await readFile(join(folder, name))).length),
  );
  return sizes.reduce((sum, size) => sum + size, 0);
}
