import { describe, expect, it } from 'vitest';
import { cellNamed } from '../../src/quote/named-cell.ts';
import { demoProducts, faultsOf, type GivenInTest, priced, priceShipped } from './priced.ts';

const flake = 'flake-full-broadcast';
const solid = 'solid-colour';

function valueIn(name: string, given: GivenInTest, systems: readonly string[] = [flake]): unknown {
  const [first] = priced(systems, given);
  const cell = first && cellNamed(first.results.option, name);
  return cell === undefined ? undefined : first?.results.read(cell);
}

describe('what is set', () => {
  it('reaches shop, floor, system and cells, by row key or row number', () => {
    expect(valueIn('labour_cost', { set: { labour_rate: 0 } })).toBe(0);
    expect(valueIn('floor_area', { set: { 'areas.bay.length': 10, 'areas.1.width': 10 } })).toBe(100);
    expect(valueIn('broadcast.flake.pounds', { set: { 'broadcast.1.thrown': 0.25 } })).toBe(132);
    expect(valueIn('trips.1.released_hours', { set: { 'trips.1.released_hours': 2 } })).toBe(2);
  });

  it('is read as people type it: feet and inches, arithmetic, shares as fractions or with %', () => {
    expect(valueIn('areas.bay.length', { set: { 'areas.bay.length': `22' 6"` } })).toBe(22.5);
    expect(valueIn('areas.1.known_area', { set: { 'areas.1.known_area': '24*22+60' } })).toBe(588);
    expect(valueIn('target_margin', { set: { target_margin: '0.5' } })).toBe(0.5);
    expect(valueIn('target_margin', { set: { target_margin: '50%' } })).toBe(0.5);
    expect(valueIn('quote_date', { set: { quote_date: '2026-03-09' } })).toBe(46090);
  });

  it('follows the unit that another cell of its row is set to', () => {
    const set = { 'tasks.vacuum.measure': 'length', 'tasks.vacuum.quantity': `18' 6"` };
    const [first] = priced([flake], { set });
    const cell = first && cellNamed(first.results.option, 'tasks.vacuum.quantity');
    expect(first?.results.option.plan.cells[cell ?? -1]?.type).toMatchObject({ unit: { text: 'ft' } });
    expect(cell === undefined ? undefined : first?.results.read(cell)).toBe(18.5);
  });

  it('may stand in only one of the systems', () => {
    const systems = priced([flake, solid], { set: { 'coats.base.coverage_typed': 100, labour_rate: 40 } });
    const read = systems.map(({ results }) =>
      ['labour_rate', 'coats.base.coverage_typed'].map((name) => {
        const cell = cellNamed(results.option, name);
        return cell === undefined ? 'absent' : results.read(cell);
      }),
    );
    expect(read).toEqual([
      [40, 100],
      [40, 'absent'],
    ]);
  });

  it('is refused with its reason, every fault at once', () => {
    const set = {
      labor_rate: 40,
      price: 5,
      areas: 5,
      'areas.shed.length': 3,
      'areas.bay.lenght': 3,
      'aras.1.length': 3,
      'areas.length': 3,
      target_margin: 2,
      grinder: 'walkbehind',
      start_date: '2026-02-30',
      'coats.base.product': 'base_slat',
      'coats.clear.product': 'flake_granite',
      best_for: 'x',
      floor_measured: 1,
      'areas.bay.place': 'shed',
      'buy_volume.1.need': 3,
      'products.base_slate.pack_price': 1,
    };
    expect(faultsOf([flake, solid], { set })).toEqual([
      '--set labor_rate=40: There is nothing called “labor_rate”. Did you mean “labour_rate”?',
      '--set price=5: “price” is worked out, not entered.',
      '--set areas=5: “areas” is a table: name one of its cells, as areas.ROW.COLUMN.',
      '--set areas.shed.length=3: The table “areas” has no row “shed”: it has bay.',
      '--set areas.bay.lenght=3: The table “areas” has no column “lenght”. Did you mean “length”?',
      '--set aras.1.length=3: There is no table “aras”. Did you mean “areas”?',
      '--set areas.length=3: “areas.length” names no cell: write TABLE.ROW.COLUMN, as areas.1.length.',
      '--set target_margin=2: “target_margin” must lie between 0 and 95 %; 200 % does not.',
      '--set grinder=walkbehind: “walkbehind” is not among the choices of “grinder”. Did you mean “walk_behind”?',
      '--set start_date=2026-02-30: There is no day 2026-02-30: check the month and the day.',
      '--set coats.base.product=base_slat: The price list has no product “base_slat”. Did you mean “base_slate”?',
      '--set coats.clear.product=flake_granite: “flake_granite” is of the kind flake; “product” takes base or clear.',
      '--set best_for=x: “best_for” is free text of the sheet, and no price reads it.',
      '--set floor_measured=1: “floor_measured” is a check: it is told, not entered.',
      '--set areas.bay.place=shed: “place” is the name of its row, and is given with the row.',
      '--set buy_volume.1.need=3: “need” is worked out, not entered.',
      '--set products.base_slate.pack_price=1: Products come from the price list: give another with --pricelist FILE.csv.',
    ]);
  });

  it('is refused when one cell is named in two ways', () => {
    expect(faultsOf([flake, solid], { set: { 'areas.bay.length': 3, 'areas.1.length': 4 } })).toEqual([
      '--set areas.1.length=4: This cell is set twice.',
    ]);
  });
});

