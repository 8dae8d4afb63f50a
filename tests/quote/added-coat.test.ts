import { beforeEach, describe, expect, it } from 'vitest';
import type { CellValue } from '../../src/formula/cells.ts';
import type { SingleEdit } from '../../src/quote/edit.ts';
import { cellOfColumn, lineValue, type OptionResults } from '../../src/quote/option-results.ts';
import { readLog } from '../../src/quote/read-log.ts';
import { readQuote } from '../../src/quote/read-quote.ts';
import { toldChecks } from '../../src/quote/told-checks.ts';
import { QuoteSession } from '../../src/session/quote-session.ts';
import { flake, type OpenQuote, openQuote } from '../helpers/demo-quote.ts';

const sheet = { kind: 'option', option: flake } as const;
const coats = { sheet, table: 'coats' } as const;
const thirdClear: SingleEdit = {
  kind: 'addRow',
  ...coats,
  row: 'coat_4',
  at: 3,
  cells: { coat: 'coat_4', label: 'Third clear', product: 'clear_aspartic' },
};
const itsTasks = ['abrade_for_coat_4', 'lay_coat_4', 'wash_coat_4'];

let open: OpenQuote;
beforeEach(async () => {
  open = await openQuote();
});

function results(): OptionResults {
  const found = open.workbooks.results(flake);
  if (found === undefined) throw new Error('The quote has no full flake');
  return found;
}

function done(edit: SingleEdit): void {
  expect(open.session.dispatch(edit)).toEqual({ kind: 'done' });
}

function include(row: string, value: number): void {
  done({ kind: 'enterCell', ...coats, row, column: 'include', value });
}

function rows(table: string): string[] {
  return (results().option.rows.get(table) ?? []).map(({ id }) => id);
}

function cell(table: string, row: string, column: string): CellValue {
  const place = cellOfColumn(results(), table, column, rows(table).indexOf(row));
  if (place === undefined) throw new Error(`There is no ${table}.${row}.${column}`);
  return results().read(place);
}

function line(name: string): number {
  const value = lineValue(results(), name);
  if (typeof value !== 'number') throw new Error(`${name} is ${JSON.stringify(value)}`);
  return value;
}

function stops(): string[] {
  return toldChecks(results())
    .filter(({ verdict, severity }) => verdict === 'fails' && severity === 'stop')
    .map(({ name }) => name);
}

describe('a coat that is added', () => {
  it('brings its abrading, laying and washing, after the last task of the coat above, in one edit', () => {
    const before = rows('tasks');
    done(thirdClear);
    const last = before.indexOf('wash_second_clear');
    expect(rows('tasks')).toEqual(before.toSpliced(last + 1, 0, ...itsTasks));
    expect(open.session.log).toHaveLength(1);
    expect(
      results()
        .option.rows.get('tasks')
        ?.find(({ id }) => id === 'lay_coat_4')?.label,
    ).toBe('Third clear');
    expect(stops()).toEqual([]);
  });

  it('is paid for: 528 ft² laid by two at 450 ft² an hour, and half an hour of washing', () => {
    const had = line('person_hours');
    done(thirdClear);
    const abrading = cell('tasks', 'abrade_for_coat_4', 'task_hours');
    expect(cell('tasks', 'lay_coat_4', 'task_hours')).toBeCloseTo(528 / 450, 9);
    expect(cell('tasks', 'wash_coat_4', 'task_hours')).toBe(0.5);
    expect(line('person_hours') - had).toBeGreaterThanOrEqual(528 / 450 + 0.5 + Number(abrading) - 1e-9);
  });

  it('waits until the coat under it takes the next', () => {
    done(thirdClear);
    const takesNext = Number(cell('tasks', 'lay_clear', 'finish')) + Number(cell('coats', 'clear', 'recoat_from'));
    expect(cell('tasks', 'lay_coat_4', 'over')).toBe('clear');
    expect(cell('tasks', 'lay_coat_4', 'start')).toBeGreaterThanOrEqual(takesNext);
  });

  it('goes over the second clear once that is laid, and over the clear again when it is left out', () => {
    done(thirdClear);
    include('second_clear', 1);
    for (const task of ['abrade_for_coat_4', 'lay_coat_4']) expect(cell('tasks', task, 'over')).toBe('second_clear');
    include('second_clear', 0);
    for (const task of ['abrade_for_coat_4', 'lay_coat_4']) expect(cell('tasks', task, 'over')).toBe('clear');
    expect(stops()).toEqual([]);
  });

  it('is left out of the price with its tasks while it is not included', () => {
    const price = line('price');
    done(thirdClear);
    expect(line('price')).toBeGreaterThan(price);
    include('coat_4', 0);
    expect(line('price')).toBe(price);
  });

  it('is taken back with its tasks by one undo, to the byte, and comes again by one redo', () => {
    const before = JSON.stringify(open.session.quote);
    done(thirdClear);
    const after = JSON.stringify(open.session.quote);
    open.session.undo();
    expect(JSON.stringify(open.session.quote)).toBe(before);
    open.session.redo();
    expect(JSON.stringify(open.session.quote)).toBe(after);
  });

  it('has the same price, and the same way back, when the quote is opened again', () => {
    const before = JSON.stringify(open.quote);
    done(thirdClear);
    const price = line('price');
    const stored: { quote: unknown; log: unknown[] } = JSON.parse(
      JSON.stringify({ quote: open.session.quote, log: open.session.log }),
    );
    const [quote, log] = [readQuote(stored.quote), readLog(stored.log)];
    if (quote.kind === 'fault' || log.kind === 'fault') throw new Error('It cannot be read back');
    expect(open.workbooks.load(quote.quote).kind).toBe('followed');
    expect(line('price')).toBe(price);
    const again = new QuoteSession(quote.quote, open.workbooks, { past: { entries: log.entries, seq: 1 } });
    again.undo();
    expect(JSON.stringify(again.quote)).toBe(before);
  });
});

