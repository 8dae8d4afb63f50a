import { describe, expect, it } from 'vitest';
import { choiceColumn, entry, entryColumn, key, laid, section, sheet, table } from '../helpers/sheets.ts';

const shop = sheet('shop', 'standard', [section('rates', [entry('wage', '$/h', 25)])]);
const areas = table('areas', [key('place'), entryColumn('length', 'ft', 0), choiceColumn('shape', ['round'], 'round')]);

function faultsOf(ask: Readonly<Record<string, unknown>>): readonly string[] {
  const measure = section('measure', [entry('cracks', 'ft', 0)], [areas]);
  return laid([shop, sheet('floor', 'garage', [measure], { asks: [{ id: 'first', label: 'First', ...ask }] })]).faults;
}

describe('a question of the first minute', () => {
  it('may ask for entries of its own sheet', () => {
    expect(faultsOf({ kind: 'fields', lines: ['cracks'] })).toEqual([]);
  });

  it('asks for no entry of the sheet below, which its answer could not reach', () => {
    expect(faultsOf({ kind: 'fields', lines: ['wage'] })).toEqual([
      'asks[0] (first): wage: There is no entry “wage” in this sheet.',
    ]);
  });

  it('clears entries of its sheet and tables that may be empty, and keeps entries; nothing else', () => {
    const cleared = (names: object) => ({
      kind: 'sizes',
      table: 'areas',
      choices: [{ label: 'One', rows: [], ...names }],
    });
    expect(faultsOf(cleared({ clears: ['cracks', 'areas'], keeps: ['cracks'] }))).toEqual([]);
    expect(faultsOf(cleared({ clears: ['wage'], keeps: ['areas'] }))).toEqual([
      'asks[0] (first): wage: “wage” is no entry of this sheet, and no table of it that may be empty.',
      'asks[0] (first): areas: There is no entry “areas” in this sheet.',
    ]);
  });

  it('replaces the rows of a free table of its sheet, naming columns that are there', () => {
    const sized = (cells: object) => ({ kind: 'sizes', table: 'areas', choices: [{ label: 'One', rows: [cells] }] });
    expect(faultsOf(sized({ place: 'bay', label: 'Bay', length: 20 }))).toEqual([]);
    expect(faultsOf(sized({ place: 'bay', lenght: 20 }))).toEqual([
      'asks[0] (first): areas.lenght: The table “areas” has no column “lenght”. Did you mean “length”?',
    ]);
  });

  it('is asked on a condition over its sheet and what lies below, which is read as any formula', () => {
    const asked = (when: string) => faultsOf({ kind: 'fields', lines: ['cracks'], when });
    expect(asked('AND(cracks > 0, wage > 0, COUNT(areas.length) > 0)')).toEqual([]);
    expect(asked('craks > 0')).toEqual([
      'asks[0] (first).when: Character 1, “craks”: There is nothing called “craks”. Did you mean “cracks”?',
    ]);
    expect(asked('cracks')).toEqual(['asks[0] (first).when: This gives a number in ft, and a condition is declared.']);
  });

  it('has an id of its own', () => {
    const ask = { id: 'first', label: 'First', kind: 'fields', lines: ['cracks'] };
    const measure = section('measure', [entry('cracks', 'ft', 0)], [areas]);
    expect(laid([shop, sheet('floor', 'garage', [measure], { asks: [ask, ask] })]).faults).toEqual([
      'asks[1]: There is a question “first” already.',
    ]);
  });
});
