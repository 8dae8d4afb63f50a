import { describe, expect, it } from 'vitest';
import type { ValueType } from '../../src/formula/checked-tree.ts';
import { type EntryContext, readEntryNumber, readEntryText, whyNotTyped } from '../../src/quote/entry-text.ts';
import type { ProductRow } from '../../src/template/entries.ts';
import type { LineFile } from '../../src/template/line-schema.ts';
import { parseUnit } from '../../src/units/unit.ts';

const products = new Map<string, ProductRow>(
  [
    ['base_slate', 'base'],
    ['flake_granite', 'flake'],
  ].map(([product = '', kind = '']) => [product, { product, kind, name: product, fields: {} }]),
);
const field: EntryContext = { products, typed: {} };
const commandLine: EntryContext = { products, typed: { shareAs: 'fraction' } };
const code: ValueType = { kind: 'code' };

function numberType(text: string): ValueType {
  const read = parseUnit(text);
  if (read.kind === 'fault') throw new Error(read.reason);
  return { kind: 'number', unit: read.unit };
}

const share: LineFile = { kind: 'entry', name: 'waste', label: 'Waste', unit: '%', value: 0.05, limits: [0, 0.5] };
const choice: LineFile = {
  kind: 'choice',
  name: 'film_by',
  label: 'Film by',
  options: [
    { code: 'wet', label: 'Wet' },
    { code: 'dry', label: 'Dry' },
  ],
  value: 'wet',
};
const product: LineFile = { kind: 'product', name: 'base', label: 'Base', accepts: ['base'], value: 'base_slate' };

describe('what is typed into an entry', () => {
  it('is a share of 8 % as 8 in a field, and as 0.08 on a command line', () => {
    const type = numberType('%');
    expect(readEntryText('8', share, type, field)).toEqual({ kind: 'value', value: 0.08 });
    expect(readEntryText('0.08', share, type, commandLine)).toEqual({ kind: 'value', value: 0.08 });
    expect(readEntryText('60', share, type, field)).toMatchObject({ kind: 'refused' });
  });

  it('is held to the limits when it comes as a number, and -0 is 0', () => {
    const type = numberType('%');
    expect(readEntryNumber(0.6, share, type)).toEqual({
      kind: 'refused',
      reason: '“waste” must lie between 0 and 50 %; 60 % does not.',
    });
    expect(readEntryNumber(0.2, share, type)).toEqual({ kind: 'value', value: 0.2 });
    expect(readEntryNumber(-0, share, type)).toEqual({ kind: 'value', value: 0 });
    expect(readEntryNumber(Number.POSITIVE_INFINITY, share, type)).toMatchObject({ kind: 'refused' });
    expect(readEntryNumber(1, choice, code)).toMatchObject({ reason: '“film_by” takes a code, not a number.' });
  });

  it('is one of the codes of a choice, else the nearest is named', () => {
    expect(readEntryText(' dry ', choice, code, field)).toEqual({ kind: 'value', value: 'dry' });
    expect(readEntryText('dri', choice, code, field)).toMatchObject({
      reason: '“dri” is not among the choices of “film_by”. Did you mean “dry”?',
    });
    expect(readEntryText('thick', choice, code, field)).toMatchObject({
      reason: '“thick” is not among the choices of “film_by”: wet, dry.',
    });
  });

  it('is a product of a kind that is accepted', () => {
    expect(readEntryText('base_slate', product, code, field)).toEqual({ kind: 'value', value: 'base_slate' });
    expect(readEntryText('flake_granite', product, code, field)).toMatchObject({
      reason: '“flake_granite” is of the kind flake; “base” takes base.',
    });
    expect(readEntryText('base_slat', product, code, field)).toMatchObject({
      reason: 'The price list has no product “base_slat”. Did you mean “base_slate”?',
    });
  });

  it('is refused over a constant', () => {
    const inches: LineFile = {
      kind: 'formula',
      name: 'inches_per_foot',
      label: 'Inches',
      unit: 'in/ft',
      formula: '12',
    };
    expect(whyNotTyped(inches)).toBe('“inches_per_foot” is a constant: nothing is entered over it.');
  });

  it('is refused where a value is worked out', () => {
    const formula: LineFile = { kind: 'formula', name: 'price', label: 'Price', unit: '$', formula: 'wage * 2' };
    expect(whyNotTyped(formula)).toBe('“price” is worked out, not entered.');
    expect(readEntryText('5', formula, numberType('$'), field)).toMatchObject({ reason: whyNotTyped(formula) });
    expect(readEntryNumber(5, formula, numberType('$'))).toMatchObject({ reason: whyNotTyped(formula) });
    expect(whyNotTyped(share)).toBeUndefined();
  });
});
