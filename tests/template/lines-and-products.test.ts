import { describe, expect, it } from 'vitest';
import type { GivenValue, StackEntries } from '../../src/template/entries.ts';
import { libraryOf } from '../../src/template/template-library.ts';
import {
  check,
  choice,
  codeFormula,
  entry,
  entryColumn,
  floor,
  formula,
  key,
  laid,
  priceList,
  productColumn,
  productLine,
  section,
  sheet,
  table,
} from '../helpers/sheets.ts';

const at = 'floor garage: sections[0]';
const faultsOf = (...lines: readonly object[]) => laid([priceList, floor(lines.map((line) => ({ ...line })))]).faults;

describe('the unit of a formula', () => {
  it.each([
    ['ft2', '231 / 144 * 1000', []],
    ['degF', '65', []],
    ['ft2', '0', []],
    ['ft2', 'IF(width > width, 0, -0)', []],
    ['ft', 'width', []],
    ['ft2', 'width', [`${at}.lines[1].formula: This gives a number in ft, and a number in ft2 is declared.`]],
    ['1', 'width > width', [`${at}.lines[1].formula: This gives a condition, and a plain number is declared.`]],
    ['1', '"wide"', [`${at}.lines[1].formula: This gives a code, and a plain number is declared.`]],
    [
      'ft',
      '12 * (width / width)',
      [`${at}.lines[1].formula: This gives a plain number, and a number in ft is declared.`],
    ],
    [
      'ft2',
      'DATE(2026, 1, 1)',
      [`${at}.lines[1].formula: This gives a number in date, and a number in ft2 is declared.`],
    ],
    ['date', 'DATE(2026, 1, 1)', []],
    ['ftt', 'width', [`${at}.lines[1].unit: No unit is called “ftt”: did you mean ft?`]],
  ])('%s for %s', (unit, text, faults) => {
    expect(faultsOf(entry('width', 'ft', 3), formula('answer', unit, text))).toEqual(faults);
  });

  it('stands in the file, unless it gives a code', () => {
    const { unit: _, ...bare } = formula('answer', 'ft', '1');
    expect(faultsOf(bare)).toEqual([`${at}.lines[0].unit: The unit is missing; a plain number has the unit “1”.`]);
    expect(faultsOf(codeFormula('answer', '"wide"'))).toEqual([]);
  });
});

describe('entries, choices and checks', () => {
  it.each([
    [entry('width', 'ft', 3, { limits: [5, 10] }), 'lines[0]: “width” must lie between 5 and 10 ft; 3 ft does not.'],
    [entry('width', 'ft', '2026-01-05'), 'lines[0]: “width” is a number in ft, not “2026-01-05”.'],
    [entry('start', 'date', '2026-02-30'), 'lines[0]: “2026-02-30” is no date; write it as 2026-05-31.'],
    [
      choice('finish', ['matt', 'gloss'], 'mat'),
      'lines[0]: “mat” is not among the choices of “finish”. Did you mean “matt”?',
    ],
    [check('dry', '1 + 1'), 'lines[0].check: This gives a plain number, and a condition is declared.'],
    [
      check('dry', '1 = 1', { say: 'At {widht}.' }),
      'lines[0].say: Character 1, “widht”: There is nothing called “widht”.',
    ],
  ])('%j is refused', (line, fault) => {
    expect(faultsOf(line)).toEqual([`${at}.${fault}`]);
  });

  it('a check is true or false, and its words have the values it names', () => {
    const laidOut = laid([
      floor([
        entry('width', 'ft', 3),
        check('wide', 'width > 2 * width', { say: 'It is {width} wide, {5 - 1} short.' }),
      ]),
    ]);
    expect(laidOut.faults).toEqual([]);
    expect(laidOut.value('wide')).toBe(false);
    expect(laidOut.stack.lines.get('wide')?.say?.map((piece) => piece.kind)).toEqual([
      'words',
      'value',
      'words',
      'value',
      'words',
    ]);
  });
});