describe('a coat that is moved', () => {
  it('above the second clear has its tasks before those, which are then done to it', () => {
    done(thirdClear);
    done({ kind: 'moveRow', ...coats, row: 'coat_4', to: 2 });
    const tasks = rows('tasks');
    const at = tasks.indexOf('wash_clear');
    expect(tasks.slice(at + 1, at + 5)).toEqual([...itsTasks, 'abrade_for_second_clear']);
    expect(cell('tasks', 'lay_second_clear', 'over')).toBe('coat_4');
    expect(cell('tasks', 'lay_coat_4', 'over')).toBe('clear');
    expect(stops()).toEqual([]);
  });

  it('under the clear is laid after the base is scraped', () => {
    done(thirdClear);
    done({ kind: 'moveRow', ...coats, row: 'coat_4', to: 1 });
    const tasks = rows('tasks');
    expect(tasks.slice(tasks.indexOf('scrape') + 1, tasks.indexOf('lay_clear'))).toEqual(itsTasks);
  });

  it('leaves alone what somebody typed over', () => {
    done(thirdClear);
    done({ kind: 'enterCell', sheet, table: 'tasks', row: 'lay_coat_4', column: 'over', value: 'base' });
    done({ kind: 'moveRow', ...coats, row: 'coat_4', to: 1 });
    expect(cell('tasks', 'lay_coat_4', 'over')).toBe('base');
    expect(cell('tasks', 'abrade_for_coat_4', 'over')).toBe('base');
  });
});

describe('a coat that is taken out', () => {
  it('takes along what came with it, also what was typed there', () => {
    const before = rows('tasks');
    done(thirdClear);
    done({ kind: 'moveRow', ...coats, row: 'coat_4', to: 2 });
    done({ kind: 'enterCell', sheet, table: 'tasks', row: 'lay_coat_4', column: 'rate', value: 300 });
    const price = line('price');
    done({ kind: 'removeRow', ...coats, row: 'coat_4' });
    expect(rows('tasks')).toEqual(before);
    expect(cell('tasks', 'lay_second_clear', 'over')).toBe('clear');
    expect(open.session.quote.options[0]?.entries.tables.tasks?.cells).toEqual({});
    open.session.undo();
    expect(line('price')).toBe(price);
    expect(cell('tasks', 'lay_coat_4', 'rate')).toBe(300);
  });

  it('of the template takes its tasks too: without its second clear a floor has its price still', () => {
    const price = line('price');
    done({ kind: 'removeRow', ...coats, row: 'second_clear' });
    expect(rows('tasks').filter((task) => task.includes('second_clear'))).toEqual([]);
    expect(line('price')).toBe(price);
  });
});

describe('a stop', () => {
  it('is a coat that is bought and that no task lays', () => {
    done(thirdClear);
    done({ kind: 'removeRow', sheet, table: 'tasks', row: 'lay_coat_4' });
    expect(stops()).toEqual(['coats.coat_4.is_laid']);
    const told = toldChecks(results()).find(({ name }) => name === 'coats.coat_4.is_laid');
    expect(told?.says).toMatch(/^Third clear: [\d.]+ gal of it are bought, and no task lays it/);
    include('coat_4', 0);
    expect(stops()).toEqual([]);
  });

  it('is a task done to a coat that is left out, for then nothing waits for the one under it', () => {
    include('base', 0);
    expect(stops()).toContain('coats.base.is_down');
  });
});

describe('a task', () => {
  it('may name a coat that the quote added, and no coat that nobody did', () => {
    done(thirdClear);
    const lays = { kind: 'enterCell', sheet, table: 'tasks', row: 'scrape', column: 'over' } as const;
    done({ ...lays, value: 'coat_4' });
    expect(cell('tasks', 'scrape', 'over')).toBe('coat_4');
    expect(open.session.dispatch({ ...lays, value: 'coat_5' })).toMatchObject({ kind: 'refused' });
  });
});
