import { beforeAll, describe, expect, it } from 'vitest';
import { applyEdit, type StackOfOption } from '../../src/quote/apply-edit.ts';
import type { Edit } from '../../src/quote/edit.ts';
import { mergedInverse } from '../../src/quote/merged-inverse.ts';
import type { QuoteDocument } from '../../src/quote/quote-document.ts';
import { flake, type OpenQuote, openQuote, solid } from '../helpers/demo-quote.ts';

let open: OpenQuote;
let stacks: StackOfOption;

beforeAll(async () => {
  open = await openQuote();
  stacks = (option) => open.workbooks.results(option)?.stack;
});

function applied(quote: QuoteDocument, edit: Edit): { quote: QuoteDocument; inverse: Edit } {
  const result = applyEdit(quote, edit, stacks);
  if (result.kind === 'refused') throw new Error(result.reason);
  return result;
}

function refusal(edit: Edit): string {
  const result = applyEdit(open.quote, edit, stacks);
  return result.kind === 'refused' ? result.reason : '';
}

const option = { kind: 'option', option: flake } as const;

const edits: readonly Edit[] = [
  { kind: 'enterLine', sheet: { kind: 'shop' }, line: 'resin_waste', value: 0.08 },
  { kind: 'enterLine', sheet: { kind: 'floor' }, line: 'joint_treatment', value: 'fill_flush' },
  { kind: 'enterLine', sheet: option, line: 'materials_cost', value: { instead: 900, why: 'bought already' } },
  {
    kind: 'enterCell',
    sheet: option,
    table: 'coats',
    row: 'base',
    column: 'coverage_typed',
    value: { value: 120, typed: '120' },
  },
  {
    kind: 'addRow',
    sheet: { kind: 'floor' },
    table: 'areas',
    row: 'apron',
    at: 1,
    cells: { place: 'apron', length: 10, width: 4 },
  },
  {
    kind: 'addRow',
    sheet: { kind: 'floor' },
    table: 'areas',
    row: 'place_2',
    at: 1,
    cells: { place: 'Lip at the door' },
  },
  {
    kind: 'enterCell',
    sheet: { kind: 'floor' },
    table: 'areas',
    row: 'bay',
    column: 'place',
    value: { written: 'Car bay' },
  },
  { kind: 'removeRow', sheet: option, table: 'coats', row: 'second_clear' },
  { kind: 'moveRow', sheet: option, table: 'broadcast', row: 'flake', to: 0 },
  { kind: 'retitle', title: 'Juniper Lane' },
  { kind: 'removeOption', option: solid },
];

describe('an edit', () => {
  it.each(edits)('$kind is undone to the same quote, and done again to the same change', (edit) => {
    const done = applied(open.quote, edit);
    expect(done.quote).not.toEqual(open.quote);
    const undone = applied(done.quote, done.inverse);
    expect(undone.quote).toEqual(open.quote);
    expect(applied(undone.quote, undone.inverse).quote).toEqual(done.quote);
  });

  it('that puts back what stood before has an inverse of its own, also where nothing stood before', () => {
    for (const edit of edits) {
      const undone = applied(open.quote, edit).inverse;
      const done = applied(open.quote, edit).quote;
      const again = applied(done, undone).inverse;
      expect(applied(open.quote, again).quote).toEqual(done);
      expect(applied(applied(open.quote, again).quote, applied(open.quote, again).inverse).quote).toEqual(open.quote);
    }
  });

  it('leaves the quote it was given as it was', () => {
    const before = structuredClone(open.quote);
    for (const edit of edits) applied(open.quote, edit);
    expect(open.quote).toEqual(before);
  });

  it('takes a product along, so that the quote needs no price list', () => {
    const product = [...open.priceList.values()].find(
      (candidate) =>
        candidate.kind === 'base' && !open.quote.products.some((known) => known.product === candidate.product),
    );
    if (product === undefined) throw new Error('The price list has no other base');
    const edit: Edit = {
      kind: 'enterCell',
      sheet: option,
      table: 'coats',
      row: 'base',
      column: 'product',
      value: product.product,
      product,
    };
    const done = applied(open.quote, edit);
    expect(done.quote.products).toContainEqual(product);
    expect(applied(done.quote, done.inverse).quote).toEqual(open.quote);
    const cell = { ...edit, kind: 'enterCell', column: 'coverage_typed', value: 110 } as const;
    const { product: _none, ...coverage } = cell;
    const both = applied(open.quote, { kind: 'several', words: 'Another base', edits: [coverage, edit] });
    expect(applied(both.quote, mergedInverse(both.inverse)).quote).toEqual(open.quote);
  });

  it('that brings no product leaves the list of them out of its way back', () => {
    for (const edit of edits) expect(JSON.stringify(applied(open.quote, edit).inverse)).not.toContain('"products":[{');
  });
});

