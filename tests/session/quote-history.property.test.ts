import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/quote/apply-edit.ts';
import type { Edit } from '../../src/quote/edit.ts';
import { historyOf } from '../../src/quote/quote-log.ts';
import { readLog } from '../../src/quote/read-log.ts';
import { readQuote } from '../../src/quote/read-quote.ts';
import { QuoteSession } from '../../src/session/quote-session.ts';
import { flake, type OpenQuote, openQuote, solid } from '../helpers/demo-quote.ts';
import { printedSeed } from '../helpers/random-seed.ts';

let open: OpenQuote;
beforeAll(async () => {
  open = await openQuote();
});

const waste = (value: number): Edit => ({ kind: 'enterLine', sheet: { kind: 'shop' }, line: 'resin_waste', value });

function started(): QuoteSession {
  open.workbooks.load(open.quote);
  return new QuoteSession(open.quote, open.workbooks);
}

const share = fc.double({ min: 0, max: 0.4, noNaN: true });
const sheet = { kind: 'option', option: flake } as const;
const action: fc.Arbitrary<Edit | 'undo' | 'redo'> = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom('undo' as const, 'redo' as const) },
  { weight: 2, arbitrary: share.map(waste) },
  {
    weight: 1,
    arbitrary: fc.constantFrom<Edit>(
      { kind: 'enterLine', sheet: { kind: 'option', option: solid }, line: 'materials_cost', value: { instead: 900 } },
      { kind: 'enterLine', sheet: { kind: 'option', option: solid }, line: 'materials_cost' },
      { kind: 'enterCell', sheet, table: 'coats', row: 'base', column: 'coverage_typed', value: 120 },
      {
        kind: 'addRow',
        sheet: { kind: 'floor' },
        table: 'areas',
        row: 'apron',
        at: 1,
        cells: { place: 'apron', length: 8, width: 3 },
      },
      { kind: 'removeRow', sheet: { kind: 'floor' }, table: 'areas', row: 'apron' },
      { kind: 'retitle', title: 'Juniper Lane' },
      {
        kind: 'replaceRows',
        sheet: { kind: 'floor' },
        table: 'areas',
        rows: [{ row: 'sizes-asked_1', cells: { place: 'bay', length: 20, width: 20 } }],
      },
      {
        kind: 'several',
        words: 'A pasted column',
        edits: [
          { kind: 'enterCell', sheet, table: 'coats', row: 'base', column: 'coverage_typed', value: 90 },
          { kind: 'enterCell', sheet, table: 'coats', row: 'base', column: 'coverage_typed', value: 110 },
          { kind: 'enterLine', sheet: { kind: 'shop' }, line: 'resin_waste', value: 0.2 },
          { kind: 'enterCell', sheet, table: 'coats', row: 'clear', column: 'include', value: 1 },
        ],
      },
      { kind: 'removeOption', option: solid },
    ),
  },
);

/** Walks all the way back and then all the way forward, telling every quote passed. */
function wholeWalk(session: QuoteSession): unknown[] {
  const passed: unknown[] = [session.redoable];
  while (session.undo().kind === 'done') passed.push(session.quote, session.undoable);
  while (session.redo().kind === 'done') passed.push(session.quote, session.redoable);
  return passed;
}

describe('a session opened from its log', () => {
  it('has, after any dispatches, undos and redos, the way back and forward of the one that wrote it', () => {
    const seed = printedSeed('session from its log');
    fc.assert(
      fc.property(fc.array(action, { minLength: 1, maxLength: 12 }), (actions) => {
        const live = started();
        for (const one of actions) {
          if (one === 'undo') live.undo();
          else if (one === 'redo') live.redo();
          else live.dispatch(one);
        }
        const stored: { head: unknown; log: unknown[] } = JSON.parse(
          JSON.stringify({ head: live.quote, log: live.log }),
        );
        const [head, log] = [readQuote(stored.head), readLog(stored.log)];
        if (head.kind === 'fault' || log.kind === 'fault') throw new Error('It cannot be read back');
        const seq = live.seq;
        const livePassed = wholeWalk(live);
        open.workbooks.load(head.quote);
        const again = new QuoteSession(head.quote, open.workbooks, { past: { entries: log.entries, seq } });
        expect(wholeWalk(again)).toEqual(livePassed);
      }),
      { seed, numRuns: 8 },
    );
  });

  it('replays: the edits of the log, in their order, lead from the first quote to the head', () => {
    const live = started();
    live.dispatch(waste(0.1));
    live.dispatch({ kind: 'removeOption', option: solid });
    live.undo();
    live.undo();
    live.redo();
    const stacks = (option: string) => open.workbooks.results(option)?.stack;
    const replayed = live.log.reduce((quote, { edit }) => {
      const applied = applyEdit(quote, edit, stacks);
      if (applied.kind === 'refused') throw new Error(applied.reason);
      return applied.quote;
    }, open.quote);
    expect(replayed).toEqual(live.quote);
    expect(live.log.map(({ moves }) => moves)).toEqual(['done', 'done', 'undone', 'undone', 'redone']);
    expect(historyOf(live.log)).toMatchObject({ done: [{}], undone: [{}] });
  });

  it('keeps of 40 cells pasted into one table that table once as it was, and one undo takes all back', () => {
    const live = started();
    const edits = Array.from({ length: 40 }, (_, at) => ({
      kind: 'enterCell' as const,
      sheet,
      table: 'coats',
      row: 'base',
      column: 'coverage_typed',
      value: 100 + at,
    }));
    expect(live.dispatch({ kind: 'several', words: 'Pasted', edits })).toEqual({ kind: 'done' });
    expect(live.log[0]?.inverse).toMatchObject({ kind: 'several', edits: [{ kind: 'restoreTable', table: 'coats' }] });
    expect(live.undo()).toEqual({ kind: 'done' });
    expect(live.quote).toEqual(open.quote);
  });
});
