import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Edit } from '../../src/quote/edit.ts';
import { lineValue } from '../../src/quote/option-results.ts';
import { QuoteSession } from '../../src/session/quote-session.ts';
import { flake, openQuote, solid } from '../helpers/demo-quote.ts';
import { printedSeed } from '../helpers/random-seed.ts';

const waste = (value: number): Edit => ({ kind: 'enterLine', sheet: { kind: 'shop' }, line: 'resin_waste', value });

function prices(session: QuoteSession): unknown[] {
  return [flake, solid].map((option) => {
    const results = session.results(option);
    return results && lineValue(results, 'price');
  });
}

/** Every number of both options. */
function numbers(session: QuoteSession): unknown[] {
  return [flake, solid].map((option) => {
    const results = session.results(option);
    return results?.option.plan.cells.map((cell, index) => [cell.place, results.read(index)]);
  });
}

describe('a session', () => {
  it('moves both options by one entry of the shop sheet, and tells which cells changed', async () => {
    const { session } = await openQuote(undefined, 'engine');
    const before = numbers(session);
    const told: unknown[] = [];
    session.subscribe((changes) => told.push(...changes));
    expect(session.dispatch(waste(0.3))).toEqual({ kind: 'done' });
    expect(numbers(session)).not.toEqual(before);
    expect(told).toHaveLength(2);
    expect(told).not.toContainEqual(expect.objectContaining({ changed: 'all' }));
  });

  it('goes back and forth, and forgets what lay ahead once something new is done', async () => {
    const { session } = await openQuote(undefined, 'engine');
    const [start, startNumbers] = [session.quote, numbers(session)];
    session.dispatch(waste(0.1));
    session.dispatch({ kind: 'enterLine', sheet: { kind: 'floor' }, line: 'crack_length', value: 60 });
    session.undo();
    session.undo();
    expect(session.quote).toEqual(start);
    expect(numbers(session)).toEqual(startNumbers);
    session.redo();
    expect(session.undoable).toMatchObject({ line: 'resin_waste' });
    session.dispatch(waste(0.2));
    expect(session.redoable).toBeUndefined();
    expect(session.redo()).toMatchObject({ kind: 'refused' });
  });

  it('leaves quote and numbers alone when an edit is refused', async () => {
    const { session } = await openQuote(undefined, 'engine');
    const [quote, before] = [session.quote, numbers(session)];
    expect(session.dispatch(waste(7))).toMatchObject({ kind: 'refused' });
    expect(
      session.dispatch({
        kind: 'addRow',
        sheet: { kind: 'floor' },
        table: 'areas',
        row: 'other',
        at: 1,
        cells: { place: 'bay' },
      }),
    ).toMatchObject({ kind: 'refused' });
    expect(session.quote).toBe(quote);
    expect(numbers(session)).toEqual(before);
    expect(session.undoable).toBeUndefined();
  });

  it('gives after any edits the numbers of a quote opened afresh, and undoing all gives the first back', async () => {
    const share = fc.double({ min: 0, max: 0.4, noNaN: true });
    const edit: fc.Arbitrary<Edit> = fc.oneof(
      share.map(waste),
      fc
        .constantFrom('leave_open', 'fill_flush', 'fill_after')
        .map((value): Edit => ({ kind: 'enterLine', sheet: { kind: 'floor' }, line: 'joint_treatment', value })),
      fc.double({ min: 60, max: 300, noNaN: true }).map(
        (value): Edit => ({
          kind: 'enterCell',
          sheet: { kind: 'option', option: flake },
          table: 'coats',
          row: 'base',
          column: 'coverage_typed',
          value,
        }),
      ),
      fc.constantFrom(0, 1).map(
        (value): Edit => ({
          kind: 'enterCell',
          sheet: { kind: 'option', option: flake },
          table: 'coats',
          row: 'second_clear',
          column: 'include',
          value,
        }),
      ),
      fc.double({ min: 100, max: 3000, noNaN: true }).map(
        (instead): Edit => ({
          kind: 'enterLine',
          sheet: { kind: 'option', option: solid },
          line: 'materials_cost',
          value: { instead },
        }),
      ),
      fc.constant<Edit>({ kind: 'enterLine', sheet: { kind: 'option', option: solid }, line: 'materials_cost' }),
      fc.constant<Edit>({
        kind: 'addRow',
        sheet: { kind: 'floor' },
        table: 'areas',
        row: 'apron',
        at: 1,
        cells: { place: 'apron', length: 8, width: 3 },
      }),
      fc.constant<Edit>({ kind: 'removeRow', sheet: { kind: 'floor' }, table: 'areas', row: 'apron' }),
    );
    const seed = printedSeed('session');
    const { quote: start, workbooks } = await openQuote(undefined, 'engine');
    // The way back is told by the quote alone.
    const { workbooks: quick } = await openQuote();
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) => {
        workbooks.load(start);
        const session = new QuoteSession(start, workbooks);
        const done = edits.filter((one) => session.dispatch(one).kind === 'done');
        const followed = numbers(session);
        workbooks.load(session.quote);
        expect(followed).toEqual(numbers(session));
        quick.load(start);
        const back = new QuoteSession(start, quick);
        for (const one of done) expect(back.dispatch(one)).toEqual({ kind: 'done' });
        expect(back.quote).toEqual(session.quote);
        for (const _ of done) expect(back.undo()).toEqual({ kind: 'done' });
        expect(back.quote).toEqual(start);
      }),
      { seed, numRuns: 8 },
    );
  });

  it('gives two prices in whole 25 dollars', async () => {
    const { session } = await openQuote(undefined, 'engine');
    for (const price of prices(session)) expect(Number(price) % 25).toBe(0);
  });
});
