import { describe, expect, it } from 'vitest';
import { readSheet } from '../../src/template/read-sheet.ts';
import { readJson } from '../../src/template/sheet-limits.ts';
import { cpuMilliseconds } from '../helpers/cpu-time.ts';
import { entry, entryColumn, floor, formula, key, laid, section, sheet, table } from '../helpers/sheets.ts';

const reasons = (text: string) => readSheet(text).faults.map(({ reason }) => reason);
const nestedLists = (depth: number) => '['.repeat(depth) + ']'.repeat(depth);

describe('before anything walks a file', () => {
  it('more than 1 MB is refused, in bytes', () => {
    expect(readJson(`"${'x'.repeat(999_998)}"`).kind).toBe('json');
    expect(readJson(`"${'x'.repeat(999_999)}"`)).toEqual({ kind: 'fault', reason: 'The file is larger than 1 MB.' });
    expect(readJson(`"${'é'.repeat(500_000)}"`)).toEqual({ kind: 'fault', reason: 'The file is larger than 1 MB.' });
  });

  it('more than 12 levels are refused, brackets in texts aside', () => {
    expect(readJson(nestedLists(12)).kind).toBe('json');
    expect(readJson(nestedLists(13))).toEqual({ kind: 'fault', reason: 'The file is nested deeper than 12 levels.' });
    expect(readJson(`["${'['.repeat(50)}\\"${'{'.repeat(50)}"]`).kind).toBe('json');
    expect(readJson('['.repeat(400_000)).kind).toBe('fault');
  });

  it('what is no JSON is refused', () => {
    expect(reasons('{"format": }')).toEqual([expect.stringMatching(/^The file is not JSON\. /)]);
    expect(reasons('')).toEqual([expect.stringMatching(/^The file is not JSON\. /)]);
  });
});

describe('a sheet has at most', () => {
  it('200 sections', () => {
    const sections = Array.from({ length: 201 }, (_, at) => section(`s${at}`));
    expect(laid([sheet('floor', 'garage', sections.slice(1))]).faults).toEqual([]);
    expect(laid([sheet('floor', 'garage', sections)]).faults).toEqual([
      'sections: This is too large or too long: at most 200.',
    ]);
  });

  it('2,000 lines, over all its sections', () => {
    const lines = Array.from({ length: 1001 }, (_, at) => ({ name: `n${at}`, label: '', unit: '1', value: 0 }));
    const more = lines.map((each) => ({ ...each, name: `m${each.name}` }));
    expect(laid([sheet('floor', 'garage', [section('a', lines), section('b', more.slice(2))])]).faults).toEqual([]);
    expect(laid([sheet('floor', 'garage', [section('a', lines), section('b', more)])]).faults).toContain(
      'sections: A sheet has at most 2000 lines.',
    );
  });

  it('2,000 columns, over all its tables', () => {
    const tables = (count: number) =>
      Array.from({ length: count }, (_, at) =>
        table(
          `t${at}`,
          Array.from({ length: 100 }, (__, place) => entryColumn(`c${place}`, '1', 0)),
        ),
      );
    expect(laid([floor([], tables(20))]).faults).toEqual([]);
    expect(laid([floor([formula('read', '1', 'SUM(t20.c0)')], tables(21))]).faults).toEqual([
      'sections: The tables of a sheet have at most 2000 columns.',
    ]);
  });

  it('500 rows a table, those that others add with them', () => {
    const rows = (prefix: string, count: number) =>
      Array.from({ length: count }, (_, at) => ({ room: `${prefix}${at}` }));
    const rooms = (count: number) => table('rooms', [key('room')], rows('a', count));
    expect(laid([floor([], [rooms(500)])]).faults).toEqual([]);
    expect(laid([floor([], [rooms(501)])]).faults).toEqual([
      'sections[0].tables[0].start: This is too large or too long: at most 500.',
    ]);
    const added = sheet('part', 'more', [section('own', [], [rooms(300)]), { rowsFor: 'rooms', rows: rows('b', 201) }]);
    expect(laid([added]).faults).toContain('part more: sections[0].tables[0]: A table has at most 500 rows.');
  });

  it('2,000 characters a text, formulas with it', () => {
    expect(laid([floor([formula('a', '1', '1'.padEnd(2001))])]).faults).toEqual([
      'sections[0].lines[0].formula: This is too large or too long: at most 2000.',
    ]);
  });
});

describe('a quote has at most', () => {
  it('5,000 formulas', () => {
    const column = (at: number) => ({ name: `c${at}`, label: '', unit: '1', formula: '1' });
    const rows = (count: number) => Array.from({ length: count }, () => ({}));
    const tables = (columns: number) =>
      table(
        'rooms',
        Array.from({ length: columns }, (_, at) => column(at)),
        rows(500),
      );
    expect(laid([floor([], [tables(10)])]).faults).toEqual([]);
    expect(laid([floor([], [tables(11)])]).faults).toEqual([
      ': A quote has at most 5000 formulas, and this one has 5500.',
    ]);
  });

  it('2,000,000 cells that its formulas read', () => {
    const sum = Array.from({ length: 10 }, () => 'SUM(rooms.size)').join(' + ');
    const columns = [entryColumn('size', '1', 1), { name: 'all', label: '', unit: '1', formula: sum }];
    const rooms = table(
      'rooms',
      columns,
      Array.from({ length: 500 }, () => ({})),
    );
    expect(laid([floor([], [rooms])]).faults).toEqual([
      ': The formulas of a quote read at most 2000000 cells, and these read 2500000.',
    ]);
  });
});

