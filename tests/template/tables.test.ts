import { describe, expect, it } from 'vitest';
import {
  check,
  choiceColumn,
  codeFormula,
  entry,
  entryColumn,
  floor,
  formula,
  key,
  laid,
  priceList,
  table,
} from '../helpers/sheets.ts';

const at = 'floor garage: sections[0].tables[0]';
const measures = choiceColumn('measure', ['area', 'length'], 'area');
const unitBy = (units: object) => ({ unit: undefined, perRow: true, unitBy: { column: 'measure', units } });
const quantity = entryColumn('quantity', '', 0, unitBy({ area: 'ft2', length: 'ft' }));
const rate = entryColumn('rate', '', 1, unitBy({ area: 'ft2/h', length: 'ft/h' }));
const hours = formula('hours', 'h', 'quantity / rate');
const lines = [entry('floor_area', 'ft2', 500), entry('edge', 'ft', 90), entry('grind_rate', 'ft2/h', 250)];

/** Faults of a floor sheet with one table. */
const faultsOf = (columns: readonly object[], start: readonly object[] = [], more: object = {}) =>
  laid([
    priceList,
    floor(lines, [
      {
        ...table(
          'tasks',
          columns.map((each) => ({ ...each })),
          start.map((each) => ({ ...each })),
        ),
        ...more,
      },
    ]),
  ]).faults;

describe('units that follow a choice', () => {
  const start = [
    { task: 'grind', quantity: { formula: 'floor_area' }, rate: { formula: 'grind_rate' } },
    { task: 'edges', measure: 'length', quantity: { formula: 'edge' }, rate: 36 },
  ];
  const tasks = table('tasks', [key('task'), measures, quantity, rate, hours], start);

  it('each row in its own', () => {
    const laidOut = laid([floor(lines, [tasks])]);
    expect(laidOut.faults).toEqual([]);
    expect(laidOut.column('tasks', 'hours')).toEqual([2, 2.5]);
    expect(laidOut.plan.rows.get('tasks')?.map((row) => row.unitCase)).toEqual(['area', 'length']);
  });

  it('a row’s formula must give the unit of its row', () => {
    expect(
      faultsOf(
        [key('task'), measures, quantity, rate, hours],
        [{ task: 'edges', measure: 'length', quantity: { formula: 'floor_area' } }],
      ),
    ).toEqual([`${at}.start[0].quantity: This gives a number in ft2, and a number in ft is declared.`]);
  });

  it('formula columns must agree for every choice', () => {
    const units = { area: 'ft2/h', length: 'h' };
    expect(faultsOf([key('task'), measures, quantity, entryColumn('rate', '', 1, unitBy(units)), hours])).toEqual([
      `${at}.columns[4].formula: This gives a number in ft/h, and a number in h is declared.`,
    ]);
  });

  it.each([
    [
      'SUM(tasks.quantity)',
      'Character 5, “tasks.quantity”: The rows of tasks.quantity have different units, so the column cannot be read as a whole.',
    ],
    [
      'SUM(above(quantity))',
      'Character 5, “above(quantity)”: The rows of tasks.quantity have different units, so the column cannot be read as a whole.',
    ],
    [
      'above.quantity',
      'Character 1, “above.quantity”: The row above may have another unit in quantity, so it cannot be read from here.',
    ],
  ])('the table itself cannot read %s either', (text, reason) => {
    expect(faultsOf([key('task'), measures, quantity, formula('more', 'ft2', text, { first: '0' })])).toEqual([
      `${at}.columns[3].formula: ${reason}`,
    ]);
  });

  it.each([
    [[key('task'), quantity], `${at}: Units follow a choice column of the same table, and “measure” is none.`],
    [
      [measures, entryColumn('quantity', '', 0, unitBy({ area: 'ft2' }))],
      `${at}.columns[1].unitBy: The unit for “length” is missing.`,
    ],
    [
      [measures, entryColumn('quantity', '', 0, unitBy({ area: 'ft2', length: 'ft', count: 'each' }))],
      `${at}.columns[1].unitBy.units.count: “count” is not among area, length.`,
    ],
    [
      [measures, entryColumn('quantity', '', 0, unitBy({ area: 'ft2', length: 'feet' }))],
      `${at}.columns[1].unitBy: No unit is called “feet”: did you mean ft?`,
    ],
    [[measures, { ...quantity, unit: 'ft' }], `${at}.columns[1].unitBy: A column has either “unit” or “unitBy”.`],
    [
      [
        choiceColumn(
          'measure',
          Array.from({ length: 21 }, (_, at) => `m${at}`),
          'm0',
        ),
        entryColumn(
          'quantity',
          '',
          0,
          unitBy(Object.fromEntries(Array.from({ length: 21 }, (_, at) => [`m${at}`, 'ft']))),
        ),
      ],
      `${at}.columns[0]: Units follow at most 20 choices.`,
    ],
  ])('%# is refused', (columns, fault) => {
    expect(faultsOf(columns)).toEqual([fault]);
  });
});

