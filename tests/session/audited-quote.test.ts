import { afterEach, describe, expect, it, vi } from 'vitest';
import { Auditor } from '../../src/engine/auditor.ts';
import { faultNotes } from '../../src/quote/log-notes.ts';
import { lineValue } from '../../src/quote/option-results.ts';
import { readLog } from '../../src/quote/read-log.ts';
import type { QuoteSession } from '../../src/session/quote-session.ts';
import { auditBeside } from '../helpers/auditor-beside.ts';
import { openQuote } from '../helpers/demo-quote.ts';
import { openFaulty } from '../helpers/faulty-rounding.ts';

const shop = { kind: 'shop' } as const;
const floor = { kind: 'floor' } as const;
const waste = (value: number) => ({ kind: 'enterLine', sheet: shop, line: 'resin_waste', value }) as const;

async function audited(newAuditor?: () => Auditor, systems = ['repair-only']) {
  const beside = auditBeside(newAuditor);
  const { session } = await openQuote(systems, beside.audit.openWorkbook);
  beside.audit.start((finding) => {
    beside.findings.push(finding);
    session.take(finding);
  });
  return { ...beside, session };
}

const priceIn = (session: QuoteSession) => {
  const results = session.results(session.quote.options[0]?.id ?? '');
  if (results === undefined) throw new Error('There is no option');
  return lineValue(results, 'price');
};

afterEach(() => {
  vi.useRealTimers();
});

describe('a quote that is worked out again when the page rests', () => {
  it('agrees in every cell of both options: at first, after a value, after a row, and after undoing', async () => {
    const { session, rest, findings, requests } = await audited(undefined, ['repair-only', 'grind-and-seal']);
    rest();
    session.dispatch(waste(0.11));
    rest();
    session.dispatch({ kind: 'addRow', sheet: floor, table: 'areas', row: 'shed', at: 1, cells: { place: 'shed' } });
    rest();
    session.undo();
    rest();
    expect(findings).toEqual([{ kind: 'same' }, { kind: 'same' }, { kind: 'same' }, { kind: 'same' }]);
    const cells = requests.map(({ options }) => options.map(({ values }) => values.length));
    expect(cells[0]?.every((count) => count > 500)).toBe(true);
    // The plans go over once; a rebuild is another workbook.
    expect(requests.map(({ options }) => options.map(({ plan }) => plan !== undefined))).toEqual([
      [true, true],
      [false, false],
      [true, true],
      [true, true],
    ]);
    expect(session.faults).toEqual([]);
  });

  it('asks one question for many quick edits, and drops the answer to a question the quote has left behind', async () => {
    const { session, rest, restWithoutAnswer, findings, requests } = await audited();
    rest();
    session.dispatch(waste(0.11));
    session.dispatch(waste(0.12));
    const letThrough = restWithoutAnswer();
    expect(requests).toHaveLength(2);
    session.dispatch(waste(0.13));
    letThrough();
    expect(findings).toHaveLength(1);
    rest();
    expect(findings).toHaveLength(2);
    expect(requests.at(-1)?.options[0]?.entered.size).toBe(1);
  });

  it('says nothing where no auditor can be had, and tells the next one everything: after an edit, or after a minute', async () => {
    vi.useFakeTimers();
    const { session, rest, restWithoutAnswer, lose, findings, requests } = await audited();
    restWithoutAnswer();
    lose();
    expect([session.faults, findings]).toEqual([[], []]);
    session.dispatch(waste(0.11));
    rest();
    expect(findings).toEqual([{ kind: 'same' }]);
    lose();
    rest();
    expect(findings).toHaveLength(1);
    vi.advanceTimersByTime(60_000);
    rest();
    expect(findings).toEqual([{ kind: 'same' }, { kind: 'same' }]);
    expect(requests.every(({ options }) => options.every(({ plan }) => plan !== undefined))).toBe(true);
  });

  it('is left alone once it is closed, and looked at anew when it is open again', async () => {
    const { session, audit, rest, findings } = await audited();
    rest();
    audit.stop();
    session.dispatch(waste(0.11));
    rest();
    expect(findings).toHaveLength(1);
    audit.start((finding) => findings.push(finding));
    rest();
    expect(findings).toHaveLength(2);
  });
});