describe('what a quote gives', () => {
  const lines = [
    entry('width', 'ft', 3, { limits: [1, 50] }),
    choice('finish', ['matt', 'gloss'], 'matt'),
    formula('area', 'ft2', 'width * width'),
    codeFormula('speed', '"quick"'),
    check('wide', 'width > 0'),
    formula('twice', 'ft2', 'area * 2'),
  ];
  const rooms = table(
    'rooms',
    [key('room'), entryColumn('size', 'ft2', 9), formula('half', 'ft2', 'size / 2'), check('large', 'size > 0')],
    [{ room: 'bay' }],
  );
  const given = (line: string, value: GivenValue): StackEntries => ({
    lines: new Map([[line, value]]),
    tables: new Map(),
  });
  const inRoom = (column: string, value: GivenValue): StackEntries => ({
    lines: new Map(),
    tables: new Map([['rooms', { added: new Map(), cells: new Map([['bay', new Map([[column, value]])]]) }]]),
  });
  const withGiven = (entries: StackEntries) => laid([floor(lines, [rooms])], [], entries);

  it('stands in place of the template’s value', () => {
    expect(withGiven(given('width', { kind: 'value', value: 4 })).value('twice')).toBe(32);
    expect(withGiven(given('finish', { kind: 'value', value: 'gloss' })).value('finish')).toBe('gloss');
    expect(withGiven(inRoom('size', { kind: 'value', value: 30 })).column('rooms', 'half')).toEqual([15]);
  });

  it('a departure stands in place of a formula, and what reads it follows', () => {
    const departed = withGiven(given('area', { kind: 'instead', value: 100 }));
    expect(departed.value('area')).toBe(100);
    expect(departed.value('twice')).toBe(200);
    expect(withGiven(inRoom('half', { kind: 'instead', value: 7 })).column('rooms', 'half')).toEqual([7]);
  });

  it.each([
    ['width', { kind: 'value', value: 60 }, `${at}.lines[0]: “width” must lie between 1 and 50 ft; 60 ft does not.`],
    ['width', { kind: 'value', value: Number.NaN }, `${at}.lines[0]: “width” must be a number.`],
    [
      'finish',
      { kind: 'value', value: 'satin' },
      `${at}.lines[1]: “satin” is not among the choices of “finish”: matt, gloss.`,
    ],
    ['area', { kind: 'instead', value: Number.POSITIVE_INFINITY }, `${at}.lines[2]: “area” must be a number.`],
    ['speed', { kind: 'instead', value: 1 }, `${at}.lines[3]: “speed” is a code; no number stands in its place.`],
    ['wide', { kind: 'instead', value: 1 }, `${at}.lines[4]: “wide” is a check; no value stands in its place.`],
  ] as const)('but %s not %j', (name, value, fault) => {
    expect(withGiven(given(name, value)).faults).toEqual([fault]);
  });

  it('nor stands anything in place of a row’s check', () => {
    expect(withGiven(inRoom('large', { kind: 'instead', value: 1 })).faults).toEqual([
      `${at}.tables[0].start[0].large: “large” is a check; no value stands in its place.`,
    ]);
  });
});

