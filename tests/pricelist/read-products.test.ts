import { describe, expect, it } from 'vitest';
import { type PriceField, readProducts } from '../../src/pricelist/read-products.ts';
import { parseUnit, type Unit } from '../../src/units/unit.ts';

function unit(text: string): Unit {
  const read = parseUnit(text);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.unit;
}

const fields: readonly PriceField[] = [
  { name: 'pack_gallons', unit: unit('gal'), kinds: ['base'] },
  { name: 'solids', unit: unit('%'), kinds: ['base'], limits: [0.05, 1] },
  { name: 'pack_price', unit: unit('$') },
  { name: 'chemistry', codes: ['epoxy', 'aspartic'], kinds: ['base'] },
];
const kinds = ['base', 'flake'];
const header = 'product,kind,name,pack_gallons,solids,pack_price,chemistry';

function faults(...lines: readonly string[]): string[] {
  return readProducts([header, ...lines].join('\n'), fields, kinds).faults.map(
    ({ line, column, reason }) => `${line} ${column}: ${reason}`,
  );
}

describe('a price list', () => {
  it('reads a 3 gal kit of 97 % solids at $1,135.50', () => {
    const { products, faults: none } = readProducts(
      `${header}\nbase_grey,base,"Base, grey",3,0.97,"$1,135.50",epoxy`,
      fields,
      kinds,
    );
    expect(none).toEqual([]);
    expect(products.get('base_grey')).toEqual({
      product: 'base_grey',
      kind: 'base',
      name: 'Base, grey',
      fields: { pack_gallons: 3, solids: 0.97, pack_price: 1135.5, chemistry: 'epoxy' },
    });
  });

  it('refuses solids of 97 as a fraction, which are 9,700 %', () => {
    expect(faults('base_grey,base,Base,3,97,10,epoxy')).toEqual([
      '2 solids: “solids” must lie between 5 and 100 %; 9,700 % does not.',
    ]);
  });

  it('names the line of a fault as an editor counts it, past a blank line and a line break in quotes', () => {
    expect(faults('a,base,"two\nlines",3,0.9,10,epoxy', '', 'b,base,b,three,0.9,10,epoxy')).toEqual([
      expect.stringMatching(/^5 pack_gallons: /),
    ]);
  });

  it('tells a misspelt kind once, with the nearest, and nothing of its fields', () => {
    expect(faults('a,bsae,a,3,0.9,10,epoxy')).toEqual([
      '2 kind: There is no kind of product “bsae”. Did you mean “base”?',
    ]);
  });

  it('leaves no number out: an empty price is a fault, not 0', () => {
    expect(faults('a,base,a,3,0.9,,epoxy')).toHaveLength(1);
  });

  it('refuses a field that the kind has not, a code that is none, and a product that stands twice', () => {
    expect(faults('f,flake,f,3,,10,')).toEqual([expect.stringMatching(/no “pack_gallons”/)]);
    expect(faults('F-1,flake,f,,,10,')).toEqual([expect.stringMatching(/not a code/)]);
    expect(faults('f,flake,f,,,10,', 'f,flake,f,,,12,')).toEqual([expect.stringMatching(/^3 product: .*twice/)]);
  });

  it('refuses a header with an unknown column, naming the nearest, and one called __proto__', () => {
    const read = (first: string) => readProducts(`${first}\n`, fields, kinds).faults.map((fault) => fault.reason);
    expect(read('product,kind,name,pack_galons')).toEqual([
      'There is no field “pack_galons”. Did you mean “pack_gallons”?',
    ]);
    expect(read('product,kind,name,__proto__')).toHaveLength(1);
    expect(read('kind,name')).toEqual(['The header lacks the column “product”.']);
  });

  it('says that an empty file is empty', () => {
    expect(readProducts('', fields, kinds).faults).toHaveLength(1);
  });
});
