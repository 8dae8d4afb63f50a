import { describe, expect, it } from 'vitest';
import { briefOutput } from '../../src/cli/brief-output.ts';
import { explainOutput } from '../../src/cli/explain-output.ts';
import { jsonOutput } from '../../src/cli/json-output.ts';
import { entryList } from '../../src/cli/list-output.ts';
import { tableOutput } from '../../src/cli/table-output.ts';
import { pageWidth } from '../../src/cli/text-layout.ts';
import { priced } from './priced.ts';

const flake = 'flake-full-broadcast';
const both = [flake, 'solid-colour'];
const unreachable = { target_on: 'net', target_margin: 0.95 };

describe('the JSON', () => {
  const sheets = JSON.parse(jsonOutput(priced(both)));

  it('holds shop, floor and each system, every line and table in its own sheet only', () => {
    expect(Object.keys(sheets)).toEqual(['shop', 'floor', ...both]);
    expect(sheets.shop.lines.labour_rate).toEqual({ value: 38, unit: '$/h', formula: null });
    expect(sheets.floor.lines.labour_rate).toBeUndefined();
    expect(sheets[flake].lines.labour_rate).toBeUndefined();
    const tablesOf = (sheet: string): string[] => Object.keys(sheets[sheet].tables);
    expect(tablesOf('floor')).toEqual(expect.arrayContaining(['areas', 'corners']));
    expect([...tablesOf('shop'), ...tablesOf(flake)].filter((name) => tablesOf('floor').includes(name))).toEqual([]);
    expect(sheets[flake].tables.coats).toHaveLength(3);
  });

  it('names places as people write them: two bays, of which the second is set by its code', () => {
    const rows = {
      areas: [
        { place: 'Bay', length: 20, width: 10 },
        { place: 'Bay', length: 5, width: 10 },
      ],
    };
    const [system] = priced([flake], { rows, set: { 'areas.bay_2.length': 10 } });
    expect(system?.results.option.rows.get('areas')).toMatchObject([
      { id: 'bay', label: 'Bay' },
      { id: 'bay_2', label: 'Bay' },
    ]);
    const { floor } = JSON.parse(jsonOutput(priced([flake], { rows, set: { 'areas.bay_2.length': 10 } })));
    expect(floor.lines.floor_area.value).toBe(300);
    expect(floor.tables.areas.map(({ place }: { place: string }) => place)).toEqual(['bay', 'bay_2']);
  });

  it('gives numbers with unit and formula, codes, truths, texts, and dates as ISO text', () => {
    const { lines } = sheets[flake];
    expect(lines.labour_cost).toMatchObject({ unit: '$', formula: 'paid_hours * labour_rate + overtime_cost' });
    expect(lines.grinder).toEqual({ value: 'by_floor_size', unit: null, formula: null });
    expect(lines.grinder_used).toMatchObject({ value: 'walk_behind', unit: null });
    expect(lines.crew_there).toEqual({ value: true, unit: null, formula: 'crew >= 1' });
    expect(lines.your_cracks).toEqual({ value: 'Filled, not seen.', unit: null, formula: null });
    expect(sheets.floor.lines.valid_until).toEqual({
      value: '2026-02-04',
      unit: 'date',
      formula: 'quote_date + valid_days',
    });
    expect(sheets.floor.tables.areas[0]).toMatchObject({
      place: 'bay',
      shape: 'rectangle',
      length: 24,
      width: 22,
      third_side: 0,
      cut_length: 0,
      cut_width: 0,
      known_area: 0,
      known_edge: 0,
      joined: 0,
      left_out: 0,
      area_number: 1,
      half_sides: 23,
      corner_fits: true,
      triangle_closes: true,
      corners_given: true,
      area: 528,
      perimeter: 92,
    });
  });

  it('lists every check with its verdict, and what those say that do not hold', () => {
    const told = sheets[flake].checks.find(({ name }: { name: string }) => name === 'crew_there');
    expect(told).toEqual({ name: 'crew_there', severity: 'stop', absolute: true, verdict: 'holds', says: '' });
    const open = sheets[flake].checks.find(
      ({ name }: { name: string }) => name === 'buy_weight.flake_granite.spare_enough',
    );
    expect(open).toMatchObject({ verdict: 'fails', severity: 'caution', absolute: false });
    expect(open.says).toContain('80 lb bought for a need of 79.2 lb');
  });

  it('gives null for a number that failed, with where and why', () => {
    const failed = JSON.parse(jsonOutput(priced([flake], { set: unreachable })))[flake];
    expect(failed.lines.list_price).toMatchObject({
      value: null,
      failure: 'list_price cannot be worked out: MAX(0, price_kept) is 0.',
    });
    expect(failed.failures).toBeUndefined();
    const unknown = failed.checks.find(({ name }: { name: string }) => name === 'profit_there');
    expect(unknown).toMatchObject({ verdict: 'unknown' });
    expect(unknown.says).toContain('cannot be told');
  });

  it('says of a cell that failed why, by its name', () => {
    const rows = {
      coats: [{ coat: 'base' }],
      additions: [{ addition: 'grit', include: 1, gallons_dosed: { formula: 'held_up / (coat_count - 1)' } }],
    };
    const failed = JSON.parse(
      jsonOutput(priced([flake], { rows: { ...rows, tasks: [{ task: 'grind' }, { task: 'edge_grind' }] } })),
    );
    expect(failed[flake].tables.additions[0].gallons_dosed).toBeNull();
    expect(failed[flake].failures['additions.grit.gallons_dosed']).toBe(
      'additions.grit.gallons_dosed cannot be worked out: coat_count - 1 is 0.',
    );
  });
});

