import { describe, expect, it } from 'vitest';
import { saidTexts } from '../../src/quote/said-texts.ts';
import { openChecks } from '../../src/quote/told-checks.ts';
import { compareView } from '../../src/views/compare/compare-view.ts';
import { promiseWords, saidInDays } from '../../src/views/parts/day-promise.ts';
import { priced } from '../cli/priced.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';

const ofCars = /\b(tyre|cars?|driv(e|ing)|garage)\b/i;
const basement = { crack_length: 30, hairline_length: 5, cars_park: 0, grade: 'below_grade' };
const found = (set: Readonly<Record<string, number | string>>) =>
  new Map(shippedSystems.flatMap((id) => priced([id], { set }).map((system) => [id, system] as const)));
const [below, garage] = [found(basement), found({ crack_length: 30, hairline_length: 5 })];

/** All that a customer is told of a system on its floor: beside the price, side by side, of days. */
function told(systems: typeof below, id: string): string[] {
  const results = systems.get(id)?.results;
  if (results === undefined) throw new Error(`${id} is not priced`);
  const said = (['allowances', 'terms', 'comparison'] as const).flatMap((use) => saidTexts(results, use));
  const open = openChecks(results).filter(({ layer, open }) => layer === 'floor' || open);
  return [
    ...said.filter(({ name }) => name !== 'drive_hours').map(({ label, text }) => `${label}: ${text}`),
    ...open.map(({ says }) => says),
    promiseWords(results),
  ];
}

describe.each(shippedSystems)('%s', (id) => {
  it('tells nothing of cars where none park, and something where they do', () => {
    expect(told(below, id).filter((words) => ofCars.test(words))).toEqual([]);
    expect(told(garage, id).filter((words) => ofCars.test(words)).length).toBeGreaterThan(1);
  });

  it('says once beside the price of a crack what is done for it', () => {
    const results = garage.get(id)?.results;
    const cracks = results && saidTexts(results, 'allowances').filter(({ label }) => label === 'Cracks');
    expect(cracks?.map(({ name }) => name)).toEqual([
      'crack_allowance',
      expect.stringMatching(/^cracks_(shaved|skimmed)$/),
    ]);
    expect(cracks?.[1]?.text).toMatch(/^Each is filled(, skimmed and ground again| and ground flush)\b.*(seen|show)/);
  });
});

describe('flake beside solid colour', () => {
  const options = [...garage.values()]
    .filter(({ sheet }) => ['flake-full-broadcast', 'solid-colour'].includes(sheet.id))
    .map(({ sheet, results }) => ({ id: sheet.id, title: sheet.title, results }));
  const rows = compareView(options, false, 'us').groups.flatMap((group) => group.rows);

  it('tells what becomes of hairline cracks in one row, coated over in one and skimmed in the other', () => {
    const hairlines = rows.filter(({ label }) => label === 'Included: hairline cracks');
    expect(hairlines.map(({ cells }) => cells.map(({ text }) => text))).toEqual([
      ['Hairline cracks are coated over, not opened.', 'Up to 5 ft of hairline cracks skimmed.'],
    ]);
  });

  it('has no two rows of one label', () => {
    expect(rows.length).toBeGreaterThan(20);
    expect(rows.map(({ label }) => label).filter((label, at, all) => all.indexOf(label) < at)).toEqual([]);
  });

  it('leaves what is said in days to days', () => {
    expect(rows.filter(({ name }) => saidInDays.includes(name))).toEqual([]);
  });
});
