import { describe, expect, it } from 'vitest';
import {
  check,
  choice,
  choiceColumn,
  entry,
  entryColumn,
  formula,
  key,
  laid,
  priceList,
  productColumn,
  section,
  sheet,
  system,
  table,
  text,
} from '../helpers/sheets.ts';

const tasks = table(
  'tasks',
  [
    key('task'),
    entryColumn('factor', '1', 1),
    entryColumn('quantity', 'ft2', 0, { perRow: true }),
    choiceColumn('beside', ['own', 'above'], 'own'),
    { name: 'remark', label: 'remark', text: '' },
    { name: 'doubled', label: 'doubled', unit: '1', formula: 'factor * 2' },
  ],
  [{ task: 'grind', quantity: { formula: 'area' } }],
);
const preparation = sheet('part', 'preparation', [
  section(
    'preparation',
    [
      entry('area', 'ft2', 500),
      entry('grind_factor', '1', 1),
      entry('begin', 'date', '2026-01-05'),
      choice('finish', ['shaved', 'skimmed'], 'shaved'),
      text('remarks', 'None.'),
      formula('doubled_factor', '1', 'grind_factor * 2'),
      check('enough', 'area > 0'),
    ],
    [tasks],
  ),
]);
const repairs = sheet('part', 'repairs', [
  section('repairs', [entry('crack_length', 'ft', 20)]),
  { rowsFor: 'tasks', rows: [{ task: 'fill', factor: 3 }, { task: 'shave' }] },
]);
const coats = sheet('part', 'coats', [
  section(
    'coats',
    [],
    [table('coats', [key('coat'), productColumn('product', ['base'], 'base_slate')], [{ coat: 'first' }])],
  ),
]);
const parts = [preparation, repairs, coats];

const compose = (...sections: object[]) => laid([priceList, system(sections.map((each) => ({ ...each })))], parts);
const useWith = (set: Record<string, unknown>) => compose({ use: 'preparation', set }, { use: 'coats' });
const path = 'system rolled: sections[0].set.';

describe('a system', () => {
  it('places parts and adds rows to their tables in list order', () => {
    const laidOut = compose(
      { use: 'preparation' },
      { rowsFor: 'tasks', rows: [{ task: 'vacuum', factor: 5 }] },
      { use: 'repairs' },
      { rowsFor: 'tasks', rows: [{ task: 'lay', label: 'Lay the coat' }] },
    );
    expect(laidOut.faults).toEqual([]);
    expect(laidOut.column('tasks', 'task')).toEqual(['grind', 'vacuum', 'fill', 'shave', 'lay']);
    expect(laidOut.column('tasks', 'factor')).toEqual([1, 5, 3, 1, 1]);
    expect(laidOut.plan.rows.get('tasks')?.map(({ label }) => label)).toEqual([
      'Grind',
      'Vacuum',
      'Fill',
      'Shave',
      'Lay the coat',
    ]);
    expect(laidOut.stack.sheets.at(-1)?.sections.map((each) => [each.id, each.part])).toEqual([
      ['preparation', 'preparation'],
      ['repairs', 'repairs'],
      ['results', undefined],
    ]);
  });

  it.each([
    [[{ use: 'repair' }], 'system rolled: sections[0].use: There is no part “repair”. Did you mean “repairs”?'],
    [[{ use: 'coats' }, { use: 'coats' }], 'system rolled: sections[1].use: The part “coats” is used already.'],
    [
      [{ use: 'preparation' }, { rowsFor: 'task', rows: [] }],
      'system rolled: sections[1].rowsFor: There is no table “task” in this sheet. Did you mean “tasks”?',
    ],
    [
      [{ use: 'preparation' }, { rowsFor: 'tasks', rows: [{ task: 'vacuum' }, { task: 'grind' }] }],
      'system rolled: sections[1].rows[1]: There are two rows “grind” in tasks; the other is part preparation: sections[0].tables[0].start[0].',
    ],
    [
      [{ use: 'preparation' }, { rowsFor: 'tasks', rows: [{ factor: 1 }] }],
      'system rolled: sections[1].rows[0]: The row lacks its key “task”.',
    ],
    [
      [{ use: 'preparation' }, { rowsFor: 'tasks', rows: [{ task: ' ' }] }],
      'system rolled: sections[1].rows[0].task: A row is called by a word or two.',
    ],
    [
      [{ use: 'preparation' }, { rowsFor: 'tasks', rows: [{ task: 'lay', factr: 1 }] }],
      'system rolled: sections[1].rows[0].factr: The table “tasks” has no column “factr”. Did you mean “factor”?',
    ],
    [
      [{ use: 'preparation' }, { rowsFor: 'tasks', rows: [{ task: 'lay', quantity: { formula: 'aria' } }] }],
      'system rolled: sections[1].rows[0].quantity: Character 1, “aria”: There is nothing called “aria”. Did you mean “area”?',
    ],
  ])('is refused with both places: %j', (sections, fault) => {
    expect(compose(...sections).faults).toEqual([fault]);
  });
});

