import { beforeAll, describe, expect, it } from 'vitest';
import type { Edit } from '../../src/quote/edit.ts';
import type { QuoteHead } from '../../src/quote/quote-head.ts';
import type { NewEntries } from '../../src/quote/quote-log.ts';
import { readQuote } from '../../src/quote/read-quote.ts';
import { QuoteSession, type SessionStart } from '../../src/session/quote-session.ts';
import type { QuoteKeeper } from '../../src/session/save-queue.ts';
import { type OpenQuote, openQuote } from '../helpers/demo-quote.ts';

let open: OpenQuote;
beforeAll(async () => {
  open = await openQuote();
});

const waste = (value: number): Edit => ({ kind: 'enterLine', sheet: { kind: 'shop' }, line: 'resin_waste', value });
const times = (): (() => string) => {
  let second = 0;
  return () => new Date(Date.UTC(2026, 4, 31, 14, 0, second++)).toISOString();
};

function started(start: SessionStart): QuoteSession {
  open.workbooks.load(open.quote);
  return new QuoteSession(open.quote, open.workbooks, { now: times(), ...start });
}

/** A keeper whose every answer the test gives. */
class HeldKeeper implements QuoteKeeper {
  readonly asked: { entries: NewEntries; head: QuoteHead; answer: (refusal?: string) => Promise<void> }[] = [];
  readonly append = (entries: NewEntries, head: QuoteHead): Promise<void> =>
    new Promise((resolve, reject) => {
      const answer = async (refusal?: string): Promise<void> => {
        if (refusal === undefined) resolve();
        else reject(new Error(refusal));
        await new Promise((later) => setTimeout(later, 0));
      };
      this.asked.push({ entries, head, answer });
    });

  async answer(number: number, refusal?: string): Promise<void> {
    const asked = this.asked[number];
    if (asked === undefined) throw new Error(`Nothing was asked ${number}`);
    await asked.answer(refusal);
  }
}

describe('saving', () => {
  it('is told as saving until the keeper has answered, and as saved only then', async () => {
    const keeper = new HeldKeeper();
    const session = started({ keeper });
    const told: string[] = [];
    session.subscribe(() => told.push(session.saved.kind));
    expect(session.saved).toEqual({ kind: 'saved' });
    session.dispatch(waste(0.1));
    expect(session.saved).toEqual({ kind: 'saving' });
    await new Promise((later) => setTimeout(later, 20));
    expect(session.saved).toEqual({ kind: 'saving' });
    await keeper.answer(0);
    expect(session.saved).toEqual({ kind: 'saved' });
    expect(told).toEqual(['saving', 'saved']);
  });

  it('hands over entries with the head they led to and its prices as people read them', async () => {
    const keeper = new HeldKeeper();
    const session = started({ keeper });
    session.dispatch(waste(0.1));
    const first = session.quote;
    session.dispatch(waste(0.2));
    await keeper.answer(0);
    await keeper.answer(1);
    expect(keeper.asked.flatMap(({ entries }) => entries)).toEqual(session.log);
    expect(keeper.asked.map(({ head }) => head.quote)).toEqual([first, session.quote]);
    expect(session.log).toMatchObject([
      { seq: 1, moves: 'done', at: '2026-05-31T14:00:00.000Z' },
      { seq: 2, moves: 'done', at: '2026-05-31T14:00:01.000Z' },
    ]);
    for (const { price } of keeper.asked[1]?.head.options ?? []) expect(price).toMatch(/^\$[\d,]+\.00$/);
    expect(keeper.asked[1]?.head.options).toHaveLength(2);
  });

  it('that fails keeps the change, says why, and comes again with the next change, in order', async () => {
    const keeper = new HeldKeeper();
    const session = started({ keeper });
    session.dispatch(waste(0.1));
    await keeper.answer(0, 'There is no room left.');
    expect(session.saved).toEqual({ kind: 'not saved', reason: 'There is no room left.' });
    expect(session.quote.shop.lines).toMatchObject({ resin_waste: 0.1 });
    session.dispatch(waste(0.2));
    expect(session.saved.kind).toBe('saving');
    await keeper.answer(1);
    expect(keeper.asked.map(({ entries }) => entries.map(({ seq }) => seq))).toEqual([[1], [1, 2]]);
    expect(keeper.asked[1]?.head.quote).toBe(session.quote);
    expect(session.saved).toEqual({ kind: 'saved' });
  });

  it('comes again at once when the next change came while it failed, and then with the change after that', async () => {
    const keeper = new HeldKeeper();
    const session = started({ keeper });
    session.dispatch(waste(0.1));
    session.dispatch(waste(0.2));
    await keeper.answer(0, 'No.');
    expect(session.saved.kind).toBe('saving');
    await keeper.answer(1, 'No.');
    expect(session.saved).toEqual({ kind: 'not saved', reason: 'No.' });
    session.dispatch(waste(0.3));
    await keeper.answer(2);
    expect(keeper.asked.map(({ entries }) => entries.map(({ seq }) => seq))).toEqual([[1], [1, 2], [1, 2, 3]]);
    expect(session.saved).toEqual({ kind: 'saved' });
  });

  it('waits for its turn, and then stores all that came meanwhile in one go', async () => {
    const keeper = new HeldKeeper();
    let give = (): void => undefined;
    const turn = (): Promise<void> => new Promise((resolve) => (give = resolve));
    const session = started({ keeper, turn });
    session.dispatch(waste(0.1));
    session.dispatch(waste(0.2));
    await new Promise((later) => setTimeout(later, 0));
    expect([session.saved.kind, keeper.asked]).toEqual(['saving', []]);
    give();
    await new Promise((later) => setTimeout(later, 0));
    await keeper.answer(0);
    expect(keeper.asked.map(({ entries }) => entries.map(({ seq }) => seq))).toEqual([[1, 2]]);
    expect(session.saved).toEqual({ kind: 'saved' });
  });

  it('asks nothing of the keeper for a change that was refused', () => {
    const keeper = new HeldKeeper();
    const session = started({ keeper });
    session.dispatch(waste(7));
    session.undo();
    expect(keeper.asked).toEqual([]);
    expect(session.log).toEqual([]);
  });

  it('without a keeper is never said to have happened, with the reason given', () => {
    expect(started({}).saved.kind).toBe('not saved');
    expect(started({ unkept: 'A private window.' }).saved).toEqual({ kind: 'not saved', reason: 'A private window.' });
  });
});

