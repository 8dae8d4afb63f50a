import { describe, expect, it } from 'vitest';
import type { Edit } from '../../src/quote/edit.ts';
import type { QuoteDocument, StoredValue } from '../../src/quote/quote-document.ts';
import { readLog } from '../../src/quote/read-log.ts';
import { readQuote } from '../../src/quote/read-quote.ts';
import { saidTexts } from '../../src/quote/said-texts.ts';
import { openChecks } from '../../src/quote/told-checks.ts';
import { writtenNotes } from '../../src/quote/written-notes.ts';
import { editWords } from '../../src/views/app/edit-words.ts';
import { compareView } from '../../src/views/compare/compare-view.ts';
import { namedResults } from '../../src/views/parts/named-results.ts';
import { priceView } from '../../src/views/price/price-view.ts';
import { flake, type OpenQuote, openQuote, solid } from '../helpers/demo-quote.ts';

const floor = { kind: 'floor' } as const;
const dana: Edit = { kind: 'enterLine', sheet: floor, line: 'reader_name', value: { written: 'Dana R.' } };
const damp: Edit = {
  kind: 'addRow',
  sheet: floor,
  table: 'moisture_tests',
  row: 'moisture_tests_1',
  at: 0,
  cells: { method: 'sheet', exposure: 20, sheet_seen: 'damp' },
};
const ari: Edit = {
  kind: 'enterCell',
  sheet: floor,
  table: 'moisture_tests',
  row: 'moisture_tests_1',
  column: 'taken_by',
  value: { written: 'Ari K.' },
};

function resultsOf({ workbooks }: OpenQuote, option = flake) {
  const results = workbooks.results(option);
  if (results === undefined) throw new Error('The option has no results');
  return results;
}

function dispatch({ session }: OpenQuote, edit: Edit): string {
  const result = session.dispatch(edit);
  return result.kind === 'refused' ? result.reason : '';
}

const saysOf = (open: OpenQuote, option: string, name: string) =>
  openChecks(resultsOf(open, option)).find((check) => check.name === name)?.says;