describe('rows that are given', () => {
  it('bring the tasks of a coat that the template has not, and take along those of one that is left out', () => {
    const topcoat = { coat: 'topcoat', label: 'Hard topcoat', product: 'clear_aspartic' };
    const coats = [{ coat: 'base', to_refusal: 1 }, { coat: 'clear', product: 'clear_aspartic' }, topcoat];
    const [first] = priced([flake], { rows: { coats }, set: { 'tasks.lay_topcoat.rate': 300 } });
    const tasks = (first?.results.option.rows.get('tasks') ?? []).map(({ id }) => id);
    expect(tasks.slice(tasks.indexOf('lay_clear'))).toEqual([
      'lay_clear',
      'wash_clear',
      'abrade_for_topcoat',
      'lay_topcoat',
      'wash_topcoat',
      'fill_joints_after',
    ]);
    const hours = valueIn('tasks.lay_topcoat.task_hours', { rows: { coats }, set: { 'tasks.lay_topcoat.rate': 300 } });
    expect(hours).toBeCloseTo(528 / 300, 9);
    expect(valueIn('tasks.lay_topcoat.over', { rows: { coats } })).toBe('clear');
  });

  it('may choose among each other, whichever is given first; tasks that are given are all there are', () => {
    const coats = [{ coat: 'topcoat', product: 'clear_aspartic' }];
    const tasks = [
      { task: 'sweep', quantity: 10 },
      { task: 'roll', quantity: 10, lays: 'topcoat', after: 'sweep' },
    ];
    expect(valueIn('tasks.roll.lays', { rows: { tasks, coats } })).toBe('topcoat');
    expect(valueIn('tasks.roll.after', { rows: { coats, tasks } })).toBe('sweep');
    expect(faultsOf([flake], { rows: { tasks: [{ task: 'roll', lays: 'topcoat' }] } })).toEqual([
      expect.stringMatching(/^--rows tasks: Row 1, lays: “topcoat” is not among the choices of “lays”/),
    ]);
  });

  it('replace those of a free table, what they leave out standing at the standard', () => {
    const rows = {
      areas: [
        { place: 'bay', length: `10' 6"`, width: 10 },
        { place: 'shed', label: 'Shed', shape: 'known', known_area: 95, known_edge: 38 },
      ],
    };
    expect(valueIn('floor_area', { rows })).toBe(200);
    expect(valueIn('edge_length', { rows })).toBe(79);
    expect(valueIn('areas.bay.joined', { rows })).toBe(0);
    expect(valueIn('floor_area', { rows, set: { 'areas.shed.known_area': 5 } })).toBe(110);
  });

  it('forget the template’s row of the same key', () => {
    expect(valueIn('coats.base.coverage_typed', { rows: { coats: [{ coat: 'base' }, { coat: 'clear' }] } })).toBe(134);
    expect(valueIn('coats.clear.texture', { rows: { coats: [{ coat: 'clear', product: 'clear_wear' }] } })).not.toBe(5);
  });

  it('may have formulas of their own in columns that allow it', () => {
    const rows = { broadcast: [], extras: [{ extra: 'strips', include: 1, pieces: { formula: 'coat_count * 2' } }] };
    expect(valueIn('extras.strips.pieces_needed', { rows })).toBe(4);
    expect(valueIn('buy_count.door_strip.packs', { rows })).toBe(4);
  });

  it('are refused with their reasons, every fault at once', () => {
    const rows = {
      areas: [
        { place: 'bay', lenght: 4 },
        { shape: 'rectangel' },
        3,
        { place: ' ', length: 'x', area: 3, width: { formula: '1' }, joined: true },
        { place: 'shed', length: -1 },
      ],
      trips: [],
      buy_volume: [],
      area: [],
      coats: {},
    };
    expect(faultsOf([flake, solid], { rows })).toEqual([
      '--rows areas: Row 1, lenght: The table “areas” has no column “lenght”. Did you mean “length”?',
      '--rows areas: Row 2, shape: “rectangel” is not among the choices of “shape”. Did you mean “rectangle”?',
      '--rows areas: Row 2 lacks its “place”: every row has its name.',
      '--rows areas: Row 3 is no object: write { "column": value, … }.',
      '--rows areas: Row 4, place: A row is called by a word or two.',
      `--rows areas: Row 4, length: “x” is not a number: type a number such as 22.5 or 22' 6".`,
      '--rows areas: Row 4, area: “area” is worked out, not entered.',
      '--rows areas: Row 4, width: A row gives no formula for “width”.',
      '--rows areas: Row 4, joined: A number, a text, or { "formula": "…" } is wanted here.',
      '--rows areas: Row 5, length: “length” must lie between 0 and 2,000 ft; −1 ft does not.',
      '--rows trips: The rows of “trips” are fixed; set its cells with --set.',
      '--rows buy_volume: The rows of “buy_volume” are gathered: one for each product that other tables name. Change those.',
      '--rows area: There is no table “area”. Did you mean “areas”?',
      '--rows coats: A list of rows is wanted: [{ "column": value, … }, …].',
    ]);
  });

  it('are refused beyond 500, below the least, or with one key twice', () => {
    const many = Array.from({ length: 501 }, (_, at) => ({ place: `p${at}` }));
    expect(faultsOf([flake], { rows: { areas: many } })).toEqual(['--rows areas: A table has at most 500 rows.']);
    expect(faultsOf([flake], { rows: { areas: [] } })).toEqual(['areas: “areas” has at least 1 row.']);
    expect(faultsOf([flake], { rows: { areas: [{ place: 'bay' }, { place: 'bay' }] } })).toEqual([
      'areas.bay: Two rows of “areas” are called “bay”.',
    ]);
  });

  it('do not hide what else is wrong, nor make their own cells look wrong', () => {
    const given = { rows: { areas: [{ place: 3 }] }, set: { 'areas.shed.length': 3, 'areas.shed.lenght': 3 } };
    expect(faultsOf([flake], given)).toEqual([
      '--rows areas: Row 1, place: A name is wanted here: a word or two.',
      '--rows areas: Row 1 lacks its “place”: every row has its name.',
      '--set areas.shed.lenght=3: The table “areas” has no column “lenght”. Did you mean “length”?',
    ]);
  });

  it('tell a fault in their formula at its place', () => {
    const rows = { extras: [{ extra: 'strips', pieces: { formula: 'coat_cuont' } }] };
    expect(faultsOf([flake], { rows })[0]).toMatch(/^extras\.strips\.pieces: .*Did you mean “coat_count”\?$/);
  });
});

