import { isDeepStrictEqual } from 'node:util';
import { describe, expect, it } from 'vitest';
import type { Edit } from '../../src/quote/edit.ts';
import { cellOfLine, type OptionResults } from '../../src/quote/option-results.ts';
import { passEdit } from '../../src/quote/pass-stop.ts';
import type { SheetPlace } from '../../src/quote/quote-document.ts';
import { toldChecks } from '../../src/quote/told-checks.ts';
import type { QuoteSession } from '../../src/session/quote-session.ts';
import type { Measures } from '../../src/units/measures.ts';
import { toldOptions } from '../../src/views/app/told-options.ts';
import { compareView } from '../../src/views/compare/compare-view.ts';
import { whyView } from '../../src/views/costing/explanation/why-view.ts';
import { boardView } from '../../src/views/costing/results/board-view.ts';
import { type NamedResults, namedResults } from '../../src/views/parts/named-results.ts';
import { measuredFloor } from '../../src/views/parts/plan/measured-floor.ts';
import { ownerFigures } from '../../src/views/price/owner-figures.ts';
import { priceView } from '../../src/views/price/price-view.ts';
import { flake, openQuote, solid } from '../helpers/demo-quote.ts';
import { type ShownSheet, shownSheet } from '../helpers/shown-sheet.ts';
import { unkept } from '../helpers/unkept.ts';

const floor = { kind: 'floor' } as const;
const shop = { kind: 'shop' } as const;
const system = { kind: 'option', option: flake } as const;
const row = 'vacuum';

/** All that is shown of a quote by these results, on every face, of every sheet. */
function shown({ quote }: QuoteSession, options: readonly NamedResults[], measures: Measures): unknown {
  const priceList = new Map();
  const sheet = (place: SheetPlace, results: OptionResults): ShownSheet =>
    shownSheet({ quote, place, results, priceList, measures });
  return {
    shared: options.slice(0, 1).flatMap(({ results }) => [sheet(floor, results), sheet(shop, results)]),
    sheets: options.map(({ id, results }) => sheet({ kind: 'option', option: id }, results)),
    board: boardView(options, undefined, measures),
    whys: options.map(({ results }) => whyView(results, cellOfLine(results, 'price') ?? -1, measures)),
    checks: options.map(({ results }) => toldChecks(results, measures)),
    price: priceView(quote, options, measures),
    owner: options.map(({ results }) => ownerFigures(results, measures)),
    floor: options.map(({ results }) => measuredFloor(results)),
    compared: compareView(options, true, measures),
    turned: compareView(options.toReversed(), true, measures),
    told: toldOptions({ quote, results: (id) => options.find((option) => option.id === id)?.results }, measures),
  };
}

type Step = Edit | 'undo' | 'redo' | 'pass the stop';
const given = { by: 'Dana R.', why: 'The door stays shut.', at: '2026-11-25T14:05:00.000Z' };