describe('words in a quote', () => {
  it.each(['engine', 'closures'] as const)(
    'are told at once in every option by the %s, and no number is another',
    async (by) => {
      const open = await openQuote(undefined, by);
      const price = resultsOf(open).option.plan.lines.get('price') ?? -1;
      const before = resultsOf(open).read(price);
      const told = () => [flake, solid].map((option) => saysOf(open, option, 'weather_is_go'));
      for (const says of told()) expect(says).toContain('Read by: nobody is named; no date.');
      expect(dispatch(open, dana)).toBe('');
      for (const says of told()) expect(says).toContain('Read by: Dana R.; no date.');
      expect(resultsOf(open).read(price)).toBe(before);
    },
  );

  it('name who read the slab in the text of a go, and who read each moisture test in its caution', async () => {
    const open = await openQuote();
    for (const edit of [damp, ari, dana]) expect(dispatch(open, edit)).toBe('');
    expect(saysOf(open, flake, 'moisture_tests.moisture_tests_1.sheet_within')).toContain('Read by: Ari K.; no date.');
    const values: readonly [string, StoredValue][] = [
      ['reading_taken', 1],
      ['read_by', 'owner'],
      ['reading_date', '2026-01-19'],
    ];
    for (const [line, value] of values)
      expect(dispatch(open, { kind: 'enterLine', sheet: floor, line, value })).toBe('');
    const day = saidTexts(resultsOf(open), 'day');
    expect(day.find(({ name }) => name === 'day_reading')?.text).toBe(
      'Read by: Dana R.; role: owner; Jan 19, 2026, 7 am.',
    );
    expect(writtenNotes(resultsOf(open))).toEqual([
      { label: 'Read by, name', words: 'Dana R.' },
      { label: 'Moisture tests, Moisture tests 1: Read by, name', words: 'Ari K.' },
    ]);
  });

  it('are called by their label where undo says what it takes back', async () => {
    const open = await openQuote();
    for (const edit of [damp, dana]) expect(dispatch(open, edit)).toBe('');
    expect(editWords(open.session.undoable, resultsOf(open), 'us')).toBe('Read by, name');
  });

  it('are taken back and done again with everything they are told in', async () => {
    const open = await openQuote(undefined, 'engine');
    expect(dispatch(open, damp)).toBe('');
    const before = open.session.quote;
    for (const edit of [dana, ari]) {
      const told = () => resultsOf(open).option.written;
      const [quote, words] = [open.session.quote, told()];
      expect(dispatch(open, edit)).toBe('');
      const [after, wordsAfter] = [open.session.quote, told()];
      expect(wordsAfter).not.toEqual(words);
      expect(open.session.undo()).toEqual({ kind: 'done' });
      expect([open.session.quote, told()]).toEqual([quote, words]);
      expect(open.session.redo()).toEqual({ kind: 'done' });
      expect([open.session.quote, told()]).toEqual([after, wordsAfter]);
    }
    expect(open.session.quote).not.toEqual(before);
  });

  it('come back from what is stored: the quote, and each edit with its inverse', async () => {
    const open = await openQuote();
    for (const edit of [damp, dana, ari]) expect(dispatch(open, edit)).toBe('');
    const stored: unknown = JSON.parse(JSON.stringify(open.session.quote));
    expect(readQuote(stored)).toEqual({ kind: 'quote', quote: open.session.quote });
    const { log } = open.session;
    expect(readLog(JSON.parse(JSON.stringify(log)))).toEqual({ kind: 'log', entries: log });
    const again = await openQuote();
    expect(again.workbooks.load(open.session.quote).kind).toBe('followed');
    expect(resultsOf(again).option.written).toEqual(resultsOf(open).option.written);
  });

  it.each([
    [{ ...dana, value: { written: 'x'.repeat(81) } }, 'At most 80 characters may stand here; these are 81.'],
    [{ ...dana, value: { written: 'Dana\nR.' } }, 'Only plain text in one line may stand here.'],
    [{ ...dana, value: 'dana' }, '“Read by, name” takes words that a person writes.'],
    [{ ...dana, value: { instead: 7 } }, '“Read by, name” is not worked out; enter it instead.'],
    [{ ...dana, line: 'humidity' }, '“Relative humidity” takes no words.'],
    [{ ...dana, line: 'reading_date', value: { written: '2026-01-19' } }, '“Read on” takes no words.'],
  ] satisfies readonly (readonly [Edit, string])[])('are refused with the reason: %j', async (edit, reason) => {
    const open = await openQuote();
    expect(dispatch(open, edit)).toBe(reason);
    expect(open.session.quote).toBe(open.quote);
  });

  it('do not come from a file with more characters, or with control characters', async () => {
    const { quote } = await openQuote();
    const withName = (name: string): QuoteDocument => ({
      ...quote,
      floor: { lines: { reader_name: { written: name } }, tables: {} },
    });
    expect(readQuote(withName('Dana R.')).kind).toBe('quote');
    for (const name of ['x'.repeat(81), 'Dana\u0007']) expect(readQuote(withName(name)).kind).toBe('fault');
  });

  it('stand on no face that a customer sees: Price and Side by side', async () => {
    const open = await openQuote();
    for (const edit of [damp, dana, ari]) expect(dispatch(open, edit)).toBe('');
    const options = namedResults({ quote: open.session.quote, results: (option) => open.workbooks.results(option) });
    const shown = JSON.stringify([
      priceView(open.session.quote, options, 'us'),
      compareView(options, false, 'us'),
      compareView(options, true, 'us'),
    ]);
    expect(shown.length).toBeGreaterThan(2000);
    expect(shown).not.toMatch(/Dana|Ari K/);
    expect(JSON.stringify(openChecks(options[0]?.results ?? resultsOf(open)))).toMatch(/Dana.*Ari K|Ari K.*Dana/);
  });
});
