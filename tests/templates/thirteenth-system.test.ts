import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { findSystems, loadTemplates } from '../../src/cli/load-templates.ts';
import { priceCommand } from '../../src/cli/price-command.ts';
import { priceSystems } from '../../src/cli/price-systems.ts';
import { lineValue } from '../../src/quote/option-results.ts';
import { readJson } from '../../src/template/sheet-limits.ts';
import { libraryOf } from '../../src/template/template-library.ts';
import { keptMeans } from '../cli/kept-means.ts';
import { readText } from '../helpers/repository-files.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';
import { templatePaths } from '../helpers/shipped-templates.ts';

const id = 'one-thick-clear';
const folder = mkdtempSync(join(tmpdir(), 'systems-'));
const path = join(folder, id, 'template.json');
afterAll(() => rmSync(folder, { recursive: true }));

/** A system nobody shipped: one thick clear coat. It uses every part, and brings a coat, its tasks and when it is used. */
const tasks = [
  { task: 'vacuum', label: 'Vacuum twice and tack', quantity: { formula: 'worked_area' }, rate: 900, people: 2 },
  { task: 'lay_clear', label: 'Clear', quantity: { formula: 'worked_area' }, rate: 400, people: 2 },
];
const stated = (name: string) => ({ name, label: name, unit: 'h', value: 24, source: 'made up for this test' });
const coat = { coat: 'clear', label: 'Thick clear', product: 'clear_epoxy', coverage_typed: 80 };
mkdirSync(join(folder, id));
writeFileSync(
  path,
  JSON.stringify({
    format: 'spreadrate.sheet',
    version: 1,
    layer: 'system',
    id,
    title: 'One thick clear coat',
    sections: [
      ...['preparation', 'repairs', 'coats'].map((use) => ({ use })),
      { rowsFor: 'coats', rows: [coat] },
      { rowsFor: 'tasks', rows: tasks },
      ...['buying', 'extras', 'cautions', 'hours', 'money'].map((use) => ({ use })),
      { id: 'care', title: 'Care', lines: ['walk_hours', 'furnish_hours', 'drive_hours'].map(stated) },
    ],
  }),
);

/*
 * 24 by 22 ft, nothing financed, worked by hand. Clear 528 / 80 / 0.95 + 0.2 = 7.14737 gal: 5 of 1.5 gal at $84 = $420; one
 * cartridge $32. Clock: edges and cracks 3.76190 h beside the grinder, vacuum 528 / 1800, clear 528 / 800, fixed 1.5: 6.21524 h.
 * Paid 2 x (6.21524 + 1.75) = 15.93048 h. Job cost 452 x 1.07 + 60 + 70 + 31.68 + 15 + 42.24 + 15.93048 x 38 +
 * 7.96524 / 9 x 110 + 28.5 = $1,433.77; / 0.53 = $2,705.23, up to $2,725.
 */
const byHand = { paid_hours: 15.93048, materials_cost: 543.64, direct_cost: 1433.77, list_price: 2705.23, price: 2725 };

describe('a thirteenth system', () => {
  it('is not among the twelve', () => {
    expect(shippedSystems).toHaveLength(12);
    expect(shippedSystems).not.toContain(id);
  });

  it('is priced from its folder alone by the command line', () => {
    const result = priceCommand(['--system', path, '--set', 'finance_share=0', '--json'], '2026-03-09', keptMeans);
    if (result.kind === 'faults') throw new Error(result.faults.join('\n'));
    const { lines, tables } = JSON.parse(result.text)[id];
    for (const [line, amount] of Object.entries(byHand)) expect(lines[line].value, line).toBeCloseTo(amount, 2);
    const clear = tables.buy_volume.find((row: { product: string }) => row.product === 'clear_epoxy');
    expect(clear).toMatchObject({ packs: 5, cost: 420 });
  });

  it('stands beside the shipped ones when its folder is read with theirs', () => {
    const files = templatePaths.map((own): [string, unknown] => [own, jsonOf(readText(own) ?? '')]);
    const { library, faults } = libraryOf(
      new Map([...files, [`templates/systems/${id}/template.json`, jsonOf(readFileSync(path, 'utf8'))]]),
    );
    expect(faults).toEqual([]);
    expect([...library.systems.keys()].sort()).toEqual([...shippedSystems, id].sort());
    const refused: string[] = [];
    const outcome = priceSystems({
      library,
      systems: findSystems([id, 'flake-full-broadcast'], library, refused),
      products: loadTemplates().products,
      given: { sets: new Map([['finance_share', '0']]), rows: new Map() },
    });
    if (outcome.kind === 'faults') throw new Error(outcome.faults.join('\n'));
    expect(refused).toEqual([]);
    expect(outcome.systems.map(({ results }) => lineValue(results, 'price'))).toEqual([byHand.price, 4250]);
  });

  it('is refused with the names it lacks when it leaves a part out', () => {
    const sheet = readFileSync(path, 'utf8').replace('{"use":"money"}', '{"id":"none","title":"None"}');
    const broken = join(folder, 'broken.json');
    writeFileSync(broken, sheet);
    const result = priceCommand(['--system', broken], '2026-03-09', keptMeans);
    if (result.kind !== 'faults') throw new Error('It was priced without money');
    expect(result.faults.join('\n')).toContain('The system lacks the result line “price”');
  });
});

function jsonOf(text: string): unknown {
  const json = readJson(text);
  if (json.kind === 'fault') throw new Error(json.reason);
  return json.value;
}