describe('the tables', () => {
  const text = tableOutput(priced(both));

  it('keep to 100 columns, also where names are long', () => {
    const rows = { areas: [{ place: 'bay', label: 'x'.repeat(300), length: 2000, width: 2000 }] };
    const wide = tableOutput(priced(both, { rows, set: { crew_extra: -1, slab_temperature: 30 } }));
    for (const line of [...text.split('\n'), ...wide.split('\n')])
      expect([...line].length).toBeLessThanOrEqual(pageWidth);
  });

  it('say what to buy, in packs: 2 of 3 gal base, 1 of 5 gal clear, 2 boxes of flake', () => {
    expect(text).toMatch(/Tumblewick base, slate +4\.348 gal +2 × 3 gal +\$270\.00/);
    expect(text).toMatch(/Quillmarsh clear, gloss +4\.646 gal +1 × 5 gal +\$310\.00/);
    expect(text).toMatch(/Fennelby colour, pebble grey +6\.267 gal +2 × 1 gal \+ 1 × 5 gal +\$241\.00/);
    expect(text).not.toContain('joint filler');
  });

  it('count pieces in words: 0.97 of filler in 1 cartridge, 12.12 in 1 and a box of 12, 3.44 packs of pigment in 4', () => {
    const metallic = tableOutput(priced(['metallic']));
    expect(metallic).toMatch(/Oddenham quick filler +0\.97 pieces +1 +\$32\.00/);
    expect(metallic).toMatch(/Lanternmoor metal pigment, pewter +3\.44 pieces +4 +\$96\.00/);
    expect(metallic.slice(0, metallic.indexOf('HOURS'))).not.toMatch(/\d each/);
    const boxes = tableOutput(priced([flake], { set: { crack_length: 250 } }));
    expect(boxes).toMatch(/Oddenham quick filler +12\.12 pieces +1 \+ 1 × 12 pieces +\$380\.00/);
  });

  it('say the hours of tasks and visits, the money, and the price last', () => {
    expect(text).toMatch(/Grind +1 +1 +3\.017 h +3\.017 h/);
    expect(text).toMatch(/Visit 2 +2\.641 h/);
    expect(text).toMatch(/Gross profit, of price +47\.\d+ {2}%/);
    expect(text).toContain('\n\n  Solid colour, rolled · $4,200 · $7.95/ft²\n');
    expect(text.trimEnd().split('\n').slice(-3)).toEqual([
      'PRICES',
      '  Full flake            $4,250  $8.05/ft²  2 days on site',
      '  Solid colour, rolled  $4,200  $7.95/ft²  3 days on site',
    ]);
  });

  it('tell checks that do not hold, worst first, and that the job is not for sale', () => {
    const cold = tableOutput(priced([flake], { set: { slab_temperature: 30 } }));
    const checks = cold.slice(cold.indexOf('CHECKS'));
    expect(checks.indexOf('  stop')).toBeGreaterThan(0);
    expect(checks.indexOf('  stop')).toBeLessThan(checks.indexOf('  caution'));
    expect(checks).toContain('(No way round.)');
    expect(checks).toMatch(/not for sale: [2-9] stops above/);
  });

  it('say that a price is incomplete, and why, in place of one', () => {
    const failed = tableOutput(priced([flake], { set: unreachable }));
    expect(failed).toContain('Full flake: the price is incomplete. minimum_job cannot be worked out');
    expect(failed).not.toMatch(/\$[\d,]+ · /);
  });
});

