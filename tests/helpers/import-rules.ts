import type { Import, ImportGraph } from './import-graph.ts';

/** The folders of src: a row may import the rows above it, and folders of one row never import each other. */
const folderRows: readonly (readonly string[])[] = [
  ['units'],
  ['formula', 'trade'],
  ['template', 'pricelist'],
  ['quote'],
  ['engine', 'storage'],
  ['paper', 'export'],
  ['session'],
  ['views', 'cli', 'build'],
];

/** The folders of src/views in the same way: what screens share, the screens, and what they are shown in. */
const viewRows: readonly (readonly string[])[] = [['parts'], ['price', 'compare', 'costing', 'day'], ['app']];

/** Files that stand beside the folders; they may import any of them. */
const topFiles: readonly string[] = ['main.ts', 'vite.config.ts'];

/** Which places may import a package; a place is a folder, a top file, or a pattern of paths in src. */
const packagePlaces: Readonly<Record<string, readonly (string | RegExp)[]>> = {
  hyperformula: ['engine'],
  zod: ['template', 'quote', /^engine\/[^/]*(worker|message)[^/]*\.ts$/],
  papaparse: ['pricelist', 'export'],
  fflate: ['export', 'paper'],
  idb: ['storage'],
  lit: ['views', 'main.ts'],
  vite: ['vite.config.ts', 'build'],
};

const nodePlaces: readonly string[] = ['cli', 'build', 'vite.config.ts'];

/** Modules that are written when the app is built, and who may import them. */
const builtModules: Readonly<Record<string, readonly string[]>> = { 'virtual:shipped-sheets': ['main.ts'] };

/** Names of the platform that only some places may use. */
const platformPlaces: readonly PlatformRule[] = [
  { what: 'Intl.NumberFormat', pattern: /\bIntl\s*\.\s*NumberFormat\b/, places: ['units'] },
  { what: 'toLocaleString', pattern: /\.toLocaleString\(/, places: ['units'] },
  { what: 'a worker', pattern: /\bnew\s+(Shared)?Worker\b/, places: ['engine'] },
  {
    what: 'browser storage',
    pattern: /\b(indexedDB|localStorage|sessionStorage|showSaveFilePicker|showOpenFilePicker)\b/,
    places: ['storage'],
  },
  {
    what: 'the page',
    pattern: /\b(window|document\.(body|createElement|querySelector|getElementById|addEventListener)|customElements)\b/,
    places: ['views', 'main.ts'],
  },
  {
    what: 'the process',
    pattern: /\bprocess\.(env|argv|exit|exitCode|stdout|stderr|stdin|cwd)\b/,
    places: ['cli', 'vite.config.ts'],
  },
  {
    what: 'clock or chance',
    pattern: /\b(Date\.now|performance\.now|Math\.random|crypto\.(randomUUID|getRandomValues))\b|\bnew Date\(\s*\)/,
    places: ['storage', 'session', 'views', 'cli', 'main.ts'],
  },
];

interface PlatformRule {
  readonly what: string;
  readonly pattern: RegExp;
  readonly places: readonly string[];
}

const vagueFolders = /(^|\/)(utils?|helpers?|commons?|types?|shared|misc|lib)\//;

/** Every import that goes the wrong way, as a sentence each. */
export function importFaults({ imports }: Pick<ImportGraph, 'imports'>): string[] {
  return imports.flatMap((entry) => faultOf(entry) ?? []);
}

function faultOf({ from, to }: Import): string | undefined {
  switch (to.kind) {
    case 'file':
      return directionFault(from, to.path);
    case 'package':
      return mayTouch(from, packagePlaces[to.name] ?? []) ? undefined : `${from} may not import ${to.name}`;
    case 'node':
      return mayTouch(from, nodePlaces) ? undefined : `${from} may not import ${to.name}`;
    case 'missing':
      if (mayTouch(from, builtModules[to.written] ?? [])) return undefined;
      return `${from} imports ${to.written}, which is not there`;
    default:
      return to satisfies never;
  }
}

function directionFault(from: string, to: string): string | undefined {
  const [here, there] = [placeOf(from), placeOf(to)];
  if (here === 'views' && there === 'views') return screenFault(from, to);
  if (topFiles.includes(here) || here === there) return undefined;
  if (!to.startsWith('src/')) return `${from} imports ${to} from outside src`;
  const [own, other] = [rowOf(here, folderRows), rowOf(there, folderRows)];
  if (other === undefined) return `${from} imports ${to}, which is in no folder of the table`;
  return own !== undefined && other < own ? undefined : `${from} may not import ${to}`;
}

/** No screen imports another. */
function screenFault(from: string, to: string): string | undefined {
  const [here, there] = [screenOf(from), screenOf(to)];
  if (here === there) return undefined;
  const [own, other] = [rowOf(here, viewRows), rowOf(there, viewRows)];
  return own !== undefined && other !== undefined && other < own ? undefined : `${from} may not import ${to}`;
}

/** Uses of the platform in a file that has no right to them. Comments do not count. */
export function platformFaults(path: string, text: string): string[] {
  const code = text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '');
  return platformPlaces
    .filter(({ pattern, places }) => pattern.test(code) && !mayTouch(path, places))
    .map(({ what }) => `${path} may not use ${what}`);
}

/** Source files whose place or name is not allowed. */
export function placeFaults(paths: readonly string[]): string[] {
  return paths.flatMap((path) => {
    const place = placeOf(path);
    if (rowOf(place, folderRows) === undefined && !topFiles.includes(place))
      return [`${path} is in no folder of the table`];
    if (place === 'views' && rowOf(screenOf(path), viewRows) === undefined) return [`${path} belongs to no screen`];
    if (vagueFolders.test(path)) return [`${path} is in a folder whose name says nothing`];
    return path.endsWith('/index.ts') ? [`${path} collects exports of other files`] : [];
  });
}

function mayTouch(path: string, places: readonly (string | RegExp)[]): boolean {
  const inSource = path.slice('src/'.length);
  return places.some((place) => (typeof place === 'string' ? placeOf(path) === place : place.test(inSource)));
}

/** The folder of src that a file is in, or its own name when it stands beside the folders. */
function placeOf(path: string): string {
  return path.split('/')[1] ?? path;
}

/** The folder of src/views that a file is in. */
function screenOf(path: string): string {
  return path.split('/')[2] ?? path;
}

function rowOf(place: string, rows: readonly (readonly string[])[]): number | undefined {
  const row = rows.findIndex((folders) => folders.includes(place));
  return row < 0 ? undefined : row;
}
