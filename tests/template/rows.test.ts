import { describe, expect, it } from 'vitest';
import type { StackEntries } from '../../src/template/entries.ts';
import {
  check,
  choiceColumn,
  entryColumn,
  floor,
  formula,
  gathered,
  key,
  laid,
  priceList,
  productColumn,
  table,
} from '../helpers/sheets.ts';

const at = 'floor garage: sections[0].tables[0]';
const measures = choiceColumn('measure', ['area', 'length'], 'area');

/** Faults of a floor sheet with one table. */
const faultsOf = (columns: readonly object[], start: readonly object[] = [], more: object = {}) => {
  const plain = (each: object) => ({ ...each });
  return laid([floor([], [{ ...table('tasks', columns.map(plain), start.map(plain)), ...more }])]).faults;
};

describe('the rows of a table', () => {
  it.each([
    [
      'limits',
      [entryColumn('people', 'person', 1, { limits: [1, 12] })],
      { people: 13 },
      'people: “people” must lie between 1 and 12 people; 13 people does not.',
    ],
    [
      'whole numbers',
      [entryColumn('people', 'person', 1, { whole: true })],
      { people: 1.5 },
      'people: “people” must be a whole number.',
    ],
    [
      'yes and no',
      [entryColumn('include', '1', 1, { yesNo: true })],
      { include: 2 },
      'include: “include” is 1 for yes or 0 for no.',
    ],
    [
      'choices',
      [measures],
      { measure: 'weight' },
      'measure: “weight” is not among the choices of “measure”: area, length.',
    ],
    [
      'numbers',
      [entryColumn('people', 'person', 1)],
      { people: 'two' },
      'people: “people” is a number in person, not “two”.',
    ],
    [
      'dates',
      [entryColumn('day', 'date', 1)],
      { day: '2026-02-30' },
      'day: “2026-02-30” is no date; write it as 2026-05-31.',
    ],
    [
      'what has no default',
      [{ ...entryColumn('people', 'person', 1), default: undefined }],
      {},
      'people: “people” is missing: the row gives none, and the column has no default.',
    ],
  ])('keep %s', (_, columns, row, fault) => {
    expect(faultsOf(columns, [row])).toEqual([`${at}.start[0].${fault}`]);
  });

  it('are at least as many as the table says', () => {
    expect(faultsOf([measures], [], { min: 1 })).toEqual(['tasks: “tasks” has at least 1 row.']);
    expect(faultsOf([measures], [{}], { min: 1 })).toEqual([]);
  });

  it('have each their own key, as the quote names them too', () => {
    const tasks = table(
      'tasks',
      [key('task'), entryColumn('people', 'person', 1)],
      [{ task: 'grind' }, { task: 'coat' }],
    );
    const given = (
      cells: Record<string, string>,
      order: readonly string[],
      added: Record<string, object> = {},
    ): StackEntries => ({
      lines: new Map(),
      tables: new Map([
        [
          'tasks',
          {
            order,
            added: new Map(Object.entries(added).map(([id, row]) => [id, { ...row }])),
            cells: new Map(
              Object.entries(cells).map(([row, code]) => [
                row,
                new Map([['task', { kind: 'value' as const, value: code }]]),
              ]),
            ),
          },
        ],
      ]),
    });
    const told = (entries: StackEntries) => laid([floor([], [tasks])], [], entries);
    expect(told(given({}, ['coat', 'grind'])).column('tasks', 'task')).toEqual(['coat', 'grind']);
    expect(told(given({}, ['new', 'grind'], { new: { task: 'coat' } })).column('tasks', 'people')).toEqual([1, 1]);
    expect(told(given({}, ['grind', 'new'], { new: { task: 'grind' } })).faults).toEqual([
      'tasks.new: Two rows of “tasks” are called “grind”.',
    ]);
    expect(told(given({ coat: 'grind' }, ['grind', 'coat'])).faults).toEqual([
      `${at}.start[1]: Two rows of “tasks” are called “grind”.`,
    ]);
    expect(told(given({ coat: 'Second coat' }, ['coat'])).faults).toEqual([
      `${at}.start[1].task: “Second coat” is not a code: lower-case letters, digits and underscores.`,
    ]);
  });

  it('are told of a check row by row', () => {
    const columns = [
      key('task'),
      entryColumn('people', 'person', 1),
      check('fits', 'people <= 2', { say: '{people} at once.' }),
    ];
    const laidOut = laid([floor([], [table('tasks', columns, [{ task: 'grind' }, { task: 'coat', people: 3 }])])]);
    expect(laidOut.column('tasks', 'fits')).toEqual([true, false]);
    expect(laidOut.stack.tables.get('tasks')?.columns.get('fits')?.cases.get('')?.say).toMatchObject([
      { kind: 'value', tree: { kind: 'cell', column: 'people' } },
      { kind: 'words', words: ' at once.' },
    ]);
  });
});

