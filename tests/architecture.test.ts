import { beforeAll, describe, expect, it } from 'vitest';
import { lengthFaults } from './helpers/file-length.ts';
import { type Import, type ImportGraph, readImportGraph } from './helpers/import-graph.ts';
import { importFaults, placeFaults, platformFaults } from './helpers/import-rules.ts';
import { readText, repository, repositoryFiles } from './helpers/repository-files.ts';

/** Files over the soft limit, each with its reason. */
const longFiles: Readonly<Record<string, string>> = {};

const allowedAtTop = ['README.md', 'DEVELOPERS.md', 'package.json', 'package-lock.json', 'tsconfig.json'];
const allowedFoldersAtTop = ['src', 'templates', 'tests', 'docs'];

const files = repositoryFiles();
const sourceFiles = files.filter((path) => /^src\/.*\.ts$/.test(path));
const textOf = (path: string): string => readText(path) ?? '';

describe('the imports of src', () => {
  let graph: ImportGraph;

  beforeAll(async () => {
    graph = await readImportGraph('src', repository);
  });

  it('are all seen: every source file, and some imports', () => {
    expect([...graph.modules].filter((path) => path.endsWith('.ts')).sort()).toEqual([...sourceFiles].sort());
    expect(graph.modules.length).toBeGreaterThanOrEqual(5);
    expect(graph.imports.filter(({ to }) => to.kind === 'file').length).toBeGreaterThan(0);
  });

  it('go up the table of folders only, and packages stay where they belong', () => {
    expect(importFaults(graph)).toEqual([]);
  });

  it('form no circle', () => {
    expect(graph.circles).toEqual([]);
  });
});

describe('the files of src', () => {
  it('stand in the folders of the table, none collecting exports', () => {
    expect(placeFaults(sourceFiles)).toEqual([]);
  });

  it('use clock, page, storage and number formats only where they may', () => {
    expect(sourceFiles.flatMap((path) => platformFaults(path, textOf(path)))).toEqual([]);
  });

  it('stay within 300 lines, as do the tests', () => {
    const code = files.filter((path) => /^(src|tests)\/.*\.(ts|mjs)$/.test(path));
    const lines = new Map(code.map((path) => [path, textOf(path).trimEnd().split('\n').length]));
    expect(lengthFaults(lines, longFiles)).toEqual([]);
  });
});

describe('the repository', () => {
  it('has only the agreed files and folders at its top', () => {
    const strangers = files.filter((path) => {
      const [first = path, ...rest] = path.split('/');
      return !first.startsWith('.') && !(rest.length === 0 ? allowedAtTop : allowedFoldersAtTop).includes(first);
    });
    expect(files.length).toBeGreaterThan(20);
    expect(strangers).toEqual([]);
  });

  it('names no folder of a machine and no package registry', () => {
    // Put together here, so that this file does not name them either.
    const folders = ['work', 'tmp', 'root', 'home'].join('|');
    const machinePlace = new RegExp(`(?<![\\w.)}-])/(${folders})/|\\bregistry\\.(npmjs|yarnpkg|npmmirror)\\b`);
    const places = files.flatMap((path) => {
      const lines = textOf(path).split('\n');
      return lines.flatMap((line, index) => (machinePlace.test(line) ? [`${path}:${index + 1}: ${line.trim()}`] : []));
    });
    expect(places).toEqual([]);
  });
});