describe('a session', () => {
  it('refuses an edit the log could not give back: a title of 2,001 characters', () => {
    const session = started({});
    expect(session.dispatch({ kind: 'retitle', title: 'x'.repeat(2001) })).toMatchObject({ kind: 'refused' });
    expect(session.dispatch({ kind: 'retitle', title: 'x'.repeat(2000) })).toEqual({ kind: 'done' });
    expect(readQuote(session.quote).kind).toBe('quote');
  });

  it('that is read-only refuses changes with the reason and shows what is stored elsewhere', () => {
    const session = started({});
    session.setReadOnly('Open in another tab.');
    expect(session.dispatch(waste(0.1))).toEqual({ kind: 'refused', reason: 'Open in another tab.' });
    expect(session.undo()).toMatchObject({ kind: 'refused' });
    const other = started({});
    other.dispatch(waste(0.3));
    const [quote, past] = [other.quote, { entries: other.log, seq: other.seq }];
    expect(session.show(quote, past)).toEqual({ kind: 'done' });
    expect([session.quote, session.seq, session.undoable]).toEqual([quote, 1, waste(0.3)]);
    session.setReadOnly(undefined);
    expect(session.undo()).toEqual({ kind: 'done' });
    expect(session.log).toHaveLength(2);
  });

  it('does not put what is stored elsewhere over changes of its own that are not saved', async () => {
    const keeper = new HeldKeeper();
    const session = started({ keeper });
    session.dispatch(waste(0.1));
    expect(session.show(open.quote, { entries: [], seq: 0 })).toMatchObject({ kind: 'refused' });
    await keeper.answer(0, 'No.');
    expect(session.show(open.quote, { entries: [], seq: 0 })).toMatchObject({ kind: 'refused' });
    expect(session.quote.shop.lines).toMatchObject({ resin_waste: 0.1 });
  });

  it('counts on from the last entry stored where the history before it is lost', () => {
    const session = started({ past: { entries: [], seq: 41 } });
    expect(session.undo()).toMatchObject({ kind: 'refused' });
    session.dispatch(waste(0.1));
    expect(session.log).toMatchObject([{ seq: 42 }]);
  });
});
