import { describe, expect, it } from 'vitest';
import type { Edit } from '../../../src/quote/edit.ts';
import type { SheetPlace } from '../../../src/quote/quote-document.ts';
import { KeptCosting } from '../../../src/views/costing/kept-costing.ts';
import type { SectionView, SheetView } from '../../../src/views/costing/sheet-view.ts';
import { flake, type OpenQuote, openQuote } from '../../helpers/demo-quote.ts';

const floor: SheetPlace = { kind: 'floor' };
const system: SheetPlace = { kind: 'option', option: flake };
const priceList = new Map();

/** Costing’s views of a sheet and the first option, before and after an edit. */
function around({ session }: OpenQuote, edit: Edit, place = floor) {
  const kept = new KeptCosting();
  session.subscribe((changes) => kept.changed(changes));
  const look = () => {
    const results = session.results(flake);
    if (results === undefined) throw new Error('The option has no results');
    const option = { id: flake, title: 'Full flake', results };
    return {
      sheet: kept.sheet(session, place, results, priceList, 'us'),
      board: kept.board([option], () => undefined, 'us'),
      checks: kept.checks(option, 'us'),
    };
  };
  const before = look();
  const done = session.dispatch(edit);
  if (done.kind === 'refused') throw new Error(done.reason);
  return { before, after: look() };
}

const enter = (line: string, value: number): Edit => ({ kind: 'enterLine', sheet: floor, line, value });

function sectionOf({ sections }: SheetView, line: string): SectionView {
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
    const price = ({ rows }: typeof before.board) => rows.find((row) => row.kind === 'line' && row.line === 'price');
    expect(price(after.board)).not.toEqual(price(before.board));
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
    const results = opened.session.results(flake);
    if (results === undefined) throw new Error('The option has no results');
    const anew = new KeptCosting();
    expect(after.sheet).toEqual(anew.sheet(opened.session, floor, results, priceList, 'us'));
    const option = { id: flake, title: 'Full flake', results };
    expect(after.board).toEqual(anew.board([option], () => undefined, 'us'));
    expect(after.checks).toEqual(anew.checks(option, 'us'));
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
