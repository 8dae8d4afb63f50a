import { describe, expect, it } from 'vitest';
import { readSheet } from '../../src/template/read-sheet.ts';
import {
  check,
  choice,
  entry,
  entryColumn,
  floor,
  formula,
  key,
  laid,
  section,
  sheet,
  system,
  table,
} from '../helpers/sheets.ts';

const told = (file: object) => readSheet(JSON.stringify(file)).faults.map(({ path, reason }) => `${path}: ${reason}`);
const withLine = (line: object) =>
  told({ ...floor([]), sections: [{ id: 'measure', title: 'Measure', lines: [line] }] });
const withTable = (more: object) =>
  told({
    ...floor([]),
    sections: [{ id: 'measure', title: 'Measure', tables: [{ ...table('rooms', [key('room')]), ...more }] }],
  });
const line = 'sections[0].lines[0]';
const rooms = 'sections[0].tables[0]';

describe('the frame of a file', () => {
  it('is told property by property', () => {
    expect(
      told({ format: 'spreadsheet', version: 2, layer: 'flor', id: 'Garage', titl: 'Garage', sections: {} }),
    ).toEqual([
      'format: One of spreadrate.sheet is wanted here.',
      'version: One of 1 is wanted here.',
      'layer: One of pricelist, shop, floor, system, part is wanted here. Did you mean “floor”?',
      'id: An id is lower-case letters, digits and hyphens, beginning with a letter.',
      'title: This is missing: a string is wanted.',
      'sections: A list is wanted here.',
      'titl: There is no property “titl” here. Did you mean “title”?',
    ]);
  });

  it.each([
    ['null', null],
    ['a list', []],
    ['a text', 'sheet'],
    ['a number', 3],
  ])('%s is none', (_, value) => {
    const { sheet: read, faults } = readSheet(JSON.stringify(value));
    expect(read).toBeUndefined();
    expect(faults.map(({ reason }) => reason)).toEqual(['An object is wanted here.']);
  });

  it('that is wrong does not hide what its sections have wrong', () => {
    expect(told({ ...floor([{ name: 'a', label: 'A', unit: 'ft', valu: 3 }]), title: 5 })).toEqual([
      'title: A string is wanted here.',
      `${line}.value: This is none of the things that may stand here.`,
      `${line}.valu: There is no property “valu” here. Did you mean “value”?`,
    ]);
  });
});

describe('a line', () => {
  it.each([
    [
      { ...entry('width', 'ft', 3), helpp: 'x' },
      [`${line}.helpp: There is no property “helpp” here. Did you mean “help”?`],
    ],
    [
      { ...entry('width', 'ft', 3), zebra: 1 },
      [
        expect.stringMatching(
          /^sections\[0\].lines\[0\].zebra: There is no property “zebra” here. One of name, label, .* may stand here.$/,
        ),
      ],
    ],
    [
      entry('Width', 'ft', 3),
      [`${line}.name: A name is lower-case letters, digits and underscores, beginning with a letter.`],
    ],
    [entry('w'.repeat(61), 'ft', 3), [`${line}.name: This is too large or too long: at most 60.`]],
    [entry('start', 'date', '5/31/2026'), [`${line}.value: A date is wanted here, as in 2026-05-31.`]],
    [{ ...entry('width', 'ft', 3), limits: [1] }, [expect.stringMatching(/^sections\[0\].lines\[0\].limits/)]],
    [
      { ...choice('finish', ['matt'], 'matt'), options: [] },
      [`${line}.options: This is too small or too short: at least 1.`],
    ],
    [
      check('dry', 'a = 1', { severity: 'stopp' }),
      [`${line}.severity: One of note, caution, stop is wanted here. Did you mean “stop”?`],
    ],
    [formula('area', 'ft2', ''), [`${line}.formula: This is too small or too short: at least 1.`]],
    [
      { ...formula('area', 'ft2', '1'), value: 3 },
      [expect.stringContaining(`${line}.value: There is no property “value” here.`)],
    ],
    [
      { ...entry('width', 'ft', 3), label: 'x'.repeat(2001) },
      [`${line}.label: This is too large or too long: at most 2000.`],
    ],
    [7, [`${line}: An object is wanted here.`]],
  ])('%j is refused with its path', (raw, faults) => {
    expect(withLine(raw as object)).toEqual(faults);
  });
});

describe('a table', () => {
  it.each([
    [{ rows: undefined }, `${rooms}: A table has either “rows” or “gather”.`],
    [{ gather: ['coats.product'] }, `${rooms}: A table has either “rows” or “gather”.`],
    [{ rows: 'freee' }, `${rooms}.rows: One of free, fixed is wanted here. Did you mean “free”?`],
    [{ columns: [] }, `${rooms}.columns: This is too small or too short: at least 1.`],
    [
      { rows: undefined, gather: ['coats'] },
      `${rooms}.gather[0]: A table and its column are wanted here, as in coats.product.`,
    ],
    [
      { start: [{ Room: 'a' }] },
      `${rooms}.start[0].Room: A name is lower-case letters, digits and underscores, beginning with a letter.`,
    ],
    [{ start: [{ room: true }] }, `${rooms}.start[0].room: This is none of the things that may stand here.`],
    [
      { start: [{ room: { formula: '1', unit: 'ft' } }] },
      `${rooms}.start[0].room.unit: There is no property “unit” here.`,
    ],
    [
      { columns: [key('room'), entryColumn('size', 'ft2', 0, { perrow: true })] },
      `${rooms}.columns[1].perrow: There is no property “perrow” here. Did you mean “perRow”?`,
    ],
  ])('with %j is refused', (more, fault) => {
    expect(withTable(more)).toEqual([fault]);
  });

  it('whose frame is wrong has its columns looked at too', () => {
    const wrong = { rows: 'freee', columns: [key('room'), { ...entryColumn('size', 'ft2', 0), uni: 'ft' }] };
    expect(withTable(wrong)).toEqual([
      `${rooms}.rows: One of free, fixed is wanted here. Did you mean “free”?`,
      `${rooms}.columns[1].uni: There is no property “uni” here. Did you mean “unit”?`,
    ]);
  });
});