describe('the rules themselves find', () => {
  const file = (from: string, path: string): Import => ({ from, to: { kind: 'file', path } });
  const faultsOf = (...imports: Import[]): string[] => importFaults({ imports });

  it('an import down the table, across a row, and out of src', () => {
    expect(faultsOf(file('src/quote/edit.ts', 'src/units/unit.ts'))).toEqual([]);
    expect(faultsOf(file('src/main.ts', 'src/views/app/app-shell.ts'))).toEqual([]);
    expect(faultsOf(file('src/units/unit.ts', 'src/quote/edit.ts'))).toHaveLength(1);
    expect(faultsOf(file('src/trade/stack.ts', 'src/formula/tree.ts'))).toHaveLength(1);
    expect(faultsOf(file('src/quote/edit.ts', 'src/main.ts'))).toHaveLength(1);
    expect(faultsOf(file('src/quote/edit.ts', 'tests/helpers/quote.ts'))).toHaveLength(1);
  });

  it('a screen that imports another, and what all share when it imports a screen', () => {
    expect(faultsOf(file('src/views/day/day-face.ts', 'src/views/parts/day-promise.ts'))).toEqual([]);
    expect(faultsOf(file('src/views/day/day-face.ts', 'src/views/day/strip/strip-chart.ts'))).toEqual([]);
    expect(faultsOf(file('src/views/app/app-shell.ts', 'src/views/day/day-place.ts'))).toEqual([]);
    expect(faultsOf(file('src/views/price/price-face.ts', 'src/views/costing/costing-face.ts'))).toHaveLength(1);
    expect(faultsOf(file('src/views/parts/day-promise.ts', 'src/views/day/day-face.ts'))).toHaveLength(1);
    expect(faultsOf(file('src/views/day/day-face.ts', 'src/views/app/app-shell.ts'))).toHaveLength(1);
  });

  it('a package, a part of Node and a missing file in the wrong place', () => {
    const named = (from: string, name: string): Import => ({ from, to: { kind: 'package', name } });
    expect(faultsOf(named('src/engine/workbook.ts', 'hyperformula'), named('src/main.ts', 'lit'))).toEqual([]);
    expect(faultsOf(named('src/engine/reprice-worker.ts', 'zod'))).toEqual([]);
    expect(faultsOf(named('src/quote/edit.ts', 'hyperformula'))).toHaveLength(1);
    expect(faultsOf(named('src/engine/workbook.ts', 'zod'))).toHaveLength(1);
    expect(faultsOf(named('src/units/unit.ts', 'unheard-of'))).toHaveLength(1);
    expect(faultsOf({ from: 'src/quote/edit.ts', to: { kind: 'node', name: 'fs' } })).toHaveLength(1);
    expect(faultsOf({ from: 'src/cli/price.ts', to: { kind: 'missing', written: './gone.ts' } })).toHaveLength(1);
  });

  it('the clock, a number format and the page in the wrong place, but not in a comment', () => {
    expect(platformFaults('src/quote/edit.ts', 'const today = new Date();')).toHaveLength(1);
    expect(platformFaults('src/session/session.ts', 'const today = new Date();')).toEqual([]);
    expect(platformFaults('src/views/price.ts', 'new Intl.NumberFormat("en")')).toHaveLength(1);
    expect(platformFaults('src/paper/quote.ts', 'document.createElement("p")')).toHaveLength(1);
    expect(platformFaults('src/quote/edit.ts', '// never Date.now()\n/* nor new Date() */')).toEqual([]);
  });

  it('a folder without meaning, a collecting file, a folder that is not in the table, a view of no screen', () => {
    const faulty = ['src/units/utils/a.ts', 'src/units/index.ts', 'src/extra/a.ts', 'src/loose.ts', 'src/views/a.ts'];
    expect(placeFaults(['src/units/unit.ts', 'src/main.ts'])).toEqual([]);
    expect(placeFaults(faulty)).toHaveLength(5);
  });

  it('files of 301 and 401 lines, and an exception that is no longer needed', () => {
    const lines = new Map([
      ['a.ts', 300],
      ['b.ts', 301],
      ['c.ts', 401],
      ['d.ts', 350],
    ]);
    expect(lengthFaults(lines, { 'd.ts': 'one table' })).toHaveLength(2);
    expect(lengthFaults(lines, { 'd.ts': 'one table', 'a.ts': 'was longer' })).toHaveLength(3);
  });
});
