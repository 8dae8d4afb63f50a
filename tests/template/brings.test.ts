import { describe, expect, it } from 'vitest';
import { entryColumn, key, laid, priceList, section, sheet, system, table } from '../helpers/sheets.ts';

const source = 'made up for this test';
const lays = { name: 'lays', label: 'Lays', rowOf: 'coats', default: 'none', source };
const over = { name: 'over', label: 'Done to', rowOf: 'coats', default: 'none', source };
const perRow = (name: string, unit: string, standard: number) => ({
  ...entryColumn(name, unit, standard),
  perRow: true,
});

const hours = sheet('part', 'hours', [
  section(
    'hours',
    [],
    [
      table(
        'tasks',
        [key('task'), perRow('share', '1', 1), entryColumn('visit', '1', 1), lays, over],
        [{ task: 'vacuum' }],
      ),
    ],
  ),
]);

const layRow = {
  task: 'lay_{coat}',
  label: '{label}',
  share: { formula: 'INDEX(coats.include, MATCH("{coat}", coats.coat, 0), 1)' },
  lays: '{coat}',
  over: '{above}',
};

const coatsWith = (
  brings: object,
  columns: readonly Readonly<Record<string, unknown>>[] = [key('coat'), entryColumn('include', '1', 1)],
) => sheet('part', 'coats', [section('coats', [], [{ ...table('coats', columns), brings: [brings] }])]);

const faults = (brings: object) =>
  laid([priceList, system([{ use: 'coats' }, { use: 'hours' }])], [hours, coatsWith(brings)]).faults.map((fault) =>
    fault.replace('part coats: sections[0].tables[0].', ''),
  );

describe('a table that brings rows of another', () => {
  it('is well with the row’s code, the one above and its words in texts and formulas', () => {
    expect(faults({ table: 'tasks', aboveIf: 'include', asAbove: ['visit'], rows: [layRow] })).toEqual([]);
  });

  it('stands alone as a part, though the other table is of another part', () => {
    expect(laid([priceList, coatsWith({ table: 'tasks', rows: [layRow] })]).faults).toEqual([]);
  });

  const row = (cells: object) => faults({ table: 'tasks', rows: [{ ...layRow, ...cells }] });

  it.each([
    [
      'a table that is not there',
      faults({ table: 'task', rows: [layRow] }),
      ['brings[0]: There is no table “task” in this sheet. Did you mean “tasks”?'],
    ],
    [
      'its own table',
      faults({ table: 'coats', rows: [layRow] }),
      ['brings[0]: “coats” is no other table of this sheet that is free and has a key.'],
    ],
    [
      'a code that every coat would share',
      row({ task: 'lay' }),
      ['brings[0].rows[0].task: The code of a row that comes with another has “{coat}” in it.'],
    ],
    [
      'a code that changes with the coat above',
      row({ task: 'lay_{coat}_{above}' }),
      ['brings[0].rows[0].task: The code of a row that comes with another has “{coat}” in it.'],
    ],
    [
      'a hole that is filled with nothing',
      row({ label: 'Lay {coats}' }),
      ['brings[0].rows[0].label: There is no “{coats}” here; there are {coat}, {above} and {label}.'],
    ],
    [
      'a column that the table lacks',
      row({ vist: 2 }),
      ['brings[0].rows[0].vist: The table “tasks” has no column “vist”. Did you mean “visit”?'],
    ],
    [
      'a formula where none may stand',
      row({ visit: { formula: '1' } }),
      ['brings[0].rows[0].visit: A row gives no formula for “visit”.'],
    ],
    [
      'a formula that is wrong',
      row({ share: { formula: 'coats.include' } }),
      [expect.stringMatching(/^brings\[0\]\.rows\[0\]\.share: .*coats\.include/)],
    ],
    ['a coat that nobody has', row({ lays: 'primer' }), [expect.stringMatching(/^brings\[0\]\.rows\[0\]\.lays: /)]],
    ['words for a number', row({ visit: '{above}' }), [expect.stringMatching(/^brings\[0\]\.rows\[0\]\.visit: /)]],
    [
      '“asAbove” of what no row gives',
      faults({ table: 'tasks', asAbove: ['task'], rows: [layRow] }),
      ['brings[0].asAbove[0]: “task” is no column of “tasks” that a row gives.'],
    ],
    [
      '“aboveIf” of what is no entry',
      faults({ table: 'tasks', aboveIf: 'coat', rows: [layRow] }),
      ['brings[0].aboveIf: “coat” is no entry of “coats”.'],
    ],
    [
      'a property that there is not',
      faults({ table: 'tasks', rows: [layRow], with: 1 }),
      [expect.stringMatching(/with/)],
    ],
  ])('is refused with %s', (_, told, expected) => {
    expect(told).toEqual(expected);
  });

  it('has a key of its own', () => {
    const coats = coatsWith({ table: 'tasks', rows: [layRow] }, [entryColumn('include', '1', 1)]);
    expect(laid([priceList, coats]).faults).toEqual([
      'part coats: sections[0].tables[0].brings[0]: Rows that bring others are of a free table with a key.',
    ]);
  });
});