const edits: readonly { readonly what: string; readonly edit: Step }[] = [
  { what: 'cracks of 45 ft', edit: { kind: 'enterLine', sheet: floor, line: 'crack_length', value: 45 } },
  { what: 'another waste', edit: { kind: 'enterLine', sheet: shop, line: 'resin_waste', value: 0.12 } },
  { what: 'a cell', edit: { kind: 'enterCell', sheet: system, table: 'tasks', row, column: 'factor', value: 1.4 } },
  {
    what: 'an area more',
    edit: { kind: 'addRow', sheet: floor, table: 'areas', row: 'apron', at: 0, cells: { place: 'apron', length: 8 } },
  },
  {
    what: 'a side of it',
    edit: { kind: 'enterCell', sheet: floor, table: 'areas', row: 'apron', column: 'width', value: 3 },
  },
  { what: 'it goes last', edit: { kind: 'moveRow', sheet: floor, table: 'areas', row: 'apron', to: 1 } },
  {
    what: 'a dear price typed over',
    edit: { kind: 'enterLine', sheet: system, line: 'price', value: { instead: 9000 } },
  },
  { what: 'more cracks under it', edit: { kind: 'enterLine', sheet: floor, line: 'crack_length', value: 400 } },
  { what: 'one step back', edit: 'undo' },
  { what: 'the formula again', edit: { kind: 'enterLine', sheet: system, line: 'price' } },
  { what: 'a second option less', edit: { kind: 'removeOption', option: solid } },
  { what: 'it comes back', edit: 'undo' },
  {
    what: 'many edits in one',
    edit: {
      kind: 'several',
      words: 'the measure',
      edits: [
        { kind: 'enterCell', sheet: floor, table: 'areas', row: 'apron', column: 'length', value: 12 },
        { kind: 'enterCell', sheet: floor, table: 'areas', row: 'apron', column: 'width', value: 4 },
      ],
    },
  },
  { what: 'a new title', edit: { kind: 'retitle', title: 'Juniper Lane' } },
  { what: 'one step back again', edit: 'undo' },
  { what: 'the measure back', edit: 'undo' },
  { what: 'and forward', edit: 'redo' },
  { what: 'the area gone', edit: { kind: 'removeRow', sheet: floor, table: 'areas', row: 'apron' } },
  { what: 'water came in', edit: { kind: 'enterLine', sheet: floor, line: 'moisture_signs', value: 'wet' } },
  { what: 'below grade', edit: { kind: 'enterLine', sheet: floor, line: 'grade', value: 'below_grade' } },
  { what: 'it was dry', edit: { kind: 'enterLine', sheet: floor, line: 'moisture_signs', value: 'dry' } },
  { what: 'a cold slab', edit: { kind: 'enterLine', sheet: floor, line: 'slab_temperature', value: 60 } },
  { what: 'in warm air', edit: { kind: 'enterLine', sheet: floor, line: 'air_temperature', value: 75 } },
  { what: 'that is damp, a stop', edit: { kind: 'enterLine', sheet: floor, line: 'humidity', value: 0.7 } },
  { what: 'somebody goes ahead', edit: 'pass the stop' },
  { what: 'damper air, another stop', edit: { kind: 'enterLine', sheet: floor, line: 'humidity', value: 0.8 } },
  { what: 'as damp as it was', edit: 'undo' },
  { what: 'nobody went ahead', edit: 'undo' },
  {
    what: 'who read it',
    edit: { kind: 'enterLine', sheet: floor, line: 'reader_name', value: { written: 'Dana R.' } },
  },
];

function act(session: QuoteSession, edit: Step) {
  if (edit === 'undo') return session.undo();
  if (edit === 'pass the stop') {
    const results = session.results(flake);
    const pass = results && passEdit(results, flake, 'slab_above_dew', given);
    return pass === undefined ? undefined : session.dispatch(pass);
  }
  return edit === 'redo' ? session.redo() : session.dispatch(edit);
}

function anew(option: NamedResults): NamedResults {
  return { ...option, results: unkept(option.results) };
}

/** Says where they differ only when they do: that takes long with so much to look at. */
function mustBeAlike(one: unknown, other: unknown, what: string): void {
  if (!isDeepStrictEqual(one, other)) expect(one, what).toEqual(other);
}

describe('what every face shows after each of many edits', () => {
  it('is what faces made from nothing show, in feet and in metres', async () => {
    const { session } = await openQuote();
    const look = (what: string, ...all: Measures[]): void => {
      const options = namedResults(session);
      for (const measures of all)
        mustBeAlike(shown(session, options, measures), shown(session, options.map(anew), measures), what);
    };
    look('as it was opened', 'us', 'metric');
    for (const [at, { what, edit }] of edits.entries()) {
      expect(act(session, edit), what).toEqual({ kind: 'done' });
      look(what, at % 4 === 3 ? 'metric' : 'us');
    }
  });

  it('is so too where another tab changed the quote, and where one tab shows two quotes', async () => {
    const [here, elsewhere] = [await openQuote(), await openQuote()];
    for (const { what, edit } of edits.slice(0, 4)) {
      act(elsewhere.session, edit);
      const options = [...namedResults(here.session), ...namedResults(elsewhere.session)];
      mustBeAlike(compareView(options, true, 'us'), compareView(options.map(anew), true, 'us'), what);
    }
    const { quote, log, seq } = elsewhere.session;
    here.session.show(quote, { entries: log, seq });
    const options = namedResults(here.session);
    const now = shown(here.session, options, 'us');
    mustBeAlike(now, shown(here.session, options.map(anew), 'us'), 'as stored');
    mustBeAlike(now, shown(elsewhere.session, namedResults(elsewhere.session), 'us'), 'as in the other tab');
  });
});
