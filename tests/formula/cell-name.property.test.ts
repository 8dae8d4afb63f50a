import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type CellName,
  cellName,
  columnName,
  lineOrTableOf,
  namePatterns,
  parseCellName,
  placeText,
  printCellName,
} from '../../src/formula/cell-name.ts';

const word = fc.stringMatching(/^[a-z][a-z0-9_]{0,8}$/);
const row = fc.stringMatching(/^[a-z][a-z0-9_-]{0,8}$/);
const anyName: fc.Arbitrary<CellName> = fc.oneof(
  fc.record({ kind: fc.constant('line' as const), line: word }),
  fc.record({ kind: fc.constant('column' as const), table: word, column: word }),
  fc.record({ kind: fc.constant('cell' as const), table: word, row, column: word }),
);

describe('names as people write them', () => {
  it('what is printed reads back as the same line, column or cell', () => {
    fc.assert(
      fc.property(anyName, (name) => {
        expect(parseCellName(printCellName(name))).toEqual(name);
      }),
    );
  });

  it('what reads as a name prints as it was written, and only a name of more than three parts does not read', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom('a', 'b', '_', '1', '.', ' ', '-') }), (text) => {
        const read = parseCellName(text);
        if (read === undefined) expect(text.match(/\./g)?.length).toBeGreaterThan(2);
        else expect(printCellName(read)).toBe(text);
        expect(text.startsWith(lineOrTableOf(text))).toBe(true);
      }),
    );
  });

  it('a file may write a name where its form is wanted, and no other form', () => {
    const forms = { line: ['lineOrColumn', 'lineOrCell'], column: ['column', 'lineOrColumn'], cell: ['lineOrCell'] };
    fc.assert(
      fc.property(anyName, (name) => {
        const fits = (['column', 'lineOrColumn', 'lineOrCell'] as const).filter((form) =>
          namePatterns[form].test(printCellName(name)),
        );
        expect(fits).toEqual(forms[name.kind]);
      }),
    );
  });

  it('the gallons of the base coat stand in a line, a column and a cell', () => {
    expect(parseCellName('price')).toEqual({ kind: 'line', line: 'price' });
    expect(columnName('coats', 'gallons')).toBe('coats.gallons');
    expect(cellName('coats', 'base', 'gallons')).toBe('coats.base.gallons');
    expect(lineOrTableOf('coats.base.gallons')).toBe('coats');
    expect(placeText({ kind: 'cell', table: 'coats', column: 'gallons', row: 1 })).toBe('coats.gallons row 2');
  });
});
