import { describe, expect, it } from 'vitest';
import { functionNames } from '../../src/formula/checked-tree.ts';
import { functionSignatures } from '../../src/formula/function-signatures.ts';
import { checked, reasons, type ScopeParts } from '../helpers/formula-scope.ts';

const parts: ScopeParts = {
  lines: { area: 'ft2', share: '1' },
  tables: { coats: { coat: { codes: ['base'] }, gallons: 'gal', mils: 'mil' } },
  ownTable: 'coats',
};

describe('a column used as one value', () => {
  it.each([
    ['coats.gallons * 2', '“coats.gallons” is a whole column, not one value. Did you mean SUM(coats.gallons)?'],
    ['above(gallons)', '“above(gallons)” is a whole column, not one value. Did you mean SUM(above(gallons))?'],
    ['coats.coat = "base"', '“coats.coat” is a whole column, not one value. Look one up with INDEX(coats.coat, …).'],
    ['ROUND(coats.gallons, 0)', '“coats.gallons” is a whole column, not one value. Did you mean SUM(coats.gallons)?'],
    ['SUM(2 * coats.gallons)', '“coats.gallons” is a whole column, not one value. Did you mean SUM(coats.gallons)?'],
    [
      'SUMIFS(coats.gallons, coats.mils, coats.mils)',
      '“coats.mils” is a whole column, not one value. Did you mean SUM(coats.mils)?',
    ],
  ])('%s is refused with what may be meant', (text, reason) => {
    expect(reasons(text, parts)).toEqual([reason]);
  });

  it.each([
    ['SUMPRODUCT(coats.gallons, 2)', 'SUMPRODUCT takes a whole column here, as in table.column.'],
    ['INDEX(gallons, 1)', 'INDEX takes a whole column here, as in table.column.'],
    ['COUNTIFS(coat, "base")', 'COUNTIFS takes a whole column here, as in table.column.'],
  ])('%s wants one', (text, reason) => {
    expect(reasons(text, parts)).toEqual([reason]);
  });
});

describe('the number of arguments', () => {
  it.each([
    ['IF(share = 1, 1)', 'IF takes 3 arguments, and 2 are given.'],
    ['NOT(share = 1, share = 2)', 'NOT takes 1 argument, and 2 are given.'],
    ['PI(1)', 'PI takes 0 arguments, and 1 are given.'],
    ['ABS()', 'ABS takes 1 argument, and 0 are given.'],
    ['ROUND(1)', 'ROUND takes 2 arguments, and 1 are given.'],
    ['INDEX(coats.gallons)', 'INDEX takes 2 to 3 arguments, and 1 are given.'],
    ['SUM()', 'SUM takes 1 to 30 arguments, and 0 are given.'],
    [
      'SUMIFS(coats.gallons, coats.coat, "base", coats.mils)',
      'SUMIFS takes a column and its criterion in pairs, and 4 arguments are given.',
    ],
    [
      'SWITCH(coat, "base", 1, 0)',
      'SWITCH takes a choice, and then a code and its arm in pairs, and 4 arguments are given.',
    ],
    [
      'COUNTIFS(coats.coat, "base", coats.mils)',
      'COUNTIFS takes a column and its criterion in pairs, and 3 arguments are given.',
    ],
  ])('%s is refused', (text, reason) => {
    expect(reasons(text, parts)).toEqual([reason]);
  });

  it.each(functionNames)('of %s is told when it is 40', (name) => {
    const args = Array.from({ length: 40 }, (_, place) =>
      functionSignatures[name].column(place) === 'must' ? 'coats.gallons' : '0',
    );
    const told = reasons(`${name}(${args.join(', ')})`, parts);
    expect(told).toEqual([expect.stringMatching(`^${name} takes .*, and 40 (arguments )?are given\\.$`)]);
  });
});

describe('faults are told', () => {
  it('names, then columns, then types, then the number of arguments, whatever their place', () => {
    const { faults } = checked('ABS(1, 2) + (area + 1) * coats.gallons + nothing', parts);
    expect(faults.map((fault) => fault.kind)).toEqual(['name', 'column', 'type', 'arguments']);
  });

  it('of one kind from left to right', () => {
    const { faults } = checked('first_one + second_one', parts);
    expect(faults.map((fault) => fault.at.start)).toEqual([0, 12]);
  });

  it('at their place', () => {
    const text = 'area * (share + area)';
    const [fault] = checked(text, parts).faults;
    expect(text.slice(fault?.at.start, fault?.at.end)).toBe('share + area');
  });

  it('once: what follows from a fault is not told', () => {
    expect(reasons('(area + 1) * 2 + share = "base"', parts)).toHaveLength(1);
    expect(reasons('SUM(nothing, area) + area', parts)).toHaveLength(1);
    expect(reasons('IF(nothing, area, 1)', parts)).toHaveLength(2);
  });
});
