import { describe, expect, it } from 'vitest';
import { writeLength, writeSidesInMetres } from '../../src/units/length-text.ts';
import { unitIn } from '../../src/units/measures.ts';
import { amountsIn, labelIn } from '../../src/units/said-units.ts';
import { parseUnit, type Unit } from '../../src/units/unit.ts';

function unit(text: string): Unit {
  const read = parseUnit(text);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.unit;
}

describe('the unit in which a value is shown', () => {
  it.each([
    ['ft2*mil/gal', 'm2*um/L'],
    ['in3/ft', 'mL/m'],
    ['in3/gal', 'mL/L'],
    ['in/ft', 'mm/m'],
    ['in2/ft2', 'mm2/m2'],
    ['lb/ft2', 'kg/m2'],
    ['oz/lb', 'g/kg'],
    ['lb/in2', 'MPa'],
    ['$/ft', '$/m'],
    ['$/mi', '$/km'],
    ['ft2/h', 'm2/h'],
    ['gal/coat', 'L/coat'],
    ['ddegF/ddegC', '1'],
    ['degF', 'degC'],
    ['ddegF', 'ddegC'],
  ])('is for %s in metric %s', (declared, shown) => {
    expect(unitIn(unit(declared), 'metric').text).toBe(shown);
    expect(unitIn(unit(declared), 'us').text).toBe(declared);
  });

  it.each(['$', '$/h', 'h', 'visit', '%', 'date', 'yr', 'm2', 'degC'])('is for %s the same unit', (declared) => {
    const same = unit(declared);
    expect(unitIn(same, 'metric')).toBe(same);
  });
});

describe('a label beside a metric value', () => {
  it.each([
    ['Price a square foot', '$/ft2', 'Price a square metre'],
    ['A foot of crack costs', '$/ft', 'A metre of crack costs'],
    ['Miles one way', 'mi', 'Kilometres one way'],
    ['One gallon at one mil covers', 'ft2*mil/gal', 'One litre at one micrometre covers'],
    ['Cubic inches in a gallon', 'in3/gal', 'Millilitres in a litre'],
    ['Square inches in a square foot', 'in2/ft2', 'Square millimetres in a square metre'],
    ['Width of an inch', 'in', 'Width of a millimetre'],
    ['Ounces in a pound', 'oz/lb', 'Grams in a kilogram'],
    ['Pounds a square inch', 'lb/in2', 'Megapascals'],
  ])('turns “%s” of %s into “%s”', (label, declared, shown) => {
    expect(labelIn(label, unit(declared), 'metric')).toBe(shown);
    expect(labelIn(label, unit(declared), 'us')).toBe(label);
  });

  it('keeps a word that is no unit of the value: foot traffic, a pound of cure in hours', () => {
    expect(labelIn('Foot traffic', unit('h'), 'metric')).toBe('Foot traffic');
    expect(labelIn('A pound sets in', unit('min'), 'metric')).toBe('A pound sets in');
  });

  it('of a ratio is said by the metre as well: what a square foot costs, of the two-car', () => {
    expect(labelIn('A square foot of it costs', unit('1'), 'metric')).toBe('A square metre of it costs');
    expect(labelIn('Foot traffic', unit('1'), 'metric')).toBe('Foot traffic');
  });
});

describe('lengths', () => {
  it(`are 22' 6" and, to the centimetre as on a plan, 6.86 m; 30 by 24 ft are 9.14 and 7.32 m`, () => {
    expect([writeLength(22.5, 'us'), writeLength(22.5, 'metric')]).toEqual([`22' 6"`, '6.86 m']);
    expect([30, 24].map((side) => writeLength(side, 'metric'))).toEqual(['9.14 m', '7.32 m']);
  });

  it('of a 12 × 20 ft floor are 3.66 × 6.1 m to the centimetre', () => {
    expect(writeSidesInMetres(12, 20)).toBe('3.66 × 6.1 m');
  });
});

describe('figures among the words of a sheet', () => {
  it.each([
    ['two 9 ft doors, 6 in', 'two 2.74 m doors, 0.15 m'],
    ['13 steps, 3 ft 6 in wide', '13 steps, 1.07 m wide'],
    ['Vapour from 1000 ft²', 'Vapour from 92.9 m²'],
    ['Vapour from 1,000 ft² in a day', 'Vapour from 92.9 m² in a day'],
    ['4, 6, 8 ft', '4, 6, 8 ft'],
    ['12,5 ft', '12,5 ft'],
    ['a 5 gal pail', 'a 18.93 L pail'],
    ['1/4 in flake', '1/4 in flake'],
    ['8 to 12 ft', '8 to 12 ft'],
    ['2 in the morning, 3 in all', '2 in the morning, 3 in all'],
    ['Two-car 20 × 20', 'Two-car 20 × 20'],
  ])('“%s” is in metric “%s”', (words, shown) => {
    expect(amountsIn(words, 'metric')).toBe(shown);
    expect(amountsIn(words, 'us')).toBe(words);
  });
});
