import { describe, expect, it } from 'vitest';
import { comingWorkbook } from '../../src/engine/coming-workbook.ts';
import { openWorkbook } from '../../src/engine/workbook.ts';
import { priced } from '../helpers/priced-floor.ts';

const { plan, graph } = priced('solid-colour').option;
const cellOf = (line: string): number => plan.lines.get(line) ?? -1;

/** Work that waits until the test has it done. */
function waiting(): { later: (work: () => void) => void; done: () => void } {
  const works: (() => void)[] = [];
  return {
    later: (work) => works.push(work),
    done: () => {
      for (const work of works.splice(0)) work();
    },
  };
}

describe('a workbook whose engine comes later', () => {
  it('gives the engine’s numbers before the engine is there, and after', () => {
    const { later, done } = waiting();
    const coming = comingWorkbook(plan, graph, later);
    const engine = openWorkbook(plan);
    expect(coming.values()).toEqual(engine.values());
    expect(coming.value(cellOf('price'))).toBe(engine.value(cellOf('price')));
    done();
    expect(coming.values()).toEqual(engine.values());
    expect(() => coming.value(plan.cells.length)).toThrow('no cell');
    for (const each of [coming, engine]) each.close();
  });

  it('follows 60 ft of cracks at once as the engine does, and stands so when the engine has followed', () => {
    const { later, done } = waiting();
    const coming = comingWorkbook(plan, graph, later);
    const engine = openWorkbook(plan);
    const before = coming.value(cellOf('direct_cost'));
    const changed = coming.setValue(cellOf('crack_length'), 60);
    expect([...changed].sort()).toEqual([...engine.setValue(cellOf('crack_length'), 60)].sort());
    expect(coming.values()).toEqual(engine.values());
    expect(coming.value(cellOf('direct_cost'))).not.toBe(before);
    done();
    expect(coming.values()).toEqual(engine.values());
    coming.setValue(cellOf('crack_length'), 0);
    coming.setValue(cellOf('crack_length'), 45);
    engine.setValue(cellOf('crack_length'), 45);
    expect(coming.values()).toEqual(engine.values());
    done();
    expect(coming.values()).toEqual(engine.values());
    for (const each of [coming, engine]) each.close();
  });

  it('is left alone when it was closed before', () => {
    const { later, done } = waiting();
    const coming = comingWorkbook(plan, graph, later);
    coming.close();
    expect(done).not.toThrow();
    expect(coming.values()).toHaveLength(plan.cells.length);
  });
});
