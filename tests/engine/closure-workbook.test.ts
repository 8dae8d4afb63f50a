import { describe, expect, it } from 'vitest';
import { closureWorkbook } from '../../src/engine/closure-workbook.ts';
import { openWorkbook } from '../../src/engine/workbook.ts';
import { priced } from '../helpers/priced-floor.ts';

const planned = priced('solid-colour').option;
const { plan } = planned;
const cellOf = (line: string): number => plan.lines.get(line) ?? -1;

describe('a workbook whose values come from the closures', () => {
  it('gives the engine’s numbers, and none for a cell that is not there', () => {
    const page = closureWorkbook(planned);
    const engine = openWorkbook(plan);
    expect(page.values()).toEqual(engine.values());
    expect(page.value(cellOf('price'))).toBe(engine.value(cellOf('price')));
    expect(() => page.value(plan.cells.length)).toThrow('no cell');
    for (const each of [page, engine]) each.close();
  });

  it('follows 60 ft of cracks as the engine does, and tells the same cells', () => {
    const page = closureWorkbook(planned);
    const engine = openWorkbook(plan);
    const before = page.value(cellOf('direct_cost'));
    const changed = page.setValue(cellOf('crack_length'), 60);
    expect([...changed].sort()).toEqual([...engine.setValue(cellOf('crack_length'), 60)].sort());
    expect(page.values()).toEqual(engine.values());
    expect(page.value(cellOf('direct_cost'))).not.toBe(before);
    page.setValue(cellOf('crack_length'), 0);
    page.setValue(cellOf('crack_length'), 45);
    engine.setValue(cellOf('crack_length'), 45);
    expect(page.values()).toEqual(engine.values());
    for (const each of [page, engine]) each.close();
  });
});