describe('“above” and “first”', () => {
  const taken = entryColumn('taken', 'h', 1);

  it.each([
    [
      formula('begin', 'h', 'above.taken'),
      `${at}.columns[1].first: A formula that reads “above” needs “first”, the formula of row one.`,
    ],
    [
      formula('begin', 'h', '1 * SUM(above(taken))'),
      `${at}.columns[1].first: A formula that reads “above” needs “first”, the formula of row one.`,
    ],
    [
      formula('begin', 'h', '0', { first: 'above.taken' }),
      `${at}.columns[1].first: Character 1, “above.taken”: “above” cannot stand here: the first row has none above it.`,
    ],
    [
      formula('begin', 'h', 'above.taken', { first: 'taken * taken' }),
      `${at}.columns[1].first: This gives a number in h2, and a number in h is declared.`,
    ],
    [
      check('fits', 'above.taken > 0'),
      `${at}.columns[1].first: A formula that reads “above” needs “first”, the formula of row one.`,
    ],
    [
      check('fits', 'taken > 0', { say: 'Not after {above.taken}.' }),
      `${at}.columns[1].say: Character 1, “above.taken”: “above” cannot stand here: the first row has none above it.`,
    ],
  ])('%# are refused', (column, fault) => {
    expect(faultsOf([taken, column], [{}])).toEqual([fault]);
  });

  it('a row’s own formula reads the row and lines, and no row above', () => {
    const columns = [taken, entryColumn('pause', 'h', 0, { perRow: true })];
    const pause = (text: string) => faultsOf(columns, [{ pause: { formula: text } }]);
    expect(pause('taken * 2')).toEqual([]);
    expect(pause('floor_area / grind_rate')).toEqual([]);
    expect(pause('above.taken')).toEqual([
      `${at}.start[0].pause: Character 1, “above.taken”: “above” cannot stand here: the first row has none above it.`,
    ]);
    expect(faultsOf(columns, [], { newRow: { pause: { formula: 'takn' } } })).toEqual([
      `${at}.newRow.pause: Character 1, “takn”: There is nothing called “takn”. Did you mean “taken”?`,
    ]);
    expect(faultsOf([taken], [{ taken: { formula: '1' } }])).toEqual([
      `${at}.start[0].taken: A row gives no formula for “taken”.`,
    ]);
  });
});

describe('formulas that give codes', () => {
  it('have the codes of both arms and of row one', () => {
    const columns = [
      entryColumn('people', 'person', 1),
      codeFormula('speed', 'IF(people > 1, "quick", above.speed)', { first: 'IF(people > 1, "quick", "slow")' }),
      formula('slow_ones', '1', 'IF(speed = "slow", 1, 0)'),
    ];
    const laidOut = laid([floor([], [table('tasks', columns, [{}, { people: 3 }, {}])])]);
    expect(laidOut.faults).toEqual([]);
    expect(laidOut.column('tasks', 'speed')).toEqual(['slow', 'quick', 'quick']);
  });

  it('a code none of them gives is refused, once', () => {
    const lineOf = [
      codeFormula('speed', 'IF(floor_area > 0, "quick", "slow")'),
      formula('a', '1', 'IF(speed = "slwo", 1, 0)'),
    ];
    expect(laid([floor([...lines, ...lineOf])]).faults).toEqual([
      'floor garage: sections[0].lines[4].formula: Character 4, “speed = "slwo"”: “slwo” is never among quick, slow. Did you mean “slow”?',
    ]);
    const columns = [codeFormula('speed', '"quick"'), formula('a', '1', 'IF(speed = "slow", 1, 0)')];
    expect(faultsOf(columns)).toEqual([
      `${at}.columns[1].formula: Character 4, “speed = "slow"”: “slow” is never among quick.`,
    ]);
  });

  it('one that is wrong is told at its own place, once', () => {
    expect(faultsOf([codeFormula('speed', 'quick'), formula('a', '1', 'IF(speed = "slow", 1, 0)')])).toEqual([
      `${at}.columns[0].formula: Character 1, “quick”: There is nothing called “quick”.`,
    ]);
    expect(faultsOf([codeFormula('speed', 'floor_area')])).toEqual([
      `${at}.columns[0].formula: This gives a number in ft2, and a code is declared.`,
    ]);
  });

  it('that lead back to themselves are a cycle', () => {
    expect(laid([floor([codeFormula('a', 'b'), codeFormula('b', 'a')])]).faults).toEqual([
      'a: It leads back to itself: a → b → a.',
    ]);
  });
});
