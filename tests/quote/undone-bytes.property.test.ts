import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/quote/apply-edit.ts';
import type { Edit } from '../../src/quote/edit.ts';
import { mergedInverse } from '../../src/quote/merged-inverse.ts';
import type { QuoteDocument, QuoteOption } from '../../src/quote/quote-document.ts';
import type { Step } from '../../src/quote/quote-log.ts';
import { readQuote } from '../../src/quote/read-quote.ts';
import { QuoteSession } from '../../src/session/quote-session.ts';
import type { ProductRow } from '../../src/template/entries.ts';
import { flake, type OpenQuote, openQuote, solid } from '../helpers/demo-quote.ts';
import { printedSeed } from '../helpers/random-seed.ts';
import { readEdit } from '../helpers/read-edit.ts';

let open: OpenQuote;
/** A system that the quote has not, with the products it names. */
let metallic: { option: QuoteOption; products: readonly ProductRow[] };
let edits: fc.Arbitrary<Edit>;

beforeAll(async () => {
  open = await openQuote();
  const { quote } = await openQuote(['metallic']);
  const [option] = quote.options;
  if (option === undefined) throw new Error('No such system');
  metallic = { option: { ...option, id: 'option_9' }, products: quote.products };
  edits = editsOf(open);
});

/** Edits of every kind, some of which the quote refuses as it stands. */
function editsOf({ priceList }: OpenQuote): fc.Arbitrary<Edit> {
  const [shop, floor, own] = [
    { kind: 'shop' } as const,
    { kind: 'floor' } as const,
    { kind: 'option', option: flake } as const,
  ];
  const bases = [...priceList.values()].filter(({ kind }) => kind === 'base');
  const base = fc.constantFrom(...bases);
  const line = fc.constantFrom('resin_waste', 'contingency_rate', 'commission_rate', 'target_margin');
  const pass = { by: 'Dana R.', why: 'The door stays shut.', at: '2026-11-25T14:05:00.000Z', said: 'It is damp.' };
  const areas = { sheet: floor, table: 'areas' };
  const single = fc.oneof(
    fc
      .tuple(line, fc.constantFrom(0.02, 0.05, 0.3))
      .map(([name, value]): Edit => ({ kind: 'enterLine', sheet: shop, line: name, value })),
    line.map((name): Edit => ({ kind: 'enterLine', sheet: shop, line: name })),
    base.map(
      (product): Edit => ({
        kind: 'enterCell',
        sheet: own,
        table: 'coats',
        row: 'base',
        column: 'product',
        value: product.product,
        product,
      }),
    ),
    base.map(
      (product): Edit => ({
        kind: 'addRow',
        sheet: own,
        table: 'coats',
        row: 'coat_4',
        at: 3,
        cells: { coat: 'coat_4', product: product.product },
        products: [product],
      }),
    ),
    fc.constantFrom<Edit>(
      { kind: 'enterCell', sheet: own, table: 'coats', row: 'base', column: 'product' },
      { kind: 'enterCell', sheet: own, table: 'coats', row: 'coat_4', column: 'coverage_typed', value: 90 },
      { kind: 'removeRow', sheet: own, table: 'coats', row: 'coat_4' },
      { kind: 'moveRow', sheet: own, table: 'coats', row: 'coat_4', to: 1 },
      { kind: 'enterLine', sheet: own, line: 'materials_cost', value: { instead: 900 } },
      { kind: 'enterLine', sheet: own, line: 'materials_cost' },
      { kind: 'addRow', ...areas, row: 'apron', at: 0, cells: { place: 'apron', length: 8, width: 3 } },
      { kind: 'removeRow', ...areas, row: 'apron' },
      { kind: 'replaceRows', ...areas, rows: [{ row: 'asked_1', cells: { place: 'bay', length: 20, width: 20 } }] },
      { kind: 'addOption', at: 1, ...metallic },
      { kind: 'removeOption', option: metallic.option.id },
      { kind: 'removeOption', option: solid },
      { kind: 'retitle', title: 'Juniper Lane' },
      { kind: 'passStop', sheet: floor, check: 'slab_above_dew', pass },
      { kind: 'passStop', sheet: floor, check: 'slab_above_dew' },
      { kind: 'passStop', sheet: floor, check: 'aa_no_such_check' },
    ),
  );
  const several = fc.array(single, { minLength: 2, maxLength: 4 }).map(
    (all): Edit => ({
      kind: 'several',
      words: 'Together',
      edits: all.flatMap((one) => (one.kind === 'several' ? [] : [one])),
    }),
  );
  return fc.oneof({ weight: 4, arbitrary: single }, { weight: 1, arbitrary: several });
}