describe('products', () => {
  const coats = (...columns: readonly object[]) =>
    table(
      'coats',
      [key('coat'), productColumn('product', ['base', 'clear'], 'base_slate'), ...columns.map((each) => ({ ...each }))],
      [{ coat: 'first' }, { coat: 'second', product: 'clear_satin' }],
    );

  it('give their fields to lines and rows', () => {
    const lines = [productLine('primer', ['base'], 'base_sand'), formula('primer_weight', 'lb/gal', 'primer.density')];
    const laidOut = laid([priceList, floor(lines, [coats(formula('share', '%', 'product.solids'))])]);
    expect(laidOut.faults).toEqual([]);
    expect(laidOut.value('primer_weight')).toBe(12);
    expect(laidOut.column('coats', 'share')).toEqual([0.97, 0.85]);
    expect(laidOut.column('products', 'product')).toEqual(['base_sand', 'base_slate', 'clear_satin']);
  });

  it.each([
    [productLine('primer', ['base'], 'velvet'), 'lines[0]: The price list has no product “velvet”.'],
    [
      productLine('primer', ['base'], 'base_san'),
      'lines[0]: The price list has no product “base_san”. Did you mean “base_sand”?',
    ],
    [
      productLine('primer', ['base'], 'clear_satin'),
      'lines[0]: “clear_satin” is of the kind clear; “primer” takes base.',
    ],
    [
      productLine('primer', ['bas'], 'base_sand'),
      'lines[0].accepts: There is no kind of product “bas”. Did you mean “base”?',
    ],
    [
      productLine('primer', ['base', 'flake'], 'base_sand'),
      'lines[0].accepts: The kinds accepted here are not all sold by one measure.',
    ],
  ])('%j is refused', (line, fault) => {
    expect(faultsOf(line, formula('a', '1', 'COUNT(0)'), codeFormula('b', 'primer'))).toEqual([`${at}.${fault}`]);
  });

  it('a field that one of the accepted kinds lacks is refused, and one that none has', () => {
    expect(laid([priceList, floor([], [coats(formula('weight', 'lb/gal', 'product.density'))])]).faults).toEqual([
      `${at}.tables[0].columns[2].formula: Character 1, “product.density”: Products of the kind clear have no field “density”.`,
    ]);
    expect(laid([priceList, floor([], [coats(formula('weight', 'lb/gal', 'product.densty'))])]).faults).toEqual([
      `${at}.tables[0].columns[2].formula: Character 1, “product.densty”: Products have no field “densty”. Did you mean “density”?`,
    ]);
  });

  it('a row’s product is told at the row', () => {
    const start = [{ coat: 'first', product: 'flake_granite' }];
    expect(laid([priceList, floor([], [{ ...coats(), start }])]).faults).toEqual([
      `${at}.tables[0].start[0].product: “flake_granite” is of the kind flake; “product” takes base or clear.`,
    ]);
  });

  it('a price list has one table of products, with fields that are entries or choices', () => {
    const { kinds } = priceList as { kinds?: unknown };
    const wrong = sheet(
      'pricelist',
      'list',
      [
        section(
          'products',
          [],
          [
            table('goods', [
              key('code'),
              { ...entryColumn('solids', 'pct', 0), kinds: ['bas'] },
              formula('x', '1', '1'),
            ]),
          ],
        ),
      ],
      { kinds },
    );
    const path = 'pricelist list: sections[0].tables[0]';
    expect(laid([wrong]).faults).toEqual([
      `${path}: A price list has one table, called “products”.`,
      `${path}: The first column of products is the key “product”.`,
      `${path}.columns[1].kinds: There is no kind of product “bas”.`,
      `${path}.columns[1].unit: No unit is called “pct”: did you mean %?`,
      `${path}.columns[2]: A field of a product is an entry or a choice.`,
    ]);
  });
});

describe('a library of sheets', () => {
  it('holds each by layer and id, and tells two of one id and faults with their file', () => {
    const shop = sheet('shop', 'standard', []);
    const files = new Map<string, unknown>([
      ['shop/standard/template.json', shop],
      ['shop/other/template.json', shop],
      ['floor/garage/template.json', { ...floor([]), title: 1 }],
    ]);
    const { library, faults } = libraryOf(files);
    expect([...library.shops.keys()]).toEqual(['standard']);
    expect(library.floors.size).toBe(0);
    expect(faults).toEqual([
      { path: 'shop/other/template.json', reason: 'There is another shop sheet “standard”.' },
      { path: 'floor/garage/template.json: title', reason: 'A string is wanted here.' },
    ]);
  });
});
