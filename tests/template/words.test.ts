import { describe, expect, it } from 'vitest';
import { noEntries, type StackEntries } from '../../src/template/entries.ts';
import { wordsInHole } from '../../src/template/written-words.ts';
import {
  check,
  entry,
  entryColumn,
  floor,
  formula,
  laid,
  section,
  sheet,
  system,
  table,
  text,
} from '../helpers/sheets.ts';

const words = (name: string, more: object = {}) => ({ name, label: name, words: '', ...more });
const at = 'floor garage: sections[0]';
const tests = (columns: readonly object[] = []) =>
  table(
    'tests',
    [words('taken_by', { unsaid: 'nobody' }), entryColumn('damp', '1', 3), ...columns.map((one) => ({ ...one }))],
    [{}, { taken_by: 'Ari K.' }],
  );
const written = (line: string, value: string): StackEntries => ({
  ...noEntries,
  lines: new Map([[line, { kind: 'written', value }]]),
});

describe('words that a person writes', () => {
  it('have no cell: neither a line’s nor those of two rows', () => {
    const { faults, plan } = laid([floor([words('read_by'), entry('width', 'ft', 3)], [tests()])]);
    expect(faults).toEqual([]);
    expect(plan.plan.cells).toHaveLength(3);
    expect([...plan.plan.lines.keys()]).toEqual(['width']);
    expect([...(plan.plan.tables.get('tests')?.columns.keys() ?? [])]).toEqual(['damp']);
    expect(plan.written.lines.get('read_by')).toBe('');
    expect(plan.written.tables.get('tests')?.get('taken_by')).toEqual(['', 'Ari K.']);
  });

  it('are read by no formula, which is told at its place', () => {
    const { faults } = laid([
      floor(
        [
          words('read_by'),
          formula('named', '1', 'IF(read_by = "ann", 1, 0)'),
          formula('how_many', '1', 'COUNT(tests.taken_by)'),
          check('somebody', '1 = 1', { say: '{read_by + 1} is wrong.' }),
        ],
        [tests([formula('own', '1', 'IF(taken_by = "ann", 1, 0)')])],
      ),
    ]);
    const unread = (name: string, place: string) =>
      expect.stringMatching(
        new RegExp(
          `^${place.replaceAll(/[[\]]/g, '\\$&')}: .*“${name}” is words that a person writes, which no formula reads`,
        ),
      );
    expect(faults).toEqual([
      unread('read_by', `${at}.lines[1].formula`),
      unread('tests.taken_by', `${at}.lines[2].formula`),
      unread('read_by', `${at}.lines[3].say`),
      unread('taken_by', `${at}.tables[0].columns[2].formula`),
    ]);
  });

  it('fill the holes of texts and checks, which say “nobody” while there are none', () => {
    const told = check('dry', 'damp < 2', { say: 'Damp, read by { taken_by }; all by {read_by}.' });
    const sheets = [floor([words('read_by'), text('reading', 'By {read_by}.')], [tests([told])])];
    const { faults, stack, plan } = laid(sheets, [], written('read_by', 'Dana R.'));
    expect(faults).toEqual([]);
    const holes = (stack.tables.get('tests')?.columns.get('dry')?.cases.get('')?.say ?? []).flatMap((piece) =>
      piece.kind === 'written' ? [piece] : [],
    );
    const inRow = (row: number) =>
      holes.map((hole) => wordsInHole(plan.written, hole, { kind: 'cell', table: 'tests', column: 'dry', row }));
    expect(inRow(0)).toEqual(['nobody', 'Dana R.']);
    expect(inRow(1)).toEqual(['Ari K.', 'Dana R.']);
    expect(stack.lines.get('reading')?.say).toEqual([
      { kind: 'words', words: 'By ' },
      { kind: 'written', name: 'read_by', ofRow: false, unsaid: 'not said' },
      { kind: 'words', words: '.' },
    ]);
  });

  it('reach a part that needs them, for its texts only', () => {
    const part = (line: object) =>
      sheet('part', 'cautions', [section('told', [{ ...line }])], { needs: [{ name: 'read_by', kind: 'words' }] });
    const alone = (line: object) => laid([part(line)]).faults;
    expect(alone(text('reading', 'By {read_by}.'))).toEqual([]);
    expect(alone(formula('named', '1', 'read_by'))).toEqual([
      expect.stringContaining('“read_by” is words that a person writes, which no formula reads.'),
    ]);
    const whole = laid(
      [floor([words('read_by')]), system([{ ...{ use: 'cautions' } }])],
      [part(text('reading', 'By {read_by}.'))],
    );
    expect(whole.faults).toEqual([]);
  });
});

