import { describe, expect, it } from 'vitest';
import type { Edit } from '../../../../src/quote/edit.ts';
import type { SheetPlace } from '../../../../src/quote/quote-document.ts';
import { editOf } from '../../../../src/views/costing/costing-edits.ts';
import type { ShownTable } from '../../../../src/views/costing/sheet/shown-table.ts';
import type { ShownField } from '../../../../src/views/parts/shown-field.ts';
import { flake, type OpenQuote, openQuote } from '../../../helpers/demo-quote.ts';
import { type ShownSheet, shownSheet } from '../../../helpers/shown-sheet.ts';

const system: SheetPlace = { kind: 'option', option: flake };

function viewOf({ session }: OpenQuote, place: SheetPlace = system): ShownSheet {
  const results = session.results(flake);
  if (results === undefined) throw new Error('The option has no results');
  return shownSheet({ quote: session.quote, place, results, priceList: new Map(), measures: 'us' });
}

function dispatch({ session }: OpenQuote, edit: Edit): void {
  const result = session.dispatch(edit);
  if (result.kind === 'refused') throw new Error(result.reason);
}

function tableIn(view: ShownSheet, name: string): ShownTable {
  const table = view.sections.flatMap(({ tables }) => tables).find((candidate) => candidate.name === name);
  if (table === undefined) throw new Error(`There is no table ${name}`);
  return table;
}

function lineIn(view: ShownSheet, name: string): ShownField {
  const line = view.sections.flatMap(({ lines }) => lines).find((candidate) => candidate.name === name);
  if (line === undefined) throw new Error(`There is no line ${name}`);
  return line;
}

function cellIn(view: ShownSheet, table: string, at: number, column: string): ShownField {
  const cell = tableIn(view, table).rows[at]?.fields.find(({ name }) => name === column);
  if (cell === undefined) throw new Error(`There is no cell ${table}.${at}.${column}`);
  return cell;
}

const firstRow = (view: ShownSheet, table: string): string => tableIn(view, table).rows[0]?.id ?? '';