describe('set', () => {
  it('gives entries, dates, choices, texts and cells another value', () => {
    const laidOut = useWith({
      grind_factor: 1.2,
      begin: '2026-02-01',
      finish: 'skimmed',
      remarks: 'Soft concrete.',
      'tasks.grind.factor': 1.8,
      'tasks.grind.beside': 'above',
      'tasks.grind.remark': 'Slowly.',
      'coats.first.product': 'base_sand',
    });
    expect(laidOut.faults).toEqual([]);
    expect(laidOut.value('doubled_factor')).toBe(2.4);
    expect(laidOut.value('begin')).toBe(46_054);
    expect(laidOut.value('finish')).toBe('skimmed');
    expect(laidOut.column('tasks', 'doubled')).toEqual([3.6]);
    expect(laidOut.column('tasks', 'beside')).toEqual(['above']);
    expect(laidOut.column('coats', 'product')).toEqual(['base_sand']);
    const texts = laidOut.stack.sheets.at(-1)?.sections[0]?.lines.map(({ line }) => line.kind === 'text' && line.text);
    expect(texts).toContain('Soft concrete.');
  });

  it.each([
    ['doubled_factor', 1, '“doubled_factor” is worked out, not entered.'],
    ['enough', 1, '“enough” is a check: it is told, not entered.'],
    ['tasks.grind.doubled', 1, '“doubled” is worked out, not entered.'],
    ['tasks.grind.quantity', 1, '“quantity” is worked out, not entered.'],
    ['tasks.grind.task', 'mill', '“task” is the name of its row, and is given with the row.'],
    ['grind_factor', 'more', '“grind_factor” is a number in 1, not “more”.'],
    ['begin', 5, '“5” is no date; write it as 2026-05-31.'],
    ['finish', 'skimed', '“skimed” is not among the choices of “finish”. Did you mean “skimmed”?'],
    ['remarks', 5, '“remarks” takes a text.'],
    ['tasks.grind.factor', 'more', '“factor” is a number in 1, not “more”.'],
    ['tasks.grind.beside', 'below', '“below” is not among the choices of “beside”: own, above.'],
    ['tasks.grind.remark', 5, '“remark” takes a text.'],
    ['coats.first.product', 'Base slate', '“Base slate” is not a code: lower-case letters, digits and underscores.'],
    ['grind_factr', 1, 'There is nothing called “grind_factr” to set. Did you mean “grind_factor”?'],
    ['tasks.grnd.factor', 1, 'There is nothing called “tasks.grnd.factor” to set. Did you mean “tasks.grind.factor”?'],
    ['tasks', 1, 'There is nothing called “tasks” to set.'],
  ])('%s to %j is refused', (name, value, reason) => {
    expect(useWith({ [name]: value }).faults).toEqual([`${path}${name}: ${reason}`]);
  });

  it('of one name twice is refused with both places', () => {
    const sections = [
      { use: 'preparation', set: { grind_factor: 1.2 } },
      { use: 'repairs', set: { grind_factor: 1.3 } },
    ];
    expect(compose(...sections).faults).toEqual([
      'system rolled: sections[1].set.grind_factor: “grind_factor” is set twice; the other is system rolled: sections[0].set.grind_factor.',
    ]);
  });

  it('of a cell to a product the price list has not is told where it is laid out', () => {
    expect(useWith({ 'coats.first.product': 'base_slat' }).faults).toEqual([
      'part coats: sections[0].tables[0].start[0].product: The price list has no product “base_slat”. Did you mean “base_slate”?',
    ]);
  });

  it('of a line whose own shape is wrong tells that shape alone', () => {
    const broken = sheet('part', 'broken', [section('broken', [{ ...entry('depth', 'in', 4), unt: 'ft' }])]);
    expect(laid([system([{ use: 'broken', set: { depth: 5 } }])], [broken]).faults).toEqual([
      'sections[0].lines[0].unt: There is no property “unt” here. Did you mean “unit”?',
    ]);
  });
});
