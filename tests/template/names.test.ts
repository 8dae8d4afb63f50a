import { describe, expect, it } from 'vitest';
import { resultLines } from '../../src/template/result-lines.ts';
import {
  check,
  choice,
  entry,
  entryColumn,
  floor,
  formula,
  key,
  laid,
  priceList,
  section,
  sheet,
  system,
  table,
  text,
} from '../helpers/sheets.ts';

const at = 'floor garage: sections[0]';

describe('a name stands for one thing', () => {
  it.each([
    [
      [entry('width', 'ft', 1), entry('width', 'ft', 2)],
      [],
      `${at}.lines[1]: The name “width” stands already: ${at}.lines[0].`,
    ],
    [
      [entry('rooms', 'ft', 1)],
      [table('rooms', [key('room')])],
      `${at}.tables[0]: The name “rooms” stands already: ${at}.lines[0].`,
    ],
    [[entry('sum', 'ft', 1)], [], `${at}.lines[0]: “sum” is the name of a function.`],
    [[entry('above', 'ft', 1)], [], `${at}.lines[0]: “above” is reserved and cannot be a name.`],
    [[entry('products', 'ft', 1)], [], `${at}.lines[0]: “products” is reserved and cannot be a name.`],
    [
      [],
      [table('rooms', [key('room'), entryColumn('label', 'ft', 1)])],
      `${at}.tables[0].columns[1].name: “label” is reserved and cannot be a name.`,
    ],
    [
      [],
      [table('rooms', [key('room'), entryColumn('max', 'ft', 1)])],
      `${at}.tables[0].columns[1].name: “max” is the name of a function.`,
    ],
    [
      [],
      [table('rooms', [key('room'), entryColumn('room', 'ft', 1)])],
      `${at}.tables[0].columns[1].name: The column “room” stands twice in rooms.`,
    ],
    [
      [entry('width', 'ft', 1)],
      [table('rooms', [key('room'), entryColumn('width', 'ft', 1)])],
      `${at}.tables[0].columns[1].name: A column cannot be called “width”: a line or table is, ${at}.lines[0].`,
    ],
    [[], [table('rooms', [key('room'), key('place')])], `${at}.tables[0].columns[1]: A table has one key column.`],
  ])('%j %j', (lines, tables, fault) => {
    expect(laid([floor(lines, tables)]).faults).toEqual([fault]);
  });

  it('over the whole stack, parts with it', () => {
    const part = sheet('part', 'money', [section('money', [entry('wage', '$/h', 30)])]);
    const shop = sheet('shop', 'standard', [section('people', [entry('wage', '$/h', 25)])]);
    expect(laid([shop, system([{ use: 'money' }])], [part]).faults).toEqual([
      'part money: sections[0].lines[0]: The name “wage” stands already: shop standard: sections[0].lines[0].',
    ]);
  });

  it('fields of products too', () => {
    expect(laid([priceList, floor([entry('solids', '%', 1)])]).faults).toEqual([
      'pricelist list: sections[0].tables[0].columns[1].name: A column cannot be called “solids”: a line or table is, floor garage: sections[0].lines[0].',
    ]);
  });

  it('columns of different tables may share theirs', () => {
    const tables = ['rooms', 'stairs'].map((name) => table(name, [key('place'), entryColumn('width', 'ft', 1)]));
    expect(laid([floor([], tables)]).faults).toEqual([]);
  });

  it('a section’s id stands once in a sheet', () => {
    const part = sheet('part', 'money', [section('care')]);
    expect(laid([system([section('care'), { use: 'money' }])], [part]).faults).toEqual([
      'part money: The section “care” stands twice; the other is in system rolled.',
    ]);
  });
});

describe('a formula reads its own sheet and what lies below', () => {
  const shop = (text: string) =>
    sheet('shop', 'standard', [section('rates', [entry('wage', '$/h', 25), formula('answer', '$', text)])]);
  const rooms = table('rooms', [key('room'), entryColumn('cost', '$', 1)]);
  const measured = floor([entry('hours', 'h', 4), formula('labour', '$', 'hours * wage')], [rooms]);
  const above = 'lies above this one. A formula reads its own sheet and what lies below it.';

  it('a floor the shop, and a system both', () => {
    const own = system([section('own', [formula('both', '$', 'labour + wage * hours + SUM(rooms.cost)')])]);
    expect(laid([shop('0'), measured, own]).faults).toEqual([]);
  });

  it.each([
    ['hours * wage', `Character 1, “hours”: “hours” stands in the floor sheet, which ${above}`],
    ['SUM(rooms.cost)', `Character 5, “rooms.cost”: “rooms” stands in the floor sheet, which ${above}`],
  ])('but not the shop the floor: %s', (formulaText, reason) => {
    expect(laid([shop(formulaText), measured]).faults).toEqual([
      `shop standard: sections[0].lines[1].formula: ${reason}`,
    ]);
  });

  it('nor the floor a line of the system, in a row’s formula neither', () => {
    const reads = table(
      'areas',
      [key('area'), entryColumn('size', '$', 0, { perRow: true })],
      [{ area: 'bay', size: { formula: 'price' } }],
    );
    const reason = `Character 1, “price”: “price” stands in the system sheet, which ${above}`;
    expect(laid([floor([formula('share', '$', 'price')], [reads]), system([])]).faults).toEqual([
      `${at}.lines[0].formula: ${reason}`,
      `${at}.tables[0].start[0].size: ${reason}`,
    ]);
  });

  it('and no text or check', () => {
    const lines = [text('remark', 'x'), check('dry', '1 = 1'), formula('a', '1', 'remark'), formula('b', '1', 'dry')];
    expect(laid([floor(lines)]).faults).toEqual([
      `${at}.lines[2].formula: Character 1, “remark”: “remark” is free text, which no formula reads.`,
      `${at}.lines[3].formula: Character 1, “dry”: “dry” is a check, which no formula reads.`,
    ]);
  });
});

