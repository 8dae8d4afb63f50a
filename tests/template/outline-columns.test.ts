import { describe, expect, it } from 'vitest';
import { choiceColumn, entryColumn, floor, key, laid, table } from '../helpers/sheets.ts';

const at = 'floor garage: sections[0].tables[1].outline';
const columns = [entryColumn('of_area', '1', 1), entryColumn('across', 'ft', 0), entryColumn('along', 'ft', 0)];
const outline = {
  table: 'areas',
  shape: 'shape',
  code: 'corners',
  of: 'of_area',
  across: 'across',
  along: 'along',
};

/** Faults of a floor sheet whose corners say where outlines are. */
const faultsOf = (more: object) => {
  const areas = table('areas', [key('place'), choiceColumn('shape', ['rectangle', 'corners'], 'rectangle')]);
  return laid([floor([], [areas, table('corners', columns, [], { outline: { ...outline, ...more } })])]).faults;
};

describe('a table that holds corners of outlines', () => {
  it('names a table of its sheet, a choice of its shapes, and three numbers', () => {
    expect(faultsOf({})).toEqual([]);
  });

  it('is refused for a table, a choice or a column that is not there', () => {
    expect(faultsOf({ table: 'rooms' })).toEqual([`${at}: “rooms” is no table of this sheet.`]);
    expect(faultsOf({ shape: 'place' })).toEqual([`${at}: “place” is no choice column of “areas”.`]);
    expect(faultsOf({ code: 'circle' })).toEqual([`${at}: “circle” is not among the choices of “shape”.`]);
    expect(faultsOf({ along: 'depth' })).toEqual([`${at}: “depth” is no column of this table with the unit ft.`]);
  });

  it('is refused for places that are not in feet', () => {
    expect(faultsOf({ across: 'of_area' })).toEqual([`${at}: “of_area” is no column of this table with the unit ft.`]);
    expect(faultsOf({ of: 'across' })).toEqual([`${at}: “across” is no column of this table with the unit 1.`]);
  });
});
