import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Edit } from '../../src/quote/edit.ts';
import type { editSchema } from '../../src/quote/edit-schema.ts';
import { historyOf, type LogEntry, type Move, movedHistory } from '../../src/quote/quote-log.ts';
import { readLog } from '../../src/quote/read-log.ts';
import { printedSeed } from '../helpers/random-seed.ts';

const retitle = (title: string): Edit => ({ kind: 'retitle', title });
const at = '2026-05-31T14:05:09.120Z';

/** The log of titles, written by a walk along an array with a cursor; a move with nowhere to go writes nothing. */
function walked(moves: readonly Move[]): { log: LogEntry[]; steps: readonly string[]; cursor: number } {
  const log: LogEntry[] = [];
  let steps: string[] = [];
  let cursor = 0;
  const write = (from: string, to: string, move: Move): void => {
    log.push({ seq: log.length + 1, edit: retitle(to), inverse: retitle(from), at, moves: move });
  };
  const titleAt = (place: number): string => (place === 0 ? 'first' : (steps[place - 1] ?? ''));
  for (const [number, move] of moves.entries()) {
    const here = titleAt(cursor);
    if (move === 'done') {
      steps = [...steps.slice(0, cursor), `title ${number}`];
      cursor += 1;
    } else if (move === 'undone' && cursor > 0) cursor -= 1;
    else if (move === 'redone' && cursor < steps.length) cursor += 1;
    else continue;
    write(here, titleAt(cursor), move);
  }
  return { log, steps, cursor };
}

const moves = fc.array(fc.constantFrom<Move>('done', 'done', 'undone', 'redone'), { maxLength: 40 });

describe('the history of a log', () => {
  it('is, after any moves, what a cursor in the list of steps has before and after it', () => {
    const seed = printedSeed('quote log');
    fc.assert(
      fc.property(moves, (wanted) => {
        const { log, steps, cursor } = walked(wanted);
        const { done, undone } = historyOf(log);
        expect(done.map(({ edit }) => edit)).toEqual(steps.slice(0, cursor).map(retitle));
        expect(undone.map(({ edit }) => edit).reverse()).toEqual(steps.slice(cursor).map(retitle));
        expect(log.reduce(movedHistory, historyOf([]))).toEqual({ done, undone });
      }),
      { seed, numRuns: 300 },
    );
  });

  it('keeps for redo the edit and inverse of the first time, not those of the entry that undid it', () => {
    const { log } = walked(['done', 'undone']);
    expect(historyOf(log).undone).toEqual([{ edit: retitle('title 0'), inverse: retitle('first') }]);
  });

  it('cannot be told of a log that undoes more than was done', () => {
    const [entry] = walked(['done']).log;
    if (entry === undefined) throw new Error('Nothing was written');
    expect(() => historyOf([{ ...entry, moves: 'undone' }])).toThrow(/not there/);
  });
});

describe('reading a log', () => {
  const { log } = walked(['done', 'done', 'undone', 'redone', 'done']);

  it('gives the entries back, also through JSON', () => {
    expect(readLog(JSON.parse(JSON.stringify(log)))).toEqual({ kind: 'log', entries: log });
  });

  it('refuses one with a gap, in another order, or that moves over what is not there', () => {
    expect(readLog(log.slice(1))).toMatchObject({ kind: 'fault', reason: expect.stringMatching(/Entry 1 .*missing/) });
    expect(readLog(log.toSpliced(1, 1))).toMatchObject({ reason: expect.stringMatching(/Entry 2 .*missing/) });
    expect(readLog([...log].reverse())).toMatchObject({ kind: 'fault' });
    const undone = log.map((entry) => ({ ...entry, moves: 'undone' }));
    expect(readLog(undone)).toMatchObject({ reason: expect.stringMatching(/not there/) });
  });

  it('refuses an edit of an unknown kind, one with an unknown property, and a time that is none', () => {
    const [first] = log;
    const faulty = [
      { ...first, edit: { kind: 'burn' } },
      { ...first, edit: { kind: 'retitle', title: 'x', also: 1 } },
      { ...first, at: 'yesterday' },
      { ...first, seq: 1.5 },
      { ...first, edit: JSON.parse('{"kind":"retitle","title":"x","__proto__":{"polluted":1}}') },
    ];
    for (const entry of faulty) expect(readLog([entry])).toMatchObject({ kind: 'fault' });
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
  });

  it('knows every kind of edit: this does not compile when one has no schema', () => {
    type UnreadEdit = Exclude<Edit['kind'], ReturnType<typeof editSchema.parse>['kind']>;
    const none: [UnreadEdit] extends [never] ? 'none' : UnreadEdit = 'none';
    expect(none).toBe('none');
  });
});
