import { describe, expect, it } from 'vitest';
import { isCode } from '../../src/formula/code-text.ts';
import type { RowFile } from '../../src/template/line-schema.ts';
import { codeOfWords, withRowCodes } from '../../src/template/row-names.ts';
import { entryColumn, floor, formula, key, laid, table } from '../helpers/sheets.ts';

describe('the code of what people call a place', () => {
  it.each([
    ['Bay', 'bay'],
    ['Bay 2, left', 'bay_2_left'],
    ['  Größe Süd ', 'grosse_sud'],
    ['Façade – Ærø', 'facade_aero'],
    ['2nd bay', 'place_2nd_bay'],
    ['True', 'place_true'],
    ['車庫', 'place'],
    ['!?', 'place'],
    ['x'.repeat(80), 'x'.repeat(50)],
  ])('%s is %s', (words, code) => {
    expect(codeOfWords(words, 'place')).toBe(code);
    expect(isCode(code)).toBe(true);
  });
});

describe('rows that people name', () => {
  const codes = (...places: string[]) =>
    withRowCodes(
      places.map((place) => ({ cells: { place } as RowFile })),
      'place',
    ).map(({ cells }) => [cells['place'], cells['label']]);

  it('keep their words, and codes stay as they are given', () => {
    expect(codes('Bay', 'stem_wall', 'Lip of the door')).toEqual([
      ['bay', 'Bay'],
      ['stem_wall', undefined],
      ['lip_of_the_door', 'Lip of the door'],
    ]);
  });

  it('of one name have a number behind their code, and leave the codes alone that are given', () => {
    expect(codes('Bay', 'bay', 'bay_2', 'BAY').map(([code]) => code)).toEqual(['bay_3', 'bay', 'bay_2', 'bay_4']);
  });

  it('keep a label that they give themselves', () => {
    const [row] = withRowCodes([{ cells: { place: 'Bay', label: 'The bay' } }], 'place');
    expect(row?.cells).toEqual({ place: 'bay', label: 'The bay' });
  });
});

describe('a sheet whose rows have names', () => {
  const areas = (start: readonly object[], more: object = {}) =>
    table('areas', [key('place'), entryColumn('length', 'ft', 0)], start as readonly Record<string, unknown>[], {
      ...more,
    });
  const bay = formula('bay_length', 'ft', 'INDEX(areas.length, MATCH("bay", areas.place, 0))');

  it('finds them by their codes', () => {
    const sheet = laid([
      floor(
        [bay],
        [
          areas([
            { place: 'Lip', length: 1 },
            { place: 'Bay', length: 24 },
          ]),
        ],
      ),
    ]);
    expect(sheet.faults).toEqual([]);
    expect(sheet.value('bay_length')).toBe(24);
    expect(sheet.plan.rows.get('areas')).toMatchObject([
      { id: 'lip', label: 'Lip' },
      { id: 'bay', label: 'Bay' },
    ]);
  });

  it('takes no name without words, and none in rows that are fixed', () => {
    expect(laid([floor([], [areas([{ place: ' ' }])])]).faults).toHaveLength(1);
    expect(laid([floor([], [areas([{ place: 'Bay' }], { rows: 'fixed' })])]).faults).toEqual([
      'floor garage: sections[0].tables[0].start[0].place: A key is a code: lower-case letters, digits and underscores.',
    ]);
  });

  it('takes the names of rows that a quote adds, and other names for those that it has', () => {
    const entries = {
      lines: new Map(),
      tables: new Map([
        [
          'areas',
          {
            order: ['bay', 'row_2', 'row_3'],
            added: new Map([
              ['row_2', { place: 'Bay', length: 3 }],
              ['row_3', { place: 'Apron' }],
            ]),
            cells: new Map([['bay', new Map([['place', { kind: 'written', value: 'Main floor' } as const]])]]),
          },
        ],
      ]),
    };
    const sheet = laid([floor([bay], [areas([{ place: 'bay', length: 24 }])])], [], entries);
    expect(sheet.faults).toEqual([]);
    expect(sheet.value('bay_length')).toBe(24);
    expect(sheet.plan.rows.get('areas')?.map(({ label }) => label)).toEqual(['Main floor', 'Bay', 'Apron']);
    expect(sheet.column('areas', 'place')).toEqual(['bay', 'bay_2', 'apron']);
  });
});