describe('an evaluator that rounds up a step too far', () => {
  it('is told as a fault with the names of cells and both values, and the page keeps its own number', async () => {
    const { session, rest, findings } = await audited(() => new Auditor(openFaulty));
    const price = priceIn(session);
    const [option] = session.quote.options;
    rest();
    const [finding] = findings;
    if (finding?.kind !== 'differs') throw new Error('No difference was found');
    const places = finding.cells.filter((cell) => cell.option === option?.id).map(({ cell }) => cell.place);
    expect(places).toContainEqual({ kind: 'line', name: 'price' });
    const told = finding.cells.find(({ cell }) => cell.place.kind === 'line' && cell.place.name === 'price');
    expect(told?.page).toBe(price);
    expect(told?.auditor).not.toBe(price);
    expect(priceIn(session)).toBe(price);
    // What follows from another cell comes after it.
    const first = finding.cells[0]?.cell;
    expect(first?.content.kind).toBe('formula');
    expect(session.faults[0]).toMatch(
      /^Repair only: \S+( row \d+)? is .+ on this page and .+ when worked out again\.$/,
    );
    expect(session.faults.at(-1)).toMatch(/^So do \d+ more/);
  });

  it('is kept in the log once, which reads back, and undo and redo go past it', async () => {
    const { session, rest } = await audited(() => new Auditor(openFaulty));
    session.dispatch(waste(0.11));
    session.dispatch(waste(0.12));
    session.undo();
    rest();
    rest();
    expect(session.log.map(({ moves, edit }) => [moves, edit.kind])).toEqual([
      ['done', 'enterLine'],
      ['done', 'enterLine'],
      ['undone', 'restoreLine'],
      ['done', 'several'],
    ]);
    expect(faultNotes(session.log).map(({ words }) => words)).toEqual([session.faults.join(' ')]);
    expect(session.redo()).toEqual({ kind: 'done' });
    expect(session.quote.shop.lines).toEqual({ resin_waste: 0.12 });
    expect([session.undo(), session.undo()]).toEqual([{ kind: 'done' }, { kind: 'done' }]);
    expect(session.quote.shop.lines).toEqual({});
    expect(session.undoable).toBeUndefined();
    const read = readLog(structuredClone(session.log));
    expect(read).toEqual({ kind: 'log', entries: session.log });
  });

  it('is told but not written where another tab has the quote', async () => {
    const { session, rest } = await audited(() => new Auditor(openFaulty));
    session.setReadOnly('Another tab has it.');
    rest();
    expect(session.faults.length).toBeGreaterThan(1);
    expect(session.log).toEqual([]);
  });

  it('is no longer told when both ways agree again, and stays in the log', async () => {
    let turn = 0;
    const openFaultyFirst = () => {
      turn += 1;
      return turn === 1 ? new Auditor(openFaulty) : new Auditor();
    };
    const { session, audit, rest } = await audited(openFaultyFirst);
    rest();
    audit.stop();
    audit.start((finding) => session.take(finding));
    rest();
    expect(session.faults).toEqual([]);
    expect(faultNotes(session.log)).toHaveLength(1);
  });

  it('that cannot work the quote out at all is told too', async () => {
    const open = () => {
      throw new Error('coats.gallons, row 2 is empty');
    };
    const { session, rest } = await audited(() => new Auditor(open));
    rest();
    expect(session.faults).toEqual(['The quote could not be worked out again: coats.gallons, row 2 is empty.']);
    expect(priceIn(session)).toBeGreaterThan(1000);
  });
});