describe('a system defines the result lines', () => {
  it('all of them', () => {
    expect(laid([system([])]).faults).toEqual([]);
    expect(laid([sheet('system', 'bare', [])]).faults).toEqual(
      resultLines.map((name) => `system bare: The system lacks the result line “${name}”.`),
    );
  });

  it('each in its unit: paid hours in dollars are no hours', () => {
    const named = JSON.stringify(system([]));
    const dear: object = JSON.parse(named.replace(/("name":"paid_hours"[^}]*"unit":)"h"/, '$1"$$"'));
    expect(laid([dear]).faults).toEqual(['system rolled: The result line “paid_hours” must be in h.']);
  });

  it('and is told which are missing, with the nearest of its own', () => {
    const own = system([section('own', [formula('deposits', '$', '0')])], ['deposit', 'visits']);
    expect(laid([own]).faults).toEqual([
      'system rolled: The system lacks the result line “deposit”. There is “deposits”.',
      'system rolled: The system lacks the result line “visits”.',
    ]);
  });

  it('itself: a line of the floor does not count', () => {
    expect(laid([floor([entry('visits', 'visit', 2)]), system([], ['visits'])]).faults).toEqual([
      'system rolled: The system lacks the result line “visits”.',
    ]);
  });
});

describe('a part compiles alone against its needs', () => {
  const part = (needs: readonly object[], lines: readonly object[], more: readonly object[] = []) =>
    sheet(
      'part',
      'money',
      [
        section(
          'money',
          lines.map((line) => ({ ...line })),
        ),
        ...more.map((each) => ({ ...each })),
      ],
      { needs },
    );

  it('lines, codes, columns and products by name', () => {
    const needs = [
      { name: 'area', unit: 'ft2' },
      { name: 'finish', codes: ['matt', 'gloss'] },
      { name: 'coats.gallons', unit: 'gal' },
      { name: 'coats.product', kind: 'product', accepts: ['base'] },
      { name: 'sealer', kind: 'product', accepts: ['clear'] },
    ];
    const lines = [
      formula('half', 'ft2', 'IF(finish = "matt", area / 2, area)'),
      formula('resin', 'gal', 'SUM(coats.gallons)'),
      formula('slate', 'gal', 'SUMIFS(coats.gallons, coats.product, "base_slate")'),
      formula('solid', '%', 'sealer.solids'),
    ];
    expect(laid([priceList, part(needs, lines, [{ rowsFor: 'tasks', rows: [{ task: 'lay' }] }])]).faults).toEqual([]);
  });

  it('and what it does not need it does not know', () => {
    const at = 'part money: sections[0].lines[0].formula';
    expect(laid([part([{ name: 'area', unit: 'ft2' }], [formula('a', 'ft2', 'aria')])]).faults).toEqual([
      `${at}: Character 1, “aria”: There is nothing called “aria”. Did you mean “area”?`,
    ]);
    expect(
      laid([part([{ name: 'coats.gallons', unit: 'gal' }], [formula('a', 'gal', 'SUM(coats.galons)')])]).faults,
    ).toEqual([
      `${at}: Character 5, “coats.galons”: The table “coats” has no column “galons”. Did you mean “gallons”?`,
    ]);
    expect(laid([part([{ name: 'area', unit: 'ft2' }], [formula('a', 'ft', 'area')])]).faults).toEqual([
      `${at}: This gives a number in ft2, and a number in ft is declared.`,
    ]);
  });

  it('which say what they are, once', () => {
    const needs = [
      { name: 'area', unit: 'sqft' },
      { name: 'bare' },
      { name: 'both', unit: 'ft', codes: ['a'] },
      { name: 'sealer', kind: 'product', accepts: ['clar'] },
      { name: 'area', unit: 'ft2' },
    ];
    expect(laid([priceList, part(needs, [])]).faults).toEqual([
      'part money: needs[0].unit: No unit is called “sqft”: did you mean ft2?',
      'part money: needs[1]: “bare” needs one of “unit”, “codes” and “kind”.',
      'part money: needs[2]: “both” needs one of “unit”, “codes” and “kind”.',
      'part money: needs[3].accepts: There is no kind of product “clar”.',
      'part money: needs[4]: “area” is needed twice.',
    ]);
  });

  it('placed in a system it has no needs: what nobody gives is unknown', () => {
    const file = part([{ name: 'area', unit: 'ft2' }], [formula('a', 'ft2', 'area')]);
    expect(laid([system([{ use: 'money' }])], [file]).faults).toEqual([
      'part money: sections[0].lines[0].formula: Character 1, “area”: There is nothing called “area”.',
    ]);
    const given = floor([entry('area', 'ft2', 4), choice('finish', ['matt'], 'matt')]);
    expect(laid([given, system([{ use: 'money' }])], [file]).faults).toEqual([]);
  });
});
