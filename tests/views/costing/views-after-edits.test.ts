import { describe, expect, it } from 'vitest';
import type { Edit } from '../../../src/quote/edit.ts';
import type { OptionResults } from '../../../src/quote/option-results.ts';
import type { SheetPlace } from '../../../src/quote/quote-document.ts';
import { openChecks } from '../../../src/quote/told-checks.ts';
import {
  type BoardGroup,
  type BoardRow,
  type BoardView,
  boardView,
} from '../../../src/views/costing/results/board-view.ts';
import type { ShownSection } from '../../../src/views/costing/sheet/shown-sheet.ts';
import { flake, type OpenQuote, openQuote } from '../../helpers/demo-quote.ts';
import { type ShownSheet, shownSheet } from '../../helpers/shown-sheet.ts';
import { unkept } from '../../helpers/unkept.ts';

const floor: SheetPlace = { kind: 'floor' };
const system: SheetPlace = { kind: 'option', option: flake };
const priceList = new Map();

function resultsIn({ session }: OpenQuote): OptionResults {
  const results = session.results(flake);
  if (results === undefined) throw new Error('The option has no results');
  return results;
}

/** A sheet of the open quote, as Costing shows it by these results. */
function sheetAt({ session: { quote } }: OpenQuote, place: SheetPlace, results: OptionResults): ShownSheet {
  return shownSheet({ quote, place, results, priceList, measures: 'us' });
}

/** Costing’s views of a sheet and the first option, over the edits of a session. */
function looking(opened: OpenQuote) {
  const { session } = opened;
  let board: BoardView | undefined;
  let before: BoardView | undefined;
  session.subscribe(() => {
    before = board;
  });
  const look = (place: SheetPlace = floor) => {
    const results = resultsIn(opened);
    board = boardView([{ id: flake, title: 'Full flake', results }], before);
    return { sheet: sheetAt(opened, place, results), board, checks: openChecks(results) };
  };
  const forget = (): void => {
    before = undefined;
  };
  return { session, look, forget };
}

/** The same before and after an edit. */
function around(opened: OpenQuote, edit: Edit, place = floor) {
  const { session, look } = looking(opened);
  const before = look(place);
  const done = session.dispatch(edit);
  if (done.kind === 'refused') throw new Error(done.reason);
  return { before, after: look(place) };
}

/** A board as if nothing on it had moved. */
function unmoved({ options, groups }: BoardView): BoardView {
  const still = ({ rows, title }: BoardGroup): BoardGroup => ({
    title,
    rows: rows.map((row) => ({ ...row, values: row.values.map((value) => ({ ...value, delta: '' })) })),
  });
  return { options, groups: groups.map(still) };
}

function rowOf({ groups }: BoardView, line: string): BoardRow | undefined {
  return groups.flatMap(({ rows }) => rows).find((row) => row.line === line);
}

function deltaOf(board: BoardView, line: string): string | undefined {
  return rowOf(board, line)?.values[0]?.delta;
}

const enter = (line: string, value: number): Edit => ({ kind: 'enterLine', sheet: floor, line, value });

function sectionOf({ sections }: ShownSheet, line: string): ShownSection {
  const found = sections.find(({ lines }) => lines.some(({ name }) => name === line));
  if (found === undefined) throw new Error(`No section has ${line}`);
  return found;
}

