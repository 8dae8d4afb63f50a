import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { applyEdit, type StackOfOption } from '../../src/quote/apply-edit.ts';
import type { Edit, SingleEdit } from '../../src/quote/edit.ts';
import type { QuoteDocument, SheetPlace, StoredValue } from '../../src/quote/quote-document.ts';
import { readLog } from '../../src/quote/read-log.ts';
import { readQuote } from '../../src/quote/read-quote.ts';
import { flake, type OpenQuote, openQuote, solid } from '../helpers/demo-quote.ts';
import { printedSeed } from '../helpers/random-seed.ts';

let open: OpenQuote;
let stacks: StackOfOption;
beforeAll(async () => {
  open = await openQuote();
  stacks = (option) => open.workbooks.results(option)?.stack;
});

/** What somebody may type or send: names that are there, and anything else. */
const text = fc.oneof(
  { weight: 2, arbitrary: fc.constantFrom('', 'Juniper Lane', '22 ft 6 in') },
  fc.string(),
  fc.integer({ min: 1990, max: 2010 }).map((length) => 'x'.repeat(length)),
);
const number = fc.oneof({ weight: 3, arbitrary: fc.double({ min: 0, max: 40, noNaN: true }) }, fc.double());
const named = (...names: string[]) =>
  fc.oneof(
    { weight: 6, arbitrary: fc.constantFrom(...names) },
    fc.string(),
    fc.constantFrom('__proto__', 'constructor', 'UPPER', 'a'.repeat(101), 'b.c'),
  );
const sheet: fc.Arbitrary<SheetPlace> = fc.constantFrom(
  { kind: 'shop' },
  { kind: 'floor' },
  { kind: 'option', option: flake },
  { kind: 'option', option: solid },
  { kind: 'option', option: 'gone' },
);
const value: fc.Arbitrary<StoredValue> = fc.oneof(
  number,
  named('fill_flush', 'rectangle', 'dry', '2026-05-31'),
  fc.record({ value: fc.oneof(number, text), typed: text, from: text, confirmed: fc.boolean() }),
  text.map((written) => ({ written })),
  fc.record({ instead: number, why: text }),
);
const at = fc.oneof({ weight: 3, arbitrary: fc.constantFrom(0, 1, 2) }, fc.integer({ min: -2, max: 502 }), fc.double());
const cells = fc.dictionary(
  named('place', 'length', 'width', 'shape'),
  fc.oneof(
    number,
    text,
    text.map((formula) => ({ formula })),
  ),
  { maxKeys: 3 },
);
const line = named('crack_length', 'resin_waste', 'joint_treatment', 'reader_name', 'materials_cost', 'price');
const table = named('areas', 'tasks', 'coats', 'buy_volume');
const row = named('apron', 'bay', 'vacuum', 'base');
const pass = fc.record({
  by: text,
  why: text,
  said: text,
  at: fc.constant('2026-05-31T14:05:09.120Z'),
});

const single: fc.Arbitrary<SingleEdit> = fc.oneof(
  fc.record({ kind: fc.constant('enterLine' as const), sheet, line, value }),
  fc.record({ kind: fc.constant('enterLine' as const), sheet, line }),
  fc.record({
    kind: fc.constant('enterCell' as const),
    sheet,
    table,
    row,
    column: named('length', 'factor', 'coverage_typed', 'product', 'place'),
    value,
  }),
  fc.record({ kind: fc.constant('addRow' as const), sheet, table, row, at, cells }),
  fc.record({ kind: fc.constant('removeRow' as const), sheet, table, row }),
  fc.record({ kind: fc.constant('moveRow' as const), sheet, table, row, to: at }),
  fc.record({
    kind: fc.constant('replaceRows' as const),
    sheet,
    table,
    rows: fc.array(fc.record({ row, cells }), { maxLength: 3 }),
  }),
  fc.record({ kind: fc.constant('removeOption' as const), option: named(flake, solid) }),
  fc.record({ kind: fc.constant('retitle' as const), title: text }),
  fc.record({ kind: fc.constant('passStop' as const), sheet, check: named('slab_above_dew', 'no_rain_on_wet_coat') }),
  fc.record({ kind: fc.constant('passStop' as const), sheet, check: named('slab_above_dew'), pass }),
  fc.record({ id: named('option_3'), title: text, at }).map(
    ({ id, title, at: place }): SingleEdit => ({
      kind: 'addOption',
      at: place,
      products: [],
      option: optionLike(id, title),
    }),
  ),
);
const edit: fc.Arbitrary<Edit> = fc.oneof(
  { weight: 5, arbitrary: single },
  fc.record({ kind: fc.constant('several' as const), words: text, edits: fc.array(single, { maxLength: 3 }) }),
);

function optionLike(id: string, title: string): QuoteDocument['options'][number] {
  return { id, title, system: 'a'.repeat(64), entries: { lines: {}, tables: {} } };
}

describe('an edit that is taken', () => {
  it('can be read back from the log with its inverse, as can the quotes before and after, whatever was sent', () => {
    const seed = printedSeed('edits read back');
    const taken = new Set<string>();
    let refused = 0;
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) => {
        let quote = open.quote;
        for (const one of edits) {
          const applied = applyEdit(quote, one, stacks);
          if (applied.kind === 'refused') {
            refused += 1;
            continue;
          }
          taken.add(one.kind);
          const entry = { seq: 1, edit: one, inverse: applied.inverse, at: '2026-05-31T14:05:09.120Z', moves: 'done' };
          const stored: unknown = JSON.parse(JSON.stringify(entry));
          expect(readLog([stored])).toMatchObject({ kind: 'log' });
          expect(readQuote(JSON.parse(JSON.stringify(applied.quote)))).toMatchObject({ kind: 'quote' });
          const back = applyEdit(applied.quote, applied.inverse, stacks);
          expect(back).toMatchObject({ kind: 'applied' });
          quote = applied.quote;
        }
      }),
      { seed, numRuns: 1500 },
    );
    // The test is worth something when edits of every kind are taken, and some are not.
    expect([...taken].sort()).toEqual(
      ['addOption', 'addRow', 'enterCell', 'enterLine', 'moveRow', 'passStop', 'removeOption', 'removeRow']
        .concat(['replaceRows', 'retitle', 'several'])
        .sort(),
    );
    expect(refused).toBeGreaterThan(500);
  });

  it('is none that says in 2,001 characters how a length was typed, or puts a row at place 1.5', () => {
    const floor = { kind: 'floor' } as const;
    const typed = { value: 20, typed: 'x'.repeat(2001) };
    const edits: Edit[] = [
      { kind: 'enterLine', sheet: floor, line: 'crack_length', value: typed },
      { kind: 'addRow', sheet: floor, table: 'areas', row: 'apron', at: 1.5, cells: {} },
      { kind: 'retitle', title: 'x'.repeat(2001) },
    ];
    for (const one of edits) expect(applyEdit(open.quote, one, stacks)).toMatchObject({ kind: 'refused' });
  });
});