describe('a price list', () => {
  it('takes the place of the demo’s: a pack of base at $235 in place of $135 makes two packs $200 dearer', () => {
    const products = demoProducts.replace('"Tumblewick base, slate",3,,,135', '"Tumblewick base, slate",3,,,235');
    expect(valueIn('buy_volume.base_slate.cost', {})).toBe(270);
    expect(valueIn('buy_volume.base_slate.cost', { products })).toBe(470);
  });

  it('is refused with the lines of its faults', () => {
    const products = demoProducts
      .replace('"Tumblewick base, slate",3,,,135', '"Tumblewick base, slate",3,,,cheap')
      .replace('grit_fine,', 'Grit,');
    const faults = faultsOf([flake], { products });
    expect(faults).toHaveLength(2);
    expect(faults[0]).toMatch(/^products\.csv, line 2, pack_price: “cheap” is not a number/);
    expect(faults[1]).toMatch(/^products\.csv, line \d+, product: “Grit” is not a code/);
  });
});

describe('systems', () => {
  it('are named by id, each once, at most four', () => {
    expect(priceShipped(['flake-ful-broadcast'])).toMatchObject({
      faults: ['There is no system “flake-ful-broadcast”. Did you mean “flake-full-broadcast”?'],
    });
    expect(priceShipped([flake, flake])).toMatchObject({ faults: [`The system “${flake}” is given twice.`] });
    expect(priceShipped([flake, solid, 'a', 'b', 'c'])).toMatchObject({
      faults: expect.arrayContaining(['At most 4 systems are priced side by side.']),
    });
  });
});