describe('a gathered table', () => {
  const coats = (...rows: readonly string[]) =>
    table(
      'coats',
      [key('coat'), productColumn('product', ['base', 'clear'], 'base_slate'), entryColumn('gallons', 'gal', 2)],
      rows.map((product, place) => ({ coat: `coat_${place}`, product })),
    );
  const buy = gathered(
    'buy',
    ['coats.product', 'primers.primer'],
    [
      formula(
        'need',
        'gal',
        'SUMIFS(coats.gallons, coats.product, product) + SUMIFS(primers.poured, primers.primer, product)',
      ),
      formula('price_each', '$', 'product.pack_price'),
    ],
  );
  const primers = table(
    'primers',
    [productColumn('primer', ['base'], 'base_sand'), entryColumn('poured', 'gal', 1)],
    [{}, { primer: 'base_slate' }],
  );

  it('has a row for each distinct product, in order of first appearance', () => {
    const laidOut = laid([priceList, floor([], [buy, coats('clear_satin', 'base_slate', 'clear_satin'), primers])]);
    expect(laidOut.faults).toEqual([]);
    expect(laidOut.column('buy', 'product')).toEqual(['clear_satin', 'base_slate', 'base_sand']);
    expect(laidOut.column('buy', 'need')).toEqual([4, 3, 1]);
    expect(laidOut.column('buy', 'price_each')).toEqual([66, 135, 140]);
  });

  it('may be empty', () => {
    const laidOut = laid([
      priceList,
      floor([formula('cost', '$', 'SUM(buy.price_each)')], [buy, coats(), { ...primers, start: [] }]),
    ]);
    expect(laidOut.faults).toEqual([]);
    expect(laidOut.value('cost')).toBe(0);
  });

  it.each([
    [{ gather: ['coats.gallons'] }, `${at}.gather[0]: “coats.gallons” is not a product column of this sheet.`],
    [{ gather: ['coat.product'] }, `${at}.gather[0]: “coat.product” is not a product column of this sheet.`],
    [
      { gather: ['coats.product', 'flakes.product'] },
      `${at}.gather: Products sold by gal and by lb cannot be bought in one table.`,
    ],
    [
      { gather: ['coats.product'], start: [{ product: 'base_slate' }] },
      `${at}: The rows of buy are gathered from products; none can be added.`,
    ],
    [
      { gather: ['coats.product'], columns: [entryColumn('packs', '1', 0)] },
      `${at}.columns[0]: The first column of a gathered table is the key “product”.`,
    ],
  ])('%j is refused', (more, fault) => {
    const flakes = table('flakes', [productColumn('product', ['flake'], 'flake_granite')], [{}]);
    const own = { ...gathered('buy', [], []), ...more };
    expect(laid([priceList, floor([], [own, coats('base_slate'), flakes])]).faults).toEqual([fault]);
  });
});
