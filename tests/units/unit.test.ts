import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  differenceUnit,
  divideUnits,
  isPoint,
  multiplyUnits,
  one,
  parseUnit,
  powerOfUnit,
  prettyUnit,
  rootOfUnit,
  sameUnit,
  type Unit,
  unitText,
} from '../../src/units/unit.ts';
import { atomsByName } from '../../src/units/unit-table.ts';

function unit(text: string): Unit {
  const read = parseUnit(text);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.unit;
}

function reasonFor(text: string): string {
  const read = parseUnit(text);
  return read.kind === 'fault' ? read.reason : `read as ${read.unit.text}`;
}

describe('reading a unit', () => {
  it('reads ft2*mil/gal as ft 2, gal -1, mil 1, sorted', () => {
    expect([...unit('mil*ft2/gal').powers]).toEqual([
      ['ft', 2],
      ['gal', -1],
      ['mil', 1],
    ]);
    expect(unit('mil*ft2/gal').text).toBe('ft2*mil/gal');
  });

  it.each([
    ['$/h', '$/h'],
    ['lb/ft2', 'lb/ft2'],
    ['1', '1'],
    ['1/h', '1/h'],
    ['$/ft2/yr', '$/ft2/yr'],
    ['ft*ft', 'ft2'],
    ['ft/ft', '1'],
    ['gal/gal/h', '1/h'],
    ['ddegF', 'ddegF'],
    ['degF', 'degF'],
    ['date', 'date'],
    ['visit', '1'],
    ['$/crew_day', '$'],
    ['%', '1'],
  ])('writes %s canonically as %s', (text, canonical) => {
    expect(unitText(unit(text))).toBe(canonical);
  });

  it('keeps the display names of 1 in the declared text, and out of the powers', () => {
    expect(unit('$/crew_day').text).toBe('$/crew_day');
    expect([...unit('$/crew_day').powers]).toEqual([['$', 1]]);
  });

  it('reads a/b/c as a over b times c', () => {
    expect(sameUnit(unit('lb/ft2/h'), divideUnits(unit('lb'), multiplyUnits(unit('ft2'), unit('h'))))).toBe(true);
  });

  it.each([
    ['galon', 'did you mean gal?'],
    ['sqft', 'did you mean ft2?'],
    ['hours', 'did you mean h?'],
    ['zebra', 'No unit is called “zebra”.'],
    ['$/hr', 'did you mean h?'],
    ['degF/h', 'use ddegF for a difference'],
    ['$/date', 'use d for a difference'],
    ['degF2', 'stands alone'],
    ['ft0', 'is not a unit'],
    ['ft-1', 'is not a unit'],
    ['ft//h', 'is not a unit'],
    ['*ft', 'is not a unit'],
    ['lb/ft*h', 'before the first /'],
    ['each2', 'has no powers'],
    ['', 'Write a unit'],
    ['__proto__', 'No unit is called'],
  ])('refuses %s and says: %s', (text, said) => {
    expect(reasonFor(text)).toMatch(new RegExp(said.replace('?', '\\?').replace('.', '\\.')));
  });

  it('reads back what it writes, for random products and quotients of every measured atom', () => {
    const measured = [...atomsByName.values()].filter((atom) => atom.kind === 'measure' || atom.kind === 'money');
    const terms = fc.array(fc.tuple(fc.constantFrom(...measured), fc.integer({ min: -4, max: 4 })), { maxLength: 6 });
    fc.assert(
      fc.property(terms, (chosen) => {
        const made = chosen.reduce(
          (sum, [atom, power]) => multiplyUnits(sum, powerOfUnit(unit(atom.name), power)),
          one,
        );
        expect(sameUnit(unit(unitText(made)), made)).toBe(true);
        expect(unit(unitText(made))).toEqual(made);
      }),
    );
  });
});

describe('comparing units', () => {
  it.each(['%', 'person', 'crew_day', 'visit', 'coat', 'job', 'each', 'pack', 'step'])('takes %s as 1', (name) => {
    expect(sameUnit(unit(name), one)).toBe(true);
  });

  it('tells a point from its difference, and a foot from a square foot', () => {
    expect(sameUnit(unit('degF'), unit('ddegF'))).toBe(false);
    expect(sameUnit(unit('date'), unit('d'))).toBe(false);
    expect(sameUnit(unit('ft'), unit('ft2'))).toBe(false);
    expect(sameUnit(unit('ft2/gal'), unit('gal/ft2'))).toBe(false);
  });
});

describe('the arithmetic of units', () => {
  it('gives ft2*mil/gal divided by ft2/gal as mil', () => {
    expect(unitText(divideUnits(unit('ft2*mil/gal'), unit('ft2/gal')))).toBe('mil');
  });

  it('gives $/h times h as $, and ft to the power 2 as ft2, power 0 as 1', () => {
    expect(unitText(multiplyUnits(unit('$/h'), unit('h')))).toBe('$');
    expect(unitText(powerOfUnit(unit('ft'), 2))).toBe('ft2');
    expect(unitText(powerOfUnit(unit('ft'), 0))).toBe('1');
    expect(unitText(powerOfUnit(unit('ft/h'), -1))).toBe('h/ft');
  });

  it('takes the root of ft2 and of ft4/h2, and of no odd power or point', () => {
    expect(rootOfUnit(unit('ft4/h2'))?.text).toBe('ft2/h');
    expect(rootOfUnit(one)?.text).toBe('1');
    expect(rootOfUnit(unit('ft2*mil'))).toBeUndefined();
    expect(rootOfUnit(unit('degF'))).toBeUndefined();
  });

  it('gives the difference of two points: degF → ddegF, degC → ddegC, date → d, and none for ft', () => {
    expect(['degF', 'degC', 'date', 'ft'].map((text) => differenceUnit(unit(text))?.text)).toEqual([
      'ddegF',
      'ddegC',
      'd',
      undefined,
    ]);
    expect(['degF', 'ddegF', 'date', '1'].map((text) => isPoint(unit(text)))).toEqual([true, false, true, false]);
  });

  it('throws on a product with a point and on a power of 1.5', () => {
    expect(() => multiplyUnits(unit('degF'), one)).toThrow(RangeError);
    expect(() => powerOfUnit(unit('ft'), 1.5)).toThrow(RangeError);
  });
});

describe('showing a unit', () => {
  it.each([
    ['ft2*mil/gal', 'ft²·mil/gal'],
    ['in3', 'in³'],
    ['$/ft2', '$/ft²'],
    ['$/crew_day', '$/crew day'],
    ['1/h', '/h'],
    ['1', ''],
    ['ddegF', '°F'],
    ['um', 'µm'],
    ['ft12', 'ft¹²'],
  ])('shows %s as %s', (text, shown) => {
    expect(prettyUnit(unit(text))).toBe(shown);
  });
});
