import { readdir, readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';

/** Bytes of JavaScript, each file compressed by brotli at its best. */
export interface ScriptSizes {
  /** What the page loads by itself: the scripts it names, and all that those import at once. */
  readonly first: number;
  /** That and what is loaded when it is first wanted. */
  readonly all: number;
}

/** How much JavaScript a built app has. */
export async function scriptSizes(folder: string): Promise<ScriptSizes> {
  const scripts = await scriptsIn(folder);
  return { first: await firstScriptSize(folder, scripts), all: sizeOf(scripts.keys(), scripts) };
}

/** How much of it the page loads by itself. */
export async function firstScriptSize(folder: string, scripts?: ReadonlyMap<string, Buffer>): Promise<number> {
  const known = scripts ?? (await scriptsIn(folder));
  const first = firstScripts(await readFile(join(folder, 'index.html'), 'utf8'), known);
  if (first.size === 0) throw new Error(`The page of ${folder} names no JavaScript`);
  return sizeOf(first, known);
}

async function scriptsIn(folder: string): Promise<ReadonlyMap<string, Buffer>> {
  const names = await readdir(folder, { recursive: true });
  const scripts = new Map<string, Buffer>();
  for (const name of names) if (name.endsWith('.js')) scripts.set(basename(name), await readFile(join(folder, name)));
  return scripts;
}

function sizeOf(names: Iterable<string>, scripts: ReadonlyMap<string, Buffer>): number {
  return [...names].reduce((sum, name) => sum + brotliCompressSync(scripts.get(name) ?? Buffer.alloc(0)).length, 0);
}

function firstScripts(page: string, scripts: ReadonlyMap<string, Buffer>): Set<string> {
  const found = new Set<string>();
  const waiting = [...page.matchAll(/(?:src|href)="[^"]*?([^"/]+\.js)"/g)].map(([, name]) => name ?? '');
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    const script = scripts.get(name);
    if (script === undefined || found.has(name)) continue;
    found.add(name);
    // What is imported when it is wanted stands in brackets: import("./…").
    for (const [, imported] of script.toString().matchAll(/(?:from|import)\s*["']\.\/([^"']+\.js)["']/g))
      waiting.push(imported ?? '');
  }
  return found;
}