describe('a refusal says why', () => {
  it('for a formula line: worked out, not entered', () => {
    expect(refusal({ kind: 'enterLine', sheet: option, line: 'price', value: 4000 })).toMatch(
      /worked out, not entered/,
    );
  });

  it('for a constant, which nobody types over: inches in a foot, and what a gallon covers at 1 mil', () => {
    const inches = { kind: 'enterLine', sheet: { kind: 'shop' }, line: 'inches_per_foot' } as const;
    const words = '“Inches in a foot” is a constant: nothing is entered over it.';
    expect(refusal({ ...inches, value: 10 })).toBe(words);
    expect(refusal({ ...inches, value: { instead: 10 } })).toBe(words);
    expect(refusal({ ...inches, line: 'film_constant', value: { instead: 1600 } })).toMatch(/is a constant/);
  });

  it('for a row without a name, and for one that has its name from the sheet', () => {
    const cell = { kind: 'enterCell', sheet: { kind: 'floor' }, table: 'areas', row: 'bay', column: 'place' } as const;
    expect(refusal({ ...cell, value: { written: ' ' } })).toBe('A row is called by a word or two.');
    expect(refusal({ ...cell, value: { written: 'x'.repeat(81) } })).toMatch(/At most 80 characters/);
    const machine = { sheet: { kind: 'shop' }, table: 'machine_sets', row: 'walk_behind', column: 'machine' } as const;
    expect(refusal({ ...cell, ...machine, value: { written: 'Ours' } })).toMatch(/have their names from the sheet/);
  });

  it('for a share of waste of 2, which is past its limits', () => {
    expect(refusal({ kind: 'enterLine', sheet: { kind: 'shop' }, line: 'resin_waste', value: 2 })).toMatch(/between/);
  });

  it('for a number in place of the grinder that a formula chooses, which no plan could lay out', () => {
    const value = { instead: 1 };
    expect(refusal({ kind: 'enterLine', sheet: option, line: 'grinder_used', value })).toMatch(/is a code/);
  });

  it('for a number that is none', () => {
    expect(refusal({ kind: 'enterLine', sheet: { kind: 'shop' }, line: 'resin_waste', value: Number.NaN })).toMatch(
      /must be a number/,
    );
  });

  it('for a choice that is not offered, naming those that are', () => {
    expect(refusal({ kind: 'enterLine', sheet: { kind: 'floor' }, line: 'joint_treatment', value: 'hope' })).toMatch(
      /leave_open/,
    );
  });

  it('for a shop line looked for in the floor sheet', () => {
    expect(refusal({ kind: 'enterLine', sheet: { kind: 'floor' }, line: 'resin_waste', value: 0.05 })).toMatch(
      /no line/,
    );
  });

  it('for a product the quote does not hold, and for one of the wrong kind', () => {
    const cell = { kind: 'enterCell', sheet: option, table: 'coats', row: 'base', column: 'product' } as const;
    expect(refusal({ ...cell, value: 'no_such_product' })).toMatch(/no product/);
    const flakes = open.quote.products.find((product) => product.kind === 'flake');
    expect(refusal({ ...cell, value: flakes?.product ?? '' })).toMatch(/base or clear|kind/);
  });

  it('for the last area, since a floor has one', () => {
    expect(refusal({ kind: 'removeRow', sheet: { kind: 'floor' }, table: 'areas', row: 'bay' })).toMatch(
      /at least 1 row/,
    );
  });

  it('for rows of a fixed or gathered table', () => {
    expect(refusal({ kind: 'addRow', sheet: option, table: 'trips', row: 'fifth', at: 4, cells: {} })).toMatch(/fixed/);
    expect(refusal({ kind: 'addRow', sheet: option, table: 'buy_volume', row: 'x', at: 0, cells: {} })).toMatch(
      /fixed/,
    );
  });

  it('for a fifth option and for taking the only one', () => {
    const [first] = open.quote.options;
    if (first === undefined) throw new Error('The quote has no option');
    const full = ['option_3', 'option_4'].reduce(
      (quote, id) => applied(quote, { kind: 'addOption', option: { ...first, id }, at: 2, products: [] }).quote,
      open.quote,
    );
    expect(
      applyEdit(full, { kind: 'addOption', option: { ...first, id: 'fifth' }, at: 0, products: [] }, stacks),
    ).toMatchObject({ kind: 'refused' });
    const single = applied(open.quote, { kind: 'removeOption', option: solid }).quote;
    expect(applyEdit(single, { kind: 'removeOption', option: flake }, stacks)).toMatchObject({ kind: 'refused' });
  });
});
