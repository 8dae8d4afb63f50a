import { describe, expect, it } from 'vitest';
import { closuresOf } from '../../src/formula/closures.ts';
import { noEntries, type StackEntries } from '../../src/template/entries.ts';
import { planOption } from '../../src/template/plan.ts';
import { readSheet } from '../../src/template/read-sheet.ts';
import type { SheetFile } from '../../src/template/sheet-schema.ts';
import { stackOf } from '../../src/template/stack-of.ts';
import { entry, entryColumn, formula, key, priceList, section, sheet, system, table, text } from '../helpers/sheets.ts';

type Json = Readonly<Record<string, unknown>>;

function fileOf(json: object): SheetFile {
  const { sheet: file, faults } = readSheet(JSON.stringify(json));
  if (file === undefined || faults.length > 0) throw new Error(JSON.stringify(faults));
  return file;
}

const wage = { was: ['labour_price', 'pay'] };
const width = { was: ['breadth'] };

/** A shop whose `wage` was `labour_price`, a floor whose areas had a `breadth`, and a part of old names in a system of such. */
function stacked(
  more: { wage?: Json; width?: Json; floorLines?: readonly Json[] } = {},
  entries: StackEntries = noEntries,
) {
  const shop = sheet('shop', 'standard', [
    section('rates', [entry('wage', '$/h', 30, more.wage ?? wage), formula('day_wage', '$/h', 'labour_price * 2')]),
  ]);
  const areas = table(
    'areas',
    [
      key('place'),
      entryColumn('length', 'ft', 0),
      entryColumn('width', 'ft', 10, more.width ?? width),
      { name: 'area', label: 'area', unit: 'ft2', formula: 'length * breadth' },
      { name: 'so_far', label: 'so far', unit: 'ft', formula: 'above.breadth + SUM(above(breadth))', first: 'breadth' },
    ],
    [
      { place: 'bay', length: 4, breadth: 5 },
      { place: 'stem', length: 3 },
    ],
  );
  const floor = sheet(
    'floor',
    'garage',
    [section('measure', [formula('floor_width', 'ft', 'SUM(areas.breadth)'), ...(more.floorLines ?? [])], [areas])],
    {
      asks: [
        { kind: 'toggle', id: 'wide', label: 'Wide', on: { 'areas.bay.breadth': 9 }, off: { 'areas.bay.breadth': 5 } },
      ],
    },
  );
  const part = sheet(
    'part',
    'work',
    [section('work', [entry('crew', 'person', 1, { was: ['people'] }), text('told', 'At {pay} with {people}.')])],
    {
      needs: [
        { name: 'pay', unit: '$/h' },
        { name: 'areas.breadth', unit: 'ft' },
      ],
    },
  );
  const rolled = system([
    { use: 'work', set: { people: 3 } },
    section('own', [formula('hour_cost', '$/h', 'pay * people')]),
  ]);
  const files = { priceList: fileOf(priceList), shop: fileOf(shop), floor: fileOf(floor), system: fileOf(rolled) };
  const { stack, faults, notices } = stackOf(files, new Map([['work', fileOf(part)]]));
  const told = faults.map(({ path, reason }) => `${path}: ${reason}`);
  if (told.length > 0) return { faults: told, notices, value: () => undefined };
  const planned = planOption(stack, entries, new Map());
  if (planned.faults.length > 0) throw new Error(JSON.stringify(planned.faults));
  const closures = closuresOf(planned.plan, planned.graph);
  const value = (name: string) => closures.value(planned.plan.lines.get(name) ?? -1);
  return { faults: told, notices, value };
}

describe('a sheet that calls things as they were called before', () => {
  it('compiles to the same numbers: formulas, rows, what a system sets, what a part needs', () => {
    const { faults, value } = stacked();
    expect(faults).toEqual([]);
    expect(value('day_wage')).toBe(60);
    expect(value('hour_cost')).toBe(90);
    expect(value('floor_width')).toBe(15);
  });

  it('tells each former name once a sheet, with what it is called now', () => {
    const { notices } = stacked();
    expect(notices.map(({ path, reason }) => `${path}: ${reason}`)).toEqual(
      expect.arrayContaining([
        'shop standard: “labour_price” is called “wage” now.',
        'floor garage: “breadth” is called “width” now.',
        'system rolled: “people” is called “crew” now.',
        'part work: “pay” is called “wage” now.',
      ]),
    );
    expect(new Set(notices.map((notice) => JSON.stringify(notice))).size).toBe(notices.length);
  });

  it('counts what a quote entered under a former name, unless it has one under the present', () => {
    const value = (amount: number) => ({ kind: 'value', value: amount }) as const;
    const cells = new Map([['bay', new Map([['breadth', value(20)]])]]);
    const added = new Map([['shed', { place: 'shed', breadth: 2 }]]);
    const areas = { order: ['bay', 'shed'], added, cells };
    const quoted = stacked({}, { lines: new Map([['pay', value(40)]]), tables: new Map([['areas', areas]]) });
    expect([quoted.value('day_wage'), quoted.value('floor_width')]).toEqual([80, 22]);
    const both = stacked(
      {},
      {
        lines: new Map([
          ['wage', value(50)],
          ['pay', value(40)],
        ]),
        tables: new Map(),
      },
    );
    expect(both.value('day_wage')).toBe(100);
  });
});

describe('a former name stands for one thing', () => {
  it('is refused where it is a living name', () => {
    const { faults } = stacked({
      width: { was: ['breadth', 'length'] },
      wage: { was: ['labour_price', 'pay', 'areas'] },
    });
    expect(faults).toEqual([
      'shop standard: sections[0].lines[0].was: “areas” is a living name: the table areas.',
      expect.stringMatching(/columns\[2\]\.was: “length” is a living name: floor garage: /),
    ]);
  });

  it('is refused where two claim it', () => {
    const { faults } = stacked({ floorLines: [entry('light', '1', 1, { was: ['pay'] })] });
    expect(faults).toEqual([
      'floor garage: sections[0].lines[1].was: “pay” is claimed as a former name already: shop standard: sections[0].lines[0].',
    ]);
  });
});
