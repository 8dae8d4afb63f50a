import { describe, expect, it } from 'vitest';
import {
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
} from '../helpers/sheets.ts';

const rowOf = (name: string, of: string, standard: string) => ({
  name,
  label: name,
  rowOf: of,
  default: standard,
  source: 'made up for this test',
});

const hours = sheet('part', 'hours', [
  section(
    'hours',
    [entry('day_start', 'h', 7)],
    [
      table('tasks', [
        key('task'),
        entryColumn('hours_taken', 'h', 1),
        rowOf('after', 'tasks', 'above'),
        rowOf('of_coat', 'coats', 'none'),
        formula(
          'start',
          'h',
          'IF(after = "above", above.finish, INDEX(above(finish), MATCH(after, above(task), 0), 1))',
          {
            first: 'day_start',
          },
        ),
        formula('finish', 'h', 'start + hours_taken'),
        formula('waits', 'h', 'IF(of_coat = "none", 0, INDEX(coats.wait, MATCH(of_coat, coats.coat, 0), 1))'),
      ]),
    ],
  ),
]);
const coats = sheet('part', 'coats', [
  section(
    'coats',
    [],
    [
      table(
        'coats',
        [key('coat'), productColumn('product', ['base'], 'base_slate'), entryColumn('wait', 'h', 12)],
        [{ coat: 'base' }],
      ),
    ],
  ),
]);
const day = (rows: readonly object[], set: object = {}) =>
  laid([priceList, system([{ use: 'coats' }, { use: 'hours', set }, { rowsFor: 'tasks', rows }])], [hours, coats]);
const usual = [
  { task: 'grind', hours_taken: 3 },
  { task: 'chase', label: 'Chase and fill' },
  { task: 'edges', after: 'grind', hours_taken: 2 },
  { task: 'lay', of_coat: 'base' },
];

describe('a column that chooses among the rows of a table', () => {
  it('has edges begin at 10, after grinding, beside the cracks', () => {
    const told = day(usual);
    expect(told.faults).toEqual([]);
    expect(told.column('tasks', 'start')).toEqual([7, 10, 10, 12]);
    expect(told.column('tasks', 'waits')).toEqual([0, 0, 0, 12]);
  });

  it('offers those rows in their words, and the row above or none', () => {
    const columns = day(usual).stack.tables.get('tasks')?.columns;
    const offered = (name: string) => {
      const definition = columns?.get(name)?.definition;
      return definition?.kind === 'choice' ? definition.options.map(({ code, label }) => `${code}: ${label}`) : [];
    };
    expect(offered('after')).toEqual([
      'above: The row above',
      'grind: Grind',
      'chase: Chase and fill',
      'edges: Edges',
      'lay: Lay',
    ]);
    expect(offered('of_coat')).toEqual(['none: None', 'base: Base']);
  });

  it('can be set by a system', () => {
    const without = usual.map(({ after: _, ...row }: { after?: string }) => row);
    expect(day(without, { 'tasks.edges.after': 'grind' }).column('tasks', 'start')).toEqual([7, 10, 10, 12]);
  });

  it.each([
    [
      'a row that is not there',
      day([{ task: 'grind' }, { task: 'edges', after: 'grnd' }]),
      'system rolled: sections[2].rows[1].after: “grnd” is not among the choices of “after”. Did you mean “grind”?',
    ],
    [
      'a table that is not there',
      laid([
        priceList,
        system([section('own', [], [table('tasks', [key('task'), rowOf('of_coat', 'coat', 'none')])])]),
      ]),
      'system rolled: sections[0].tables[0].columns[1].rowOf: There is no table “coat” in this sheet.',
    ],
    [
      'a table whose rows have no codes',
      laid([
        priceList,
        system([
          section(
            'own',
            [],
            [
              table('openings', [entryColumn('width', 'ft', 9)]),
              table('tasks', [key('task'), rowOf('opening', 'openings', 'none')]),
            ],
          ),
        ]),
      ]),
      'system rolled: sections[0].tables[1].columns[1].rowOf: The rows of “openings” have no codes of their own to choose among.',
    ],
  ])('is refused with %s', (_, { faults }, fault) => {
    expect(faults).toEqual([fault]);
  });
});