describe('a sheet as a screen shows it', () => {
  it('tells what is needed, bought and paid on the cards of a table to buy by, and three numbers at most on any', async () => {
    const quote = await openQuote();
    const view = viewOf(quote);
    expect(tableIn(view, 'buy_volume').telling).toEqual(['need', 'cost', 'packs']);
    expect(tableIn(view, 'coats').telling).toEqual(['wet_mils', 'coverage', 'gallons']);
    const tables = view.sections.flatMap(({ tables: all }) => all);
    expect(tables.length).toBeGreaterThan(5);
    for (const { telling, columns } of tables) {
      expect(telling.length).toBeLessThanOrEqual(3);
      for (const name of telling) expect(columns.find((column) => column.name === name)?.detail).toBe(false);
    }
  });

  it('says what may be entered: areas from 0 to 2,000 ft', async () => {
    const view = viewOf(await openQuote(), { kind: 'floor' });
    expect(cellIn(view, 'areas', 0, 'length').limits).toBe('0 to 2,000 ft');
  });

  it('leaves out a text whose condition does not hold: a wait for a reading, and no go', async () => {
    const quote = await openQuote();
    const told = () =>
      viewOf(quote)
        .sections.filter(({ id }) => id === 'go-or-wait')
        .flatMap(({ lines }) => lines.map(({ name }) => name));
    expect(told()).toEqual(['day_wait_reading']);
    const floor: SheetPlace = { kind: 'floor' };
    dispatch(quote, { kind: 'enterLine', sheet: floor, line: 'reading_taken', value: 1 });
    dispatch(quote, { kind: 'enterLine', sheet: floor, line: 'read_by', value: 'owner' });
    dispatch(quote, { kind: 'enterLine', sheet: floor, line: 'reading_date', value: '2026-01-19' });
    expect(told()).toEqual(['day_go', 'day_reading']);
  });

  it('says what the formula of a line gives where a number stands instead of it', async () => {
    const quote = await openQuote();
    const before = lineIn(viewOf(quote), 'price');
    expect(before).toMatchObject({ standing: 'worked out', typeOver: 'departure', worked: '' });
    dispatch(quote, { kind: 'enterLine', sheet: system, line: 'price', value: { instead: 5000 } });
    const after = lineIn(viewOf(quote), 'price');
    expect(after).toMatchObject({ standing: 'departed', shown: '$5,000.00', worked: before.shown });
  });

  it('says that a constant is one, and offers no way to type over it', async () => {
    const shop = viewOf(await openQuote(), { kind: 'shop' });
    for (const name of ['inches_per_foot', 'film_constant'])
      expect(lineIn(shop, name)).toMatchObject({ kind: 'result', standing: 'constant', typeOver: 'never' });
  });

  it('takes what people call a row, says what it was called, and leaves the rows of the shop their names', async () => {
    const quote = await openQuote();
    const floor: SheetPlace = { kind: 'floor' };
    const names = (place: SheetPlace, table: string) =>
      viewOf(quote, place)
        .sections.flatMap(({ tables }) => tables)
        .find(({ name }) => name === table)
        ?.rows.map(({ fields }) => fields[0]);
    expect(names(floor, 'areas')).toMatchObject([{ kind: 'words', shown: 'Bay', typed: 'Bay', chosen: '' }]);
    const rename = { kind: 'enterCell', sheet: floor, table: 'areas', row: 'bay', column: 'place' } as const;
    dispatch(quote, { ...rename, value: { written: 'Car bay, left' } });
    expect(names(floor, 'areas')).toMatchObject([{ shown: 'Car bay, left', standing: 'changed', standard: 'Bay' }]);
    quote.session.undo();
    expect(names(floor, 'areas')).toMatchObject([{ shown: 'Bay', standing: 'unchecked' }]);
    expect(names({ kind: 'shop' }, 'machine_sets')?.map((field) => field?.kind)).toEqual([
      'result',
      'result',
      'result',
    ]);
  });

  it('names the lines nobody has looked at; checked in one step, they are our standard still, and one undo takes it back', async () => {
    const quote = await openQuote();
    const shop: SheetPlace = { kind: 'shop' };
    const section = () => viewOf(quote, shop).sections.find(({ unchecked }) => unchecked.length > 2);
    const { id, unchecked: checked } = section() ?? { id: '', unchecked: [] };
    const lineNow = (name: string) => lineIn(viewOf(quote, shop), name);
    const before = checked.map((name) => lineNow(name));
    expect(new Set(before.map(({ standing }) => standing))).toEqual(new Set(['unchecked']));
    const { results, priceList } = { results: quote.workbooks.results(flake), priceList: quote.priceList };
    if (results === undefined) throw new Error('The quote has no full flake');
    dispatch(quote, editOf('lines-checked', { checked }, { sheet: shop, results, priceList }).edit);
    expect(viewOf(quote, shop).sections.find((one) => one.id === id)?.unchecked).toEqual([]);
    expect(checked.map((name) => lineNow(name))).toEqual(
      before.map((field) => ({ ...field, standing: 'checked', standard: expect.any(String) })),
    );
    expect(quote.session.log).toHaveLength(1);
    quote.session.undo();
    expect(checked.map((name) => lineNow(name))).toEqual(before);
  });

  it('says our standard of a yes-or-no entry as yes or no, not as 1 or 0', async () => {
    const quote = await openQuote();
    const floor: SheetPlace = { kind: 'floor' };
    dispatch(quote, { kind: 'enterLine', sheet: floor, line: 'crack_moves', value: 1 });
    expect(lineIn(viewOf(quote, floor), 'crack_moves')).toMatchObject({ standing: 'changed', standard: 'no' });
  });

  it('says what the formula of a cell gives where a number stands instead of it', async () => {
    const quote = await openQuote();
    const before = cellIn(viewOf(quote), 'coats', 0, 'gallons');
    const row = firstRow(viewOf(quote), 'coats');
    dispatch(quote, {
      kind: 'enterCell',
      sheet: system,
      table: 'coats',
      row,
      column: 'gallons',
      value: { instead: 9 },
    });
    const after = cellIn(viewOf(quote), 'coats', 0, 'gallons');
    expect(after).toMatchObject({ standing: 'departed', shown: '9', worked: `${before.shown} gal` });
  });

  it('takes an entry over a formula that a row brings, and leads back to it', async () => {
    const quote = await openQuote();
    const at = tableIn(viewOf(quote), 'tasks').rows.findIndex(({ fields }) =>
      fields.some(({ name, typeOver }) => name === 'quantity' && typeOver === 'entry'),
    );
    const before = cellIn(viewOf(quote), 'tasks', at, 'quantity');
    const row = tableIn(viewOf(quote), 'tasks').rows[at]?.id ?? '';
    expect(before).toMatchObject({ kind: 'result', standing: 'worked out' });
    const edit = { kind: 'enterCell', sheet: system, table: 'tasks', row, column: 'quantity' } as const;
    dispatch(quote, { ...edit, value: 77 });
    const after = cellIn(viewOf(quote), 'tasks', at, 'quantity');
    expect(after).toMatchObject({ kind: 'number', standing: 'departed', shown: '77' });
    expect(after.worked).toContain(before.shown);
    dispatch(quote, edit);
    expect(cellIn(viewOf(quote), 'tasks', at, 'quantity')).toEqual(before);
  });

  it('lets no number stand instead of a code or of a name', async () => {
    const view = viewOf(await openQuote());
    expect(cellIn(view, 'coats', 0, 'coat').typeOver).toBe('never');
    expect(cellIn(view, 'coats', 0, 'product').typeOver).toBe('never');
  });
});
