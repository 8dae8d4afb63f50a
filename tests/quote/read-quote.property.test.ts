import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { QuoteDocument } from '../../src/quote/quote-document.ts';
import { readQuote } from '../../src/quote/read-quote.ts';
import { flake, openQuote, solid } from '../helpers/demo-quote.ts';
import { printedSeed } from '../helpers/random-seed.ts';

let quote: QuoteDocument;

/** A quote with an entry of every shape: plain, typed, a departure, a cell, a row added, a row taken. */
beforeAll(async () => {
  const { session } = await openQuote();
  const floor = { kind: 'floor' } as const;
  const edits = [
    { kind: 'enterLine', sheet: { kind: 'shop' }, line: 'resin_waste', value: { value: 0.08, typed: '8 %' } },
    { kind: 'enterLine', sheet: floor, line: 'joint_treatment', value: 'fill_flush' },
    {
      kind: 'enterLine',
      sheet: { kind: 'option', option: solid },
      line: 'materials_cost',
      value: { instead: 900, why: 'bought' },
    },
    {
      kind: 'addRow',
      sheet: floor,
      table: 'areas',
      row: 'apron',
      at: 1,
      cells: { place: 'apron', length: 8, width: 3 },
    },
    { kind: 'enterCell', sheet: floor, table: 'areas', row: 'apron', column: 'length', value: 9.5 },
    { kind: 'removeRow', sheet: { kind: 'option', option: flake }, table: 'coats', row: 'second_clear' },
  ] as const;
  for (const edit of edits) expect(session.dispatch(edit)).toEqual({ kind: 'done' });
  quote = session.quote;
});

function asJson(): Record<string, unknown> {
  return JSON.parse(JSON.stringify(quote));
}

function reason(value: unknown): string {
  const read = readQuote(value);
  return read.kind === 'fault' ? read.reason : '';
}

/** Every object and list in a value, outermost first. */
function holders(value: unknown): object[] {
  if (typeof value !== 'object' || value === null) return [];
  return [value, ...Object.values(value).flatMap(holders)];
}

describe('reading a quote', () => {
  it('gives back what was written, also through JSON', () => {
    expect(readQuote(asJson())).toEqual({ kind: 'quote', quote });
    expect(readQuote(quote)).toEqual({ kind: 'quote', quote });
  });

  it('says what is wrong and where', () => {
    expect(reason({ ...asJson(), format: 'letter' })).toMatch(/not a quote/);
    expect(reason({ ...asJson(), version: 2 })).toMatch(/newer version/);
    expect(reason({ ...asJson(), version: 0 })).toMatch(/version/);
    expect(reason({ ...asJson(), options: [] })).toMatch(/options.*at least 1/);
    expect(reason({ ...asJson(), options: Array.from({ length: 5 }, () => quote.options[0]) })).toMatch(/at most 4/);
    expect(reason({ ...asJson(), options: [quote.options[0], quote.options[0]] })).toMatch(/option stands here once/);
    expect(reason({ ...asJson(), products: [quote.products[0], quote.products[0]] })).toMatch(
      /product stands here once/,
    );
    expect(reason({ ...asJson(), colour: 'grey' })).toMatch(/no property “colour”/);
    expect(reason({ ...asJson(), title: 'x'.repeat(2001) })).toMatch(/title.*at most 2000/);
    expect(reason({ ...asJson(), floor: { lines: { crack_length: Number.NaN }, tables: {} } })).toMatch(/floor/);
    expect(reason({ ...asJson(), floor: { lines: {}, tables: { areas: { order: ['bay', 'bay'] } } } })).toMatch(/once/);
  });

  it('refuses what is nested 100,000 deep, holds itself, or has more values than a quote', () => {
    const deep = '['.repeat(100_000) + ']'.repeat(100_000);
    expect(reason(JSON.parse(deep))).toMatch(/deeper/);
    const circle: Record<string, unknown> = { ...asJson() };
    circle.title = circle;
    expect(reason(circle)).toMatch(/deeper/);
    expect(reason({ ...asJson(), products: Array.from({ length: 300_000 }, () => 1) })).toMatch(/more than 200000/);
  });

  it('refuses a property __proto__ wherever it stands, and pollutes nothing', () => {
    const places = holders(asJson()).length;
    expect(places).toBeGreaterThan(20);
    for (let place = 0; place < places; place += 1) {
      const damaged = asJson();
      const holder = holders(damaged)[place];
      if (holder === undefined) throw new Error('The place is gone');
      Object.defineProperty(holder, '__proto__', { value: { polluted: 1 }, enumerable: true });
      expect(reason(damaged)).toMatch(/__proto__/);
    }
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
  });

  it('takes any value without throwing, and takes none of those for a quote', () => {
    const seed = printedSeed('read quote: anything');
    const anything = fc.anything({
      withMap: true,
      withSet: true,
      withDate: true,
      withNullPrototype: true,
      withBigInt: true,
    });
    fc.assert(
      fc.property(anything, (value) => {
        expect(readQuote(value).kind).toBe('fault');
        expect(readQuote({ ...asJson(), shop: value }).kind).toBe('fault');
      }),
      { seed, numRuns: 300 },
    );
  });

  it('of a quote with one value gone, added or put in another’s place, gives a fault or exactly what it was given', () => {
    const seed = printedSeed('read quote: damaged');
    const damage = fc.record({
      place: fc.nat(),
      member: fc.nat(),
      how: fc.constantFrom('take', 'add', 'put'),
      value: fc.jsonValue({ maxDepth: 3 }),
      key: fc.oneof(fc.string(), fc.constantFrom('constructor', 'toString', 'lines', 'order')),
    });
    let [taken, refused] = [0, 0];
    fc.assert(
      fc.property(damage, ({ place, member, how, value, key }) => {
        const whole = asJson();
        const all = holders(whole);
        const holder = all[place % all.length] ?? whole;
        const keys = Object.keys(holder);
        const chosen = how === 'add' ? key : (keys[member % Math.max(1, keys.length)] ?? key);
        if (how === 'take') Reflect.deleteProperty(holder, chosen);
        else Object.defineProperty(holder, chosen, { value, enumerable: true, configurable: true, writable: true });
        // As a file has it: a list holds nothing beside its items.
        const damaged: unknown = JSON.parse(JSON.stringify(whole));
        const read = readQuote(damaged);
        if (read.kind === 'quote') expect(read.quote).toEqual(damaged);
        if (read.kind === 'quote') taken += 1;
        else refused += 1;
      }),
      { seed, numRuns: 2000 },
    );
    // Damage that changes no rule, such as another number, is taken; the test is worth something when both happen.
    expect(taken).toBeGreaterThan(10);
    expect(refused).toBeGreaterThan(500);
  });
});