describe('the views of Costing after 45 ft of cracks are entered in place of 20', () => {
  it('are new for the section of the entry and for the price', async () => {
    const { before, after } = around(await openQuote(), enter('crack_length', 45));
    expect(sectionOf(after.sheet, 'crack_length')).not.toBe(sectionOf(before.sheet, 'crack_length'));
    const typed = sectionOf(after.sheet, 'crack_length').lines.find(({ name }) => name === 'crack_length')?.typed;
    expect(typed).toBe('45');
    expect(rowOf(after.board, 'price')).not.toEqual(rowOf(before.board, 'price'));
  });

  it('are the same objects for all lines and sections that say the same', async () => {
    const { before, after } = around(await openQuote(), enter('crack_length', 45));
    const pairs = before.sheet.sections.map((section, at) => [section, after.sheet.sections[at]] as const);
    const same = pairs.filter(([earlier, later]) => earlier === later);
    expect(same.length).toBeGreaterThan(2);
    for (const [earlier, later] of pairs) {
      if (earlier !== later) expect(later).not.toEqual(earlier);
    }
  });

  it('say what views made from nothing say', async () => {
    const opened = await openQuote();
    const { after } = around(opened, enter('crack_length', 45));
    const anew = unkept(resultsIn(opened));
    expect(after.sheet).toEqual(sheetAt(opened, floor, anew));
    expect(unmoved(after.board)).toEqual(boardView([{ id: flake, title: 'Full flake', results: anew }], undefined));
    expect(after.checks).toEqual(openChecks(anew));
  });

  it('say how far the price moved, and the same way back when the edit is undone', async () => {
    const { session, look, forget } = looking(await openQuote());
    look();
    session.dispatch(enter('crack_length', 45));
    const [there] = [deltaOf(look().board, 'price')];
    session.undo();
    const back = deltaOf(look().board, 'price');
    expect(there).toMatch(/^\+\$\d/);
    expect(back).toBe(there?.replace('+$', '−$'));
    forget();
    expect(deltaOf(look().board, 'price')).toBe('');
  });
});

describe('the sheets of Costing after each of many edits', () => {
  const row = 'vacuum';
  const edits: readonly { readonly edit: Edit | 'undo' | 'redo'; readonly what: string }[] = [
    { what: 'an entry of the floor', edit: enter('crack_length', 45) },
    {
      what: 'another of the shop',
      edit: { kind: 'enterLine', sheet: { kind: 'shop' }, line: 'resin_waste', value: 0.12 },
    },
    {
      what: 'a cell',
      edit: { kind: 'enterCell', sheet: system, table: 'tasks', row, column: 'factor', value: 1.4 },
    },
    {
      what: 'a number over a cell’s formula',
      edit: {
        kind: 'enterCell',
        sheet: system,
        table: 'tasks',
        row: 'fill_cracks',
        column: 'by_rate',
        value: { instead: 3 },
      },
    },
    { what: 'an entry that this formula reads', edit: enter('crack_length', 400) },
    {
      what: 'a number over a line’s formula',
      edit: { kind: 'enterLine', sheet: system, line: 'price', value: { instead: 5000 } },
    },
    { what: 'undoing', edit: 'undo' },
    { what: 'undoing again', edit: 'undo' },
    { what: 'doing again', edit: 'redo' },
    { what: 'the entry taken back', edit: { kind: 'restoreLine', sheet: floor, line: 'crack_length' } },
  ];

  it('say what sheets made from nothing say, whichever was shown in between', async () => {
    const opened = await openQuote();
    const { session, look } = looking(opened);
    for (const { edit, what } of edits) {
      if (edit === 'undo') session.undo();
      else if (edit === 'redo') session.redo();
      else expect(session.dispatch(edit), what).toEqual({ kind: 'done' });
      for (const place of [floor, system, system, { kind: 'shop' } as const])
        expect(look(place).sheet, `${what}, seen in ${place.kind}`).toEqual(
          sheetAt(opened, place, unkept(resultsIn(opened))),
        );
    }
  });

  it('say so also of the one sheet that stays in view', async () => {
    const opened = await openQuote();
    const { session, look } = looking(opened);
    look(system);
    for (const { edit, what } of edits) {
      if (edit === 'undo') session.undo();
      else if (edit === 'redo') session.redo();
      else session.dispatch(edit);
      expect(look(system).sheet, what).toEqual(sheetAt(opened, system, unkept(resultsIn(opened))));
    }
  });
});

describe('a price of $5,000 typed over its formula', () => {
  it('stands beside what the formula gives now, though the price itself does not move', async () => {
    const opened = await openQuote();
    const { session } = opened;
    session.dispatch({ kind: 'enterLine', sheet: system, line: 'price', value: { instead: 5000 } });
    const { before, after } = around(opened, enter('crack_length', 400), system);
    const price = ({ sheet }: typeof before) => sectionOf(sheet, 'price').lines.find(({ name }) => name === 'price');
    expect([price(before)?.shown, price(after)?.shown]).toEqual(['$5,000.00', '$5,000.00']);
    expect(price(after)?.worked).not.toBe(price(before)?.worked);
  });
});
