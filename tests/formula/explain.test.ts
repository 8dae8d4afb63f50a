import { describe, expect, it } from 'vitest';
import { closuresOf } from '../../src/formula/closures.ts';
import { partEvaluator } from '../../src/formula/evaluate-part.ts';
import { explainFormula } from '../../src/formula/explain.ts';
import { failureText } from '../../src/formula/failure-text.ts';
import { choice, entry, floor, formula, laid } from '../helpers/sheets.ts';

const areaOf =
  'SWITCH(shape, "square", side^2, "ring", side * side / hole, "known", IF(known > 0, known, side / (hole - 0)))';

/** The line `area` of a floor of one shape, with a side of 4 ft, over which it may be explained. */
function areaOfShape(shape: string, hole: number, known = 30) {
  const lines = [
    choice('shape', ['square', 'ring', 'known'], shape),
    entry('side', '1', 4),
    entry('hole', '1', hole),
    entry('known', '1', known),
    formula('area', '1', areaOf),
  ];
  const sheet = laid([floor(lines)]);
  if (sheet.faults.length > 0) throw new Error(sheet.faults.join('\n'));
  const { plan, graph } = sheet.plan;
  const closures = closuresOf(plan, graph);
  const read = (cell: number) => closures.value(cell);
  const over = { plan, read, evaluate: partEvaluator(plan, read), measures: 'us' as const };
  const cell = plan.cells[plan.lines.get('area') ?? -1];
  if (cell?.content.kind !== 'formula') throw new Error('area has no formula');
  return { over, tree: cell.content.tree, place: cell.place, value: sheet.value('area') };
}

describe('the explanation of an area by its shape', () => {
  it('says which arm SWITCH takes, and follows no other', () => {
    const { tree, place, over } = areaOfShape('ring', 2);
    const { names, numbers, steps } = explainFormula(tree, place, over);
    expect(names).toBe(areaOf);
    expect(numbers).toBe('SWITCH("ring", "square", 4^2, "ring", 4 * 4 / 2, "known", IF(30 > 0, 30, 4 / (2 - 0)))');
    expect(steps).toEqual([
      { text: '4 * 4', gives: '16' },
      { text: '16 / 2', gives: '8' },
      { text: 'SWITCH takes its arm for "ring"', gives: '8' },
    ]);
  });

  it('says of an arm within which of its own arms is taken', () => {
    const { tree, place, over } = areaOfShape('known', 2);
    expect(explainFormula(tree, place, over).steps).toEqual([
      { text: '30 > 0', gives: 'yes' },
      { text: 'IF takes its first arm', gives: '30' },
      { text: 'SWITCH takes its arm for "known"', gives: '30' },
    ]);
  });

  it('tells a failure of the arm that is taken, not of one before it that fails as well', () => {
    const { value, over } = areaOfShape('known', 0, 0);
    if (typeof value !== 'object') throw new Error('The area did not fail');
    expect(failureText(value, over, () => 'Area')).toBe('Area cannot be worked out: hole - 0 is 0.');
  });
});