describe('what customers read', () => {
  const refused = (name: string) => `Customers read “${name}”, and what a person writes is not for them.`;
  const forUse = (use: string, lines: readonly object[]) =>
    sheet('floor', 'garage', [
      section('names', [words('read_by')]),
      { ...section('told', [{ ...lines[0] }]), for: use },
    ]);

  it.each(['allowances', 'terms', 'comparison'])('tells no words in %s', (use) => {
    expect(laid([forUse(use, [text('reading', 'By {read_by}.')])]).faults).toEqual([
      `floor garage: sections[1].lines[0]: ${refused('reading')}`,
    ]);
    expect(laid([forUse(use, [words('also')])]).faults).toEqual([
      `floor garage: sections[1].lines[0]: ${refused('also')}`,
    ]);
  });

  it('is not the day of the work, which may tell them', () => {
    expect(laid([forUse('day', [text('reading', 'By {read_by}.')])]).faults).toEqual([]);
  });

  it.each([
    ['a stop of the floor', { severity: 'stop' }, true],
    ['an open caution', { open: true }, true],
    ['a caution', {}, false],
  ])('of checks is %s', (_, more, isRead) => {
    const line = check('somebody', '1 = 2', { say: 'By {read_by}.', ...more });
    expect(laid([floor([words('read_by'), line])]).faults).toEqual(
      isRead ? [`${at}.lines[1]: ${refused('somebody')}`] : [],
    );
  });

  it('is a stop in a column of the floor too', () => {
    const column = check('dry', 'damp < 2', { say: 'By {taken_by}.', severity: 'stop' });
    expect(laid([floor([], [tests([column])])]).faults).toEqual([`tests.dry: ${refused('dry')}`]);
  });
});

describe('what may be written', () => {
  const long = 'At most 80 characters may stand here; these are 81.';
  const notPlain = 'Only plain text in one line may stand here.';

  it('is 80 characters, each counted once however it is stored', () => {
    expect(laid([floor([words('read_by', { words: '😀'.repeat(80) })])]).faults).toEqual([]);
    expect(laid([floor([words('read_by', { words: 'x'.repeat(81) })])]).faults).toEqual([
      `sections[0].lines[0].words: ${long}`,
    ]);
  });

  it.each(['\u0007', '\n', '\u2028', '\u202e', '\ud800'])('is no %j', (character) => {
    expect(laid([floor([words('read_by', { words: `Dana${character}R.` })])]).faults).toEqual([
      `sections[0].lines[0].words: ${notPlain}`,
    ]);
  });

  it('is refused when a quote or a row gives more, or no words', () => {
    const sheets = [floor([words('read_by'), entry('width', 'ft', 3)])];
    expect(laid(sheets, [], written('read_by', 'x'.repeat(81))).faults).toEqual([`${at}.lines[0]: ${long}`]);
    expect(laid(sheets, [], written('width', '3')).faults).toEqual([`${at}.lines[1]: “width” takes no words.`]);
    const number: StackEntries = { ...noEntries, lines: new Map([['read_by', { kind: 'value', value: 7 }]]) };
    expect(laid(sheets, [], number).faults).toEqual([`${at}.lines[0]: “read_by” takes words, not a number.`]);
    const row = table('tests', [words('taken_by')], [{ taken_by: 7 }]);
    expect(laid([floor([], [row])]).faults).toEqual(['tests.row_1.taken_by: “taken_by” takes words, not a number.']);
  });

  it('may be set by a system of a part, and by no question', () => {
    const part = sheet('part', 'cautions', [section('told', [words('told_by')])]);
    const set = (value: string | number) => laid([system([{ use: 'cautions', set: { told_by: value } }])], [part]);
    expect(set('the office').plan.written.lines.get('told_by')).toBe('the office');
    expect(set(7).faults).toEqual([expect.stringContaining('“told_by” takes words, not a number.')]);
    const ask = { kind: 'toggle', id: 'named', label: 'Named', on: { read_by: 'Dana R.' }, off: {} };
    expect(laid([{ ...floor([words('read_by')]), asks: [ask] }]).faults).toEqual([
      'asks[0] (named): read_by: A question sets no words: a person writes them.',
    ]);
  });
});
