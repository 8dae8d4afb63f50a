import { describe, expect, it } from 'vitest';
import { graphOf } from '../../src/formula/cell-graph.ts';
import { placeText } from '../../src/formula/cell-name.ts';
import { closuresOf } from '../../src/formula/closures.ts';
import { entry, entryColumn, floor, formula, key, laid, table } from '../helpers/sheets.ts';

const column = (name: string, unit: string, text: string, more = {}) => ({
  name,
  label: name,
  unit,
  formula: text,
  ...more,
});

describe('a cycle is told by its path', () => {
  it.each([
    ['of a line to itself', [formula('price', '$', 'price * 2')], 'price → price'],
    [
      'of three lines',
      [formula('a', '1', 'b + 1'), formula('b', '1', 'c'), formula('c', '1', '2 * a')],
      'a → b → c → a',
    ],
    [
      'found behind a line that only leads to it',
      [formula('outside', '1', 'b'), formula('b', '1', 'c'), formula('c', '1', 'b')],
      'b → c → b',
    ],
    [
      'through the arm of IF that is not taken',
      [formula('a', '1', 'IF(1 = 1, 0, b)'), formula('b', '1', 'a')],
      'a → b → a',
    ],
  ])('%s', (_, lines, path) => {
    const [begin] = path.split(' ');
    expect(laid([floor(lines)]).faults).toEqual([`${begin}: It leads back to itself: ${path}.`]);
  });

  it('through a column', () => {
    const hours = table(
      'tasks',
      [key('task'), column('hours', '1', 'total / 2')],
      [{ task: 'grind' }, { task: 'coat' }],
    );
    expect(laid([floor([formula('total', '1', 'SUM(tasks.hours)')], [hours])]).faults).toEqual([
      'total: It leads back to itself: total → tasks.hours row 1 → total.',
    ]);
  });

  it('of a row to the row above and back', () => {
    const chain = table(
      'tasks',
      [column('begin', 'h', 'above.finish', { first: 'SUM(tasks.finish)' }), column('finish', 'h', 'begin')],
      [{}, {}],
    );
    expect(laid([floor([], [chain])]).faults).toEqual([
      'tasks.begin row 1: It leads back to itself: tasks.begin row 1 → tasks.finish row 1 → tasks.begin row 1.',
    ]);
  });

  it('and closures are not built over one', () => {
    const { plan } = laid([floor([formula('a', '1', 'a')])]).plan;
    expect(() => closuresOf(plan)).toThrow('The plan has a cycle');
  });
});

describe('no cycle', () => {
  const chain = table(
    'tasks',
    [
      key('task'),
      entryColumn('taken', 'h', 0),
      column('begin', 'h', 'above.finish', { first: '0' }),
      column('finish', 'h', 'begin + taken'),
      column('so_far', 'h', 'SUM(above(taken))', { first: '0' }),
    ],
    [
      { task: 'grind', taken: 3 },
      { task: 'base', taken: 1.5 },
      { task: 'clear', taken: 1 },
    ],
  );

  it('begin = above.finish and finish = begin + taken', () => {
    const sheet = laid([floor([], [chain])]);
    expect(sheet.faults).toEqual([]);
    expect(sheet.column('tasks', 'begin')).toEqual([0, 3, 4.5]);
    expect(sheet.column('tasks', 'finish')).toEqual([3, 4.5, 5.5]);
    expect(sheet.column('tasks', 'so_far')).toEqual([0, 3, 4.5]);
  });

  it('and each cell comes after all it reads', () => {
    const { graph, plan } = laid([floor([formula('last', 'h', 'MAX(tasks.finish)')], [chain])]).plan;
    if (graph.kind === 'cycle') throw new Error('no cycle was expected');
    const at = new Map(graph.order.map((cell, place) => [cell, place]));
    expect(graph.order).toHaveLength(10);
    for (const [cell, place] of at) {
      for (const source of graph.reads[cell] ?? []) {
        expect(at.get(source) ?? -1).toBeLessThan(place);
        expect(graph.readBy[source]).toContain(cell);
      }
    }
    expect(graph.reads[plan.lines.get('last') ?? -1]?.map((cell) => placeText(plan.cells[cell]?.place))).toEqual([
      'tasks.finish row 1',
      'tasks.finish row 2',
      'tasks.finish row 3',
    ]);
  });

  it('a chain of 1,999 lines is worked out', () => {
    const links = Array.from({ length: 1998 }, (_, at) => formula(`n${at + 1}`, '1', `n${at} + 1`));
    const sheet = laid([floor([entry('n0', '1', 1), ...links.reverse()])]);
    expect(sheet.faults).toEqual([]);
    expect(graphOf(sheet.plan.plan).kind).toBe('graph');
    expect(sheet.value('n1998')).toBe(1999);
  });
});
