import { describe, expect, it } from 'vitest';
import { checkFormula } from '../../src/formula/check.ts';
import type { Scope } from '../../src/formula/scope.ts';
import { checked, reasons, type ScopeParts, scopeOf, treeOf } from '../helpers/formula-scope.ts';

const parts: ScopeParts = {
  lines: {
    floor_area: 'ft2',
    film_constant: 'ft2*mil/gal',
    finish: { codes: ['matt', 'gloss'] },
    sealer: { products: ['clear'] },
  },
  tables: {
    coats: { coat: { codes: [] }, product: { products: ['base', 'clear'] }, gallons: 'gal', wet_mils: 'mil' },
    tasks: { hours: 'h' },
  },
  fields: { solids: { unit: '%', kinds: ['base', 'clear'] }, density: { unit: 'lb/gal', kinds: ['base'] } },
};
const inCoats = { ...parts, ownTable: 'coats' };

describe('a name means', () => {
  it.each([
    ['a line', 'floor_area', parts, { kind: 'line', name: 'floor_area' }],
    ['in a row a column of that row', 'gallons', inCoats, { kind: 'cell', column: 'gallons', row: 'same' }],
    ['in a row a line too', 'floor_area', inCoats, { kind: 'line', name: 'floor_area' }],
    ['the row above', 'above.gallons', inCoats, { kind: 'cell', column: 'gallons', row: 'above' }],
    ['a field of the row’s product', 'product.solids', inCoats, { kind: 'productField', field: 'solids' }],
    ['a field of a product line', 'sealer.solids', parts, { kind: 'productField', field: 'solids' }],
  ])('%s: %s', (_, text, scope, wanted) => {
    const { tree, faults } = checked(text, scope);
    expect(faults).toEqual([]);
    expect(tree).toMatchObject(wanted);
  });
});

describe('an unknown name is told with the nearest one', () => {
  it.each([
    ['flor_area * 2', 'There is nothing called “flor_area”. Did you mean “floor_area”?'],
    ['wholly_other', 'There is nothing called “wholly_other”.'],
    ['SUM(coats.galons)', 'The table “coats” has no column “galons”. Did you mean “gallons”?'],
    ['SUM(coat.gallons)', 'There is nothing called “coat”. Did you mean “coats”?'],
    ['coats * 2', '“coats” is a table. Name one of its columns, as in SUM(coats.coat).'],
    ['sealer.solid', 'Products have no field “solid”. Did you mean “solids”?'],
    ['sealer.density', 'Products of the kind clear have no field “density”.'],
    ['floor_area.solids', 'Only a product has fields.'],
    ['finish.solids', 'Only a product has fields.'],
    ['above.gallons', '“above” stands only in a column of a table.'],
    ['SUMM(coats.gallons)', 'There is no function SUMM. Did you mean SUM?'],
    ['VLOOKUP(1)', 'There is no function VLOOKUP.'],
    ['gallons', 'There is nothing called “gallons”.'],
  ])('%s', (text, reason) => {
    expect(reasons(text, parts)).toEqual([reason]);
  });

  it.each([
    ['above.galons', 'The table “coats” has no column “galons”. Did you mean “gallons”?'],
    ['SUM(above(hours))', 'The table “coats” has no column “hours”.'],
  ])('in a row: %s', (text, reason) => {
    expect(reasons(text, inCoats)).toEqual([reason]);
  });

  it.each(['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'valueOf'])('also “%s”', (name) => {
    expect(reasons(name, parts)).toEqual([`There is nothing called “${name}”.`]);
    expect(reasons(`${name}(1)`, parts)).toEqual([`There is no function ${name.toUpperCase()}.`]);
    expect(reasons(`${name}.${name}`, parts)).toEqual([`There is nothing called “${name}”.`]);
    expect(reasons(`SUM(coats.${name})`, parts)).toEqual([`The table “coats” has no column “${name}”.`]);
    expect(reasons(`sealer.${name}`, parts)).toEqual([`Products have no field “${name}”.`]);
  });

  it('but not looked for when it is longer than names are', () => {
    expect(reasons('x'.repeat(61), { lines: { ['x'.repeat(60)]: '1' } })).toEqual([
      `There is nothing called “${'x'.repeat(61)}”.`,
    ]);
  });
});

it('in a row’s own formula and in row one there is no row above', () => {
  const reason = '“above” cannot stand here: the first row has none above it.';
  expect(reasons('above.gallons', { ...inCoats, mayReadAbove: false })).toEqual([reason]);
  expect(reasons('SUM(above(gallons))', { ...inCoats, mayReadAbove: false })).toEqual([reason]);
});

describe('what a scope says of a name is told', () => {
  const base = scopeOf(parts);
  const told = (text: string, scope: Scope) =>
    checkFormula(treeOf(text), scope).faults.map(({ kind, reason }) => `${kind}: ${reason}`);

  it('a line of a sheet above', () => {
    const scope: Scope = { ...base, line: () => ({ kind: 'tooHigh', stands: 'system' }) };
    expect(told('price', scope)).toEqual([
      'name: “price” stands in the system sheet, which lies above this one. A formula reads its own sheet and what lies below it.',
    ]);
  });

  it('free text', () => {
    const scope: Scope = { ...base, line: () => ({ kind: 'unreadable', what: 'free text' }) };
    expect(told('best_for', scope)).toEqual(['name: “best_for” is free text, which no formula reads.']);
  });

  it('a column whose rows have different units, which only its own row reads', () => {
    const quantity = { kind: 'mixedUnits', type: { kind: 'faulty' } } as const;
    const tasks = { column: () => quantity, columnNames: ['quantity'] };
    const scope: Scope = { ...base, table: () => tasks, ownTable: 'tasks' };
    const whole = 'type: The rows of tasks.quantity have different units, so the column cannot be read as a whole.';
    expect(told('quantity', scope)).toEqual([]);
    expect(told('SUM(tasks.quantity)', scope)).toEqual([whole]);
    expect(told('SUM(above(quantity))', scope)).toEqual([whole]);
    expect(told('above.quantity', scope)).toEqual([
      'type: The row above may have another unit in quantity, so it cannot be read from here.',
    ]);
  });

  it('nothing of what was refused elsewhere', () => {
    const faulty = { kind: 'faulty' } as const;
    const broken = { column: () => ({ kind: 'column', type: faulty }) as const, columnNames: [] };
    const scope: Scope = { ...base, table: () => broken, line: () => ({ kind: 'line', type: faulty }) };
    for (const text of ['broken + 1', 'IF(broken, broken, "a")', 'broken.solids * 2', 'SUM(broken.x) = "a"', '-broken'])
      expect(told(text, scope)).toEqual([]);
  });
});