describe('each layer has its own', () => {
  const use = { use: 'coats' };
  const rows = { rowsFor: 'tasks', rows: [] };
  it.each([
    ['floor', [use], {}, ['sections[0]: Only a system uses parts.']],
    ['part', [use], {}, ['sections[0]: A part does not use other parts.']],
    ['shop', [rows], {}, ['sections[0]: Only a system or a part adds rows to tables.']],
    ['pricelist', [section('a', [entry('x', '1', 0)])], {}, ['sections[0]: A price list has no lines.']],
    [
      'floor',
      [
        {
          ...section('a'),
          tables: [table('rooms', [key('room'), entryColumn('size', 'ft2', 0, { kinds: ['base'] })])],
        },
      ],
      {},
      ['sections[0]: Only fields of a price list have kinds.'],
    ],
    ['system', [], { needs: [{ name: 'area', unit: 'ft2' }] }, ['needs: Only a part has needs.']],
    [
      'floor',
      [],
      { kinds: [{ kind: 'base', label: 'Base', soldBy: 'gal' }] },
      ['kinds: Only a price list has kinds of products.'],
    ],
    ['part', [rows], { needs: [{ name: 'area', unit: 'ft2' }] }, []],
    ['system', [use, rows], {}, []],
  ] as const)('%s with %j %j', (layer, sections, more, faults) => {
    expect(told(sheet(layer, 'one', sections, more))).toEqual(faults);
  });
});

describe('all faults are told in one go', () => {
  it('a wrong shape, an unknown name elsewhere, a wrong unit, a row’s formula', () => {
    const rows = table(
      'rooms',
      [key('room'), entryColumn('size', 'ft2', 0, { perRow: true })],
      [{ room: 'bay', size: { formula: 'widt * 2' } }],
    );
    const lines = [
      { ...entry('broken', 'ft', 3), valu: 4 },
      entry('width', 'feet', 24),
      formula('area', 'ft2', 'width * lenght'),
      formula('reads_broken', 'ft', 'broken + 1'),
      entry('length', 'ft', 22),
    ];
    expect(laid([floor(lines, [rows])]).faults).toEqual([
      'sections[0].lines[0].valu: There is no property “valu” here. Did you mean “value”?',
      'floor garage: sections[0].lines[1].unit: No unit is called “feet”: did you mean ft?',
      'floor garage: sections[0].lines[2].formula: Character 9, “lenght”: There is nothing called “lenght”. Did you mean “length”?',
      'floor garage: sections[0].tables[0].start[0].size: Character 1, “widt”: There is nothing called “widt”. Did you mean “width”?',
    ]);
  });

  it('of all sheets of a stack, each with the sheet it stands in', () => {
    const shop = sheet('shop', 'standard', [section('people', [formula('wage', '$/h', 'salary')])]);
    const part = sheet('part', 'money', [section('money', [formula('cost', '$', 'expense')])]);
    const own = system([{ use: 'money' }, section('care', [formula('years', 'yr', 'decade')])]);
    expect(laid([shop, floor([formula('area', 'ft2', 'wide')]), own], [part]).faults).toEqual([
      'shop standard: sections[0].lines[0].formula: Character 1, “salary”: There is nothing called “salary”.',
      'floor garage: sections[0].lines[0].formula: Character 1, “wide”: There is nothing called “wide”.',
      'part money: sections[0].lines[0].formula: Character 1, “expense”: There is nothing called “expense”.',
      'system rolled: sections[1].lines[0].formula: Character 1, “decade”: There is nothing called “decade”.',
    ]);
  });

  it('names that stand in a broken section, table or line are not told as unknown', () => {
    const broken = { id: 'slab', lines: [entry('depth', 'in', 4)], tables: [table('cracks', [key('crack')])] };
    const brokenTable = { ...table('coats', [key('coat'), entryColumn('gallons', 'gal', 0)]), rows: 'freee' };
    const lines = [
      formula('a', 'in', 'depth * 2'),
      formula('b', '1', 'COUNTIFS(cracks.crack, "long")'),
      formula('c', 'gal', 'SUM(coats.gallons) + coats.gallons'),
      { name: 'sealer', label: 'Sealer', accepts: [], value: 'x' },
      formula('d', '%', 'sealer.solids + 1'),
    ];
    const file = sheet('floor', 'garage', [broken, section('measure', lines, [brokenTable])]);
    expect(laid([file]).faults).toEqual([
      'sections[0].title: This is missing: a string is wanted.',
      'sections[1].lines[3].accepts: This is too small or too short: at least 1.',
      'sections[1].tables[0].rows: One of free, fixed is wanted here. Did you mean “free”?',
    ]);
  });
});