describe('a hostile file is refused in words', () => {
  it.each(['__proto__', 'constructor', 'prototype', 'toString'])('a property “%s” anywhere', (name) => {
    const places = [
      (text: string) => text.replace('"id":"garage"', `"id":"garage","${name}":{"x":1}`),
      (text: string) => text.replace('"unit":"ft"', `"unit":"ft","${name}":1`),
      (text: string) => text.replace('"room":"bay"', `"room":"bay","${name}":1`),
    ];
    const file = JSON.stringify(floor([entry('width', 'ft', 3)], [table('rooms', [key('room')], [{ room: 'bay' }])]));
    for (const place of places) {
      const { faults, sheet: read } = readSheet(place(file));
      const compiled = faults.length > 0 ? faults : laid([JSON.parse(place(file))]).faults;
      expect(compiled).toHaveLength(1);
      expect(JSON.stringify(compiled)).toContain(name);
      expect(read === undefined || Object.getPrototypeOf(read) === Object.prototype).toBe(true);
    }
    expect(Object.hasOwn(Object.prototype, 'x')).toBe(false);
  });

  it('lines, columns and codes called “constructor” are names like any other', () => {
    const rooms = table(
      'rooms',
      [
        key('room'),
        entryColumn('constructor', '1', 7),
        { name: 'twice', label: '', unit: '1', formula: 'constructor * 2' },
      ],
      [{ room: 'constructor' }, { room: 'bay', constructor: 8 }],
    );
    const measured = table(
      'measured',
      [
        { name: 'measure', label: '', options: [{ code: 'constructor', label: '' }], default: 'constructor' },
        { name: 'size', label: '', unitBy: { column: 'measure', units: { constructor: 'ft' } }, default: 1 },
      ],
      [{}],
    );
    const laidOut = laid([floor([], [rooms, measured])]);
    expect(laidOut.faults).toEqual([]);
    expect(laidOut.column('rooms', 'twice')).toEqual([14, 16]);
    const lacking = {
      ...measured,
      columns: [measured.columns[0], { ...measured.columns[1], unitBy: { column: 'measure', units: {} } }],
    };
    expect(laid([floor([], [lacking])]).faults).toContain(
      'floor garage: sections[0].tables[0].columns[1].unitBy: The unit for “constructor” is missing.',
    );
  });

  it.each([
    ['a list of 300,000 sections', `{"sections":[${Array.from({ length: 300_000 }, () => '0').join(',')}]}`],
    [
      'a section of 300,000 lines',
      `{"sections":[{"lines":[${Array.from({ length: 300_000 }, () => '0').join(',')}]}]}`,
    ],
    ['a name of 900,000 letters', `{"${'x'.repeat(900_000)}":1}`],
    ['100,000 properties', `{${Array.from({ length: 60_000 }, (_, at) => `"p${at}":1`).join(',')}}`],
  ])('%s: in few faults and little time', (_, text) => {
    let faults: readonly unknown[] = [];
    const spent = cpuMilliseconds(() => {
      ({ faults } = readSheet(text));
    });
    expect(spent).toBeLessThan(5000);
    expect(faults.length).toBeGreaterThan(0);
    expect(faults.length).toBeLessThanOrEqual(201);
  });

  it('2,000 formulas of unknown names: 200 faults are told, and that there are more', () => {
    const unknown = (at: number) => Array.from({ length: 8 }, (_, name) => `${'q'.repeat(40)}_${at}_${name}`).join('+');
    const lines = Array.from({ length: 2000 }, (_, at) => ({
      name: `${'n'.repeat(40)}_${at}`,
      label: '',
      unit: '1',
      formula: unknown(at),
    }));
    let faults: readonly string[] = [];
    const spent = cpuMilliseconds(() => {
      ({ faults } = laid([floor(lines)]));
    });
    expect(spent).toBeLessThan(20_000);
    expect(faults).toHaveLength(201);
    expect(faults.at(-1)).toBe(': There are more faults than these.');
  });

  it('a chain of 1,900 formulas that give codes does not exhaust the stack', () => {
    const chain = Array.from({ length: 1900 }, (_, at) => ({
      name: `c${at}`,
      label: '',
      code: true,
      formula: `c${at + 1}`,
    }));
    const lines = [...chain, { name: 'c1900', label: '', code: true, formula: '"rolled"' }];
    const laidOut = laid([floor(lines)]);
    expect(laidOut.faults).toEqual([]);
    expect(laidOut.value('c0')).toBe('rolled');
  });
});
