import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readShipped } from '../../src/build/read-shipped.ts';
import { contentHash } from '../../src/quote/canonical-json.ts';
import { pinBuilt, pinSheets } from '../../src/quote/sheet-store.ts';
import { readText, repository } from '../helpers/repository-files.ts';
import { templatePaths } from '../helpers/shipped-templates.ts';

const templates = `${repository}/templates`;
mkdirSync(join(repository, '.cache'), { recursive: true });
const copies = mkdtempSync(join(repository, '.cache/templates-'));

afterAll(() => rmSync(copies, { recursive: true, force: true }));

/** The templates with one file changed, in a folder of their own. */
function changed(name: string, path: string, change: (text: string) => string): string {
  const folder = join(copies, name);
  cpSync(templates, folder, { recursive: true });
  const file = join(folder, path);
  writeFileSync(file, change(readFileSync(file, 'utf8')));
  return folder;
}

describe('the sheets that the app is built with', () => {
  it('are all there, each under the hash of its content, systems apart, with 12 systems offered', async () => {
    const shipped = await readShipped(templates);
    expect(shipped.faults).toEqual([]);
    expect(shipped.under.length + shipped.systems.length).toBe(templatePaths.length);
    for (const { hash, value } of [...shipped.under, ...shipped.systems]) expect(await contentHash(value)).toBe(hash);
    expect(shipped.offered).toHaveLength(12);
    expect(shipped.offered.map(({ hash }) => hash)).toEqual(shipped.systems.map(({ hash }) => hash));
    expect(shipped.products.length).toBeGreaterThan(20);
  });

  it('read the same on the page, which does not check them, as where they are checked', async () => {
    const shipped = await readShipped(templates);
    const files = templatePaths.map((path): [string, unknown] => [path, JSON.parse(readText(path) ?? 'null')]);
    const checked = await pinSheets(new Map(files));
    const trusted = pinBuilt([...shipped.under, ...shipped.systems]);
    expect(new Map(trusted.store.sheets)).toEqual(checked.store.sheets);
    expect(trusted.store.hashOf('system', 'solid-colour')).toBe(checked.store.hashOf('system', 'solid-colour'));
  });

  it('end the build with the words of every fault: of a shape, of a formula, of a product', async () => {
    const shape = changed('shape', 'systems/recoat/template.json', (text) => text.replace('"title"', '"titel"'));
    expect((await readShipped(shape)).faults.join('\n')).toMatch(/systems\/recoat\/template\.json: .*titel/);
    const formula = changed('formula', 'parts/money/template.json', (text) =>
      text.replace('"formula": "', '"formula": "unheard_of + '),
    );
    expect((await readShipped(formula)).faults.join('\n')).toMatch(
      /part money: .*There is nothing called “unheard_of”/,
    );
    const product = changed('product', 'pricelist/demo/products.csv', (text) => `${text}half,a,row\n`);
    expect((await readShipped(product)).faults.join('\n')).toMatch(/pricelist\/demo\/products\.csv, line \d+, kind: /);
  });
});
