import { describe, expect, it } from 'vitest';
import type { GivenValue, ProductRow } from '../../src/template/entries.ts';
import type { ColumnFile, LineFile } from '../../src/template/line-schema.ts';
import { givenInFile, valueRefusal } from '../../src/template/value-refusal.ts';
import { parseUnit, type Unit } from '../../src/units/unit.ts';

const products = new Map<string, ProductRow>(
  [
    ['base_slate', 'base'],
    ['flake_granite', 'flake'],
  ].map(([product = '', kind = '']) => [product, { product, kind, name: product, fields: {} }]),
);

const common = { name: 'it', label: 'It' };
const waste: LineFile = { ...common, kind: 'entry', unit: '%', value: 0.05, limits: [0, 0.5] };
const people: LineFile = { ...common, kind: 'entry', unit: 'person', value: 2, limits: [1, 12], whole: true };
const start: LineFile = { ...common, kind: 'entry', unit: 'date', value: '2026-03-09' };
const base: LineFile = { ...common, kind: 'product', accepts: ['base'], value: 'base_slate' };
const film: LineFile = {
  ...common,
  kind: 'choice',
  options: [
    { code: 'wet', label: 'Wet' },
    { code: 'dry', label: 'Dry' },
  ],
  value: 'wet',
};
const price: LineFile = { ...common, kind: 'formula', unit: '$', formula: 'cost' };
const grinder: LineFile = { ...common, kind: 'formula', code: true, formula: 'chosen' };
const check: LineFile = { ...common, kind: 'check', check: '1 = 1', severity: 'stop', say: 'No.' };
const words: LineFile = { ...common, kind: 'words', words: '' };
const place: ColumnFile = { ...common, kind: 'key', key: true };

const value = (given: number | string): GivenValue => ({ kind: 'value', value: given });
const instead = (given: number): GivenValue => ({ kind: 'instead', value: given });

function why(definition: LineFile | ColumnFile, given: GivenValue): string | undefined {
  return valueRefusal(definition, given, { name: 'it', products });
}

describe('a line may hold', () => {
  it.each<[LineFile | ColumnFile, GivenValue]>([
    [waste, value(0.5)],
    [people, value(12)],
    [start, value(46_090)],
    [start, givenInFile(start, '2026-03-09')],
    [base, value('base_slate')],
    [film, value('dry')],
    [price, instead(4000)],
    [words, { kind: 'written', value: 'Dana R.' }],
    [place, value('bay')],
  ])('%j: %j', (definition, given) => {
    expect(why(definition, given)).toBeUndefined();
  });
});

describe('a line may not hold', () => {
  it.each<[LineFile | ColumnFile, GivenValue, string]>([
    [waste, value(2), '“it” must lie between 0 and 50 %; 200 % does not.'],
    [waste, value('much'), '“it” is a number in %, not “much”.'],
    [waste, value(Number.NaN), '“it” must be a number.'],
    [waste, instead(0.1), '“it” is not worked out; enter it instead.'],
    [people, value(1.5), '“it” must be a whole number.'],
    [start, givenInFile(start, 46_090), '“46090” is no date; write it as 2026-05-31.'],
    [base, value('flake_granite'), '“flake_granite” is of the kind flake; “it” takes base.'],
    [base, value('base_slat'), 'The price list has no product “base_slat”. Did you mean “base_slate”?'],
    [film, value('thick'), '“thick” is not among the choices of “it”: wet, dry.'],
    [film, value(1), '“it” takes a code, not a number.'],
    [price, value(4000), '“it” is worked out, not entered.'],
    [price, instead(Number.POSITIVE_INFINITY), '“it” must be a number.'],
    [grinder, instead(1), '“it” is a code; no number stands in its place.'],
    [check, instead(1), '“it” is a check; no value stands in its place.'],
    [check, value(1), '“it” is a check: it is told, not entered.'],
    [words, value(7), '“it” takes words, not a number.'],
    [film, { kind: 'written', value: 'wet' }, '“it” takes no words.'],
    [place, value('The bay'), '“The bay” is not a code: lower-case letters, digits and underscores.'],
  ])('%j: %j', (definition, given, reason) => {
    expect(why(definition, given)).toBe(reason);
  });
});

describe('limits', () => {
  const feet: ColumnFile = { ...common, kind: 'entry', unit: 'ft', limits: [0, 2000] };
  const told = (definition: ColumnFile, given: number, more: { unit?: Unit; measures?: 'metric' } = {}) =>
    valueRefusal(definition, value(given), { name: 'Length', ...more });

  it('are told with their unit once, in feet or in metres', () => {
    expect(told(feet, -5)).toBe('“Length” must lie between 0 and 2,000 ft; −5 ft does not.');
    expect(told(feet, -5, { measures: 'metric' })).toBe('“Length” must lie between 0 and 609.6 m; −1.52 m does not.');
  });

  it('do not read as what is just beyond them', () => {
    expect(told(feet, 2000.001)).toBe('“Length” must lie between 0 and 2,000 ft; 2,000.001 ft does not.');
  });

  it('are in the unit of the row where that follows a choice', () => {
    const read = parseUnit('gal');
    if (read.kind === 'fault') throw new Error(read.reason);
    const { unit: _, ...mixed } = feet;
    expect(told(mixed, 2001, { unit: read.unit })).toBe(
      '“Length” must lie between 0 and 2,000 gal; 2,001 gal does not.',
    );
  });
});
