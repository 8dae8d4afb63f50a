import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { mostOptions } from '../quote/quote-document.ts';
import { readSheet } from '../template/read-sheet.ts';
import { readJson } from '../template/sheet-limits.ts';
import type { SheetFile } from '../template/sheet-schema.ts';
import { libraryOf, type TemplateLibrary } from '../template/template-library.ts';
import { nearestWord } from '../units/nearest-word.ts';
import { messages } from './messages.ts';

/** The templates that come with the program. */
export interface ShippedTemplates {
  readonly library: TemplateLibrary;
  /** The demo's products, as CSV. */
  readonly products: NamedText;
  readonly faults: readonly string[];
}

/** A text and what to call it when something in it is wrong. */
export interface NamedText {
  readonly name: string;
  readonly text: string;
}

export interface NamedSystem {
  readonly name: string;
  readonly sheet: SheetFile;
}

const templates = fileURLToPath(new URL('../../templates/', import.meta.url));
const folders = ['pricelist', 'shop', 'floor', 'parts', 'systems'];
const productsPath = 'pricelist/demo/products.csv';

/** Reads every template folder, wherever the program was started from. */
export function loadTemplates(): ShippedTemplates {
  const faults: string[] = [];
  const files = new Map<string, unknown>();
  for (const folder of folders) {
    for (const id of readdirSync(join(templates, folder)).sort()) {
      const path = `${folder}/${id}/template.json`;
      if (!existsSync(join(templates, path))) continue;
      const json = readJson(readFileSync(join(templates, path), 'utf8'));
      if (json.kind === 'fault') faults.push(`templates/${path}: ${json.reason}`);
      else files.set(path, json.value);
    }
  }
  const read = libraryOf(files);
  faults.push(...read.faults.map(({ path, reason }) => `templates/${path}: ${reason}`));
  const text = readFileSync(join(templates, productsPath), 'utf8');
  return { library: read.library, products: { name: `templates/${productsPath}`, text }, faults };
}

/** A file's text, or the reason why there is none as a fault. */
export function readTextFile(path: string, faults: string[]): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    // What the system says of a path someone typed is theirs to mend; anything else is a bug.
    if (!(error instanceof Error) || !('code' in error)) throw error;
    faults.push(error.code === 'ENOENT' ? messages.noFile(path) : messages.unreadable(path, String(error.code)));
    return undefined;
  }
}

/** The systems that are named by id or by path, each once. */
export function findSystems(wanted: readonly string[], library: TemplateLibrary, faults: string[]): NamedSystem[] {
  if (wanted.length > mostOptions) faults.push(messages.tooManySystems(mostOptions));
  const found: NamedSystem[] = [];
  for (const name of wanted) {
    const sheet = isPath(name) ? systemInFile(name, faults) : systemById(name, library, faults);
    if (sheet === undefined) continue;
    if (found.some((other) => other.sheet.id === sheet.id)) faults.push(messages.systemTwice(sheet.id));
    else if (['shop', 'floor'].includes(sheet.id)) faults.push(`${name}: ${messages.systemName(sheet.id)}`);
    else found.push({ name, sheet });
  }
  return found;
}

export interface JudgingSystems {
  readonly systems: readonly NamedSystem[];
  /** Whether one of them stands for each that is named. */
  readonly complete: boolean;
}

/**
 * Systems by which values are judged: those found, and for an id that is not there the shipped one nearest to it. The
 * first shipped one when that leaves none.
 */
export function systemsToJudgeBy(
  found: readonly NamedSystem[],
  wanted: readonly string[],
  library: TemplateLibrary,
): JudgingSystems {
  const ids = [...library.systems.keys()];
  const near = wanted.flatMap((name) => {
    if (found.some((system) => system.name === name)) return [];
    return [isPath(name) ? undefined : nearestWord(name, ids)];
  });
  const wantedIds = new Set([...found.map(({ sheet }) => sheet.id), ...near.flatMap((id) => id ?? [])]);
  const others = wantedIds.size === 0 ? ids.slice(0, 1) : [...wantedIds].slice(found.length);
  const standing = others.flatMap((id): NamedSystem[] => {
    const sheet = library.systems.get(id);
    return sheet === undefined ? [] : [{ name: id, sheet }];
  });
  const complete = wanted.length > 0 && !near.includes(undefined);
  return { systems: [...found, ...standing].slice(0, mostOptions), complete };
}

function isPath(name: string): boolean {
  return name.endsWith('.json') || /[/\\]/.test(name);
}

function systemById(id: string, library: TemplateLibrary, faults: string[]): SheetFile | undefined {
  const sheet = library.systems.get(id);
  const ids = [...library.systems.keys()];
  if (sheet === undefined) faults.push(messages.unknownSystem(id, nearestWord(id, ids), ids));
  return sheet;
}

function systemInFile(path: string, faults: string[]): SheetFile | undefined {
  const text = readTextFile(path, faults);
  if (text === undefined) return undefined;
  const { sheet, faults: own } = readSheet(text.replace(/^\uFEFF/, ''));
  faults.push(...own.map((fault) => `${path}: ${fault.path === '' ? '' : `${fault.path}: `}${fault.reason}`));
  if (sheet === undefined || sheet.layer === 'system') return own.length > 0 ? undefined : sheet;
  faults.push(`${path}: ${messages.notASystem(sheet.layer)}`);
  return undefined;
}