function bytesOf(quote: QuoteDocument): string {
  return JSON.stringify(quote);
}

function applied(quote: QuoteDocument, edit: Edit): { quote: QuoteDocument; inverse: Edit } | undefined {
  const result = applyEdit(quote, edit, (option) => open.workbooks.results(option)?.stack);
  return result.kind === 'refused' ? undefined : { quote: result.quote, inverse: mergedInverse(result.inverse) };
}

/** The quote after edits that nothing may refuse. */
function quoteAfter(quote: QuoteDocument, edits: readonly Edit[]): QuoteDocument {
  return edits.reduce((current, edit) => {
    const next = applied(current, edit);
    if (next === undefined) throw new Error(`Refused: ${JSON.stringify(edit)}`);
    return next.quote;
  }, quote);
}

/** What a page that is loaded anew reads of what was stored. */
function readAgain(quote: QuoteDocument, steps: readonly Step[]): { quote: QuoteDocument; steps: readonly Step[] } {
  const stored: { quote: unknown; steps: Step[] } = JSON.parse(JSON.stringify({ quote, steps }));
  const read = readQuote(stored.quote);
  if (read.kind === 'fault') throw new Error(read.reason);
  return {
    quote: read.quote,
    steps: stored.steps.map(({ edit, inverse }) => ({ edit: editRead(edit), inverse: editRead(inverse) })),
  };
}

function editRead(stored: unknown): Edit {
  const read = readEdit(stored);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.value;
}

describe('a quote of which every edit is undone', () => {
  it('is to the byte the quote it was, with its products, and redone what the edits made of it; loaded anew between, too', () => {
    const seed = printedSeed('bytes of what is undone');
    const counted = { done: 0, refused: 0 };
    fc.assert(
      fc.property(fc.array(edits, { minLength: 1, maxLength: 25 }), fc.boolean(), (wanted, reload) => {
        let made = open.quote;
        const steps: Step[] = [];
        for (const edit of wanted) {
          const next = applied(made, edit);
          counted[next === undefined ? 'refused' : 'done'] += 1;
          if (next === undefined) continue;
          steps.push({ edit, inverse: next.inverse });
          made = next.quote;
        }
        const found = reload ? readAgain(made, steps) : { quote: made, steps };
        expect(bytesOf(found.quote)).toBe(bytesOf(made));
        const undone = quoteAfter(found.quote, found.steps.map(({ inverse }) => inverse).reverse());
        expect(bytesOf(undone)).toBe(bytesOf(open.quote));
        expect(
          bytesOf(
            quoteAfter(
              undone,
              found.steps.map(({ edit }) => edit),
            ),
          ),
        ).toBe(bytesOf(made));
      }),
      { seed, numRuns: 200 },
    );
    expect(counted.done).toBeGreaterThan(counted.refused);
  });

  it('has the products it had before a system that brings others was added, as many and in their order', () => {
    open.workbooks.load(open.quote);
    const session = new QuoteSession(open.quote, open.workbooks);
    expect(session.dispatch({ kind: 'addOption', at: 2, ...metallic })).toEqual({ kind: 'done' });
    expect(session.quote.products.length).toBeGreaterThan(open.quote.products.length);
    session.undo();
    expect(bytesOf(session.quote)).toBe(bytesOf(open.quote));
  });
});