describe('cautions and notes of several systems', () => {
  const checksOf = (text: string): string[] => text.split('\n\n').filter((section) => /^CHECKS|\nCHECKS/.test(section));
  const epoxy = 'Uncured they can sensitise the skin';

  it('stand once where all say them in the same words, each with its own where words differ', () => {
    const text = tableOutput(priced(both));
    expect(text.match(new RegExp(epoxy, 'g'))).toHaveLength(1);
    expect(text.match(/The deposit of \$1,2\d\d\.00/g)).toEqual([
      'The deposit of $1,275.00',
      'The deposit of $1,260.00',
    ]);
    const [flakes, colour, all] = checksOf(text);
    expect(flakes).toContain('80 lb bought for a need of 79.2 lb');
    expect([flakes, colour].join()).not.toContain(epoxy);
    expect(all).toMatch(/^CHECKS OF ALL OF THEM\n/);
    expect(all).toContain(epoxy);
  });

  it('say of which systems they are where a third has other words', () => {
    const text = tableOutput(priced([...both, 'metallic']));
    expect(text).toContain('CHECKS OF Full flake AND Solid colour, rolled\n  note     Epoxies, or blends with one: 1.');
    expect(text.match(/Epoxies, or blends with one: 1\./g)).toHaveLength(1);
    expect(text.match(/Epoxies, or blends with one: 2\./g)).toHaveLength(1);
  });

  it('stay with the system that alone is priced, and a stop stays with each', () => {
    expect(tableOutput(priced([flake]))).toContain(epoxy);
    const cold = tableOutput(priced(both, { set: { slab_temperature: 30 } }));
    const stops = cold.match(/^ {2}stop /gm) ?? [];
    expect(stops.length).toBeGreaterThan(3);
    expect(checksOf(cold).filter((section) => /^ {2}stop /m.test(section))).toHaveLength(2);
  });
});

describe('the prices alone', () => {
  it('are a line a system: title, price, price a square foot, days on site', () => {
    expect(briefOutput(priced(both))).toBe(
      '  Full flake            $4,250  $8.05/ft²  2 days on site\n' +
        '  Solid colour, rolled  $4,200  $7.95/ft²  3 days on site\n',
    );
  });

  it('are told a square metre in metric', () => {
    expect(briefOutput(priced([flake]), 'metric')).toBe('  Full flake  $4,250  $86.64/m²  2 days on site\n');
  });

  it('mark what is not for sale, for stops or for want of a price', () => {
    expect(briefOutput(priced([flake], { set: { slab_temperature: 30 } }))).toMatch(
      /\$[\d,]+ .* on site {2}not for sale: [2-9] stops\n$/,
    );
    expect(briefOutput(priced([flake], { set: unreachable }))).toMatch(/^ {2}Full flake {2}incomplete .*not for sale/);
  });
});

describe('an explanation', () => {
  const explained = (name: string, systems = [flake]): string => {
    const result = explainOutput(priced(systems), name);
    return result.kind === 'text' ? result.text : result.faults.join('\n');
  };

  it('gives value, formula in names and numbers, steps, what it reads and what reads it', () => {
    const text = explained('labour_cost');
    expect(text).toContain('labour_cost   Labour');
    expect(text).toContain('formula       paid_hours * labour_rate');
    expect(text).toContain('in numbers    25.65 h * $38.00/h');
    expect(text).toContain('reads         paid_hours = 25.65 h · labour_rate = $38.00/h');
    expect(text).toContain('read by       direct_cost');
  });

  it('names cells by table, row and column, whichever way they were asked for', () => {
    expect(explained('coats.1.wet_mils')).toBe(explained('coats.base.wet_mils'));
    expect(explained('coats.1.wet_mils')).toContain('coats.base.wet_mils');
  });

  it('gives the number of a visit as a number, and how many visits there are as visits', () => {
    expect(explained('tasks.scrape.visit')).toMatch(/value +2\n/);
    expect(explained('visits')).toMatch(/value +2 visits\n/);
  });

  it('says of an entry where its value comes from', () => {
    const text = explained('labour_rate', both);
    expect(text).toContain('formula       none: it is entered');
    expect(text.match(/source {8}common practice, no source/g)).toHaveLength(2);
  });

  it('refuses what it does not find, with the nearest name', () => {
    expect(explained('prize')).toBe('--explain prize: There is nothing called “prize”. Did you mean “price”?');
    expect(explained('coats.bse.wet_mils')).toContain('Did you mean “base”?');
    expect(explained('coats.base.wet_mil')).toContain('Did you mean “wet_mils”?');
    expect(explained('coat.base.wet_mils')).toContain('Did you mean “coats”?');
    expect(explained('coats')).toContain('is a table');
    expect(explained('best_for')).toContain('is free text');
  });
});

describe('the list of entries', () => {
  const text = entryList(priced(both, { set: { labour_rate: 41 } }));

  it('has every entry once with value, unit and sheet', () => {
    expect(text.match(/^ {2}labour_rate +41 +\$\/h +shop$/gm)).toHaveLength(1);
    expect(text).toMatch(/^ {2}quote_date +2026-01-05 +date +floor$/m);
    expect(text).toMatch(/^ {2}reading_date +no date +date +floor$/m);
    expect(text).toMatch(/^ {2}grind_factor +1\.2 +1 +solid-colour$/m);
    expect(text).not.toMatch(/^ {2}labour_cost /m);
  });

  it('has the tables with the keys of their rows and what may be set in them', () => {
    expect(text).toContain('  areas  floor, rows may be given\n    rows     bay\n');
    expect(text).toContain('rows     base, clear, second_clear');
    expect(text).toContain('quantity (ft2 for area; ft for length; each');
  });
});
