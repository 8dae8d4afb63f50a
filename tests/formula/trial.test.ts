import { describe, expect, it } from 'vitest';
import { closuresOf } from '../../src/formula/closures.ts';
import { routeBetween, trialOf } from '../../src/formula/trial.ts';
import { flake, openQuote } from '../helpers/demo-quote.ts';

describe('a trial of other costs', async () => {
  const { session } = await openQuote();
  const results = session.results(flake);
  if (results === undefined) throw new Error('The option is gone');
  const { plan, graph } = results.option;
  const cell = (line: string) => plan.lines.get(line) ?? -1;

  it('gives the list price that working out the whole plan anew gives', () => {
    const trial = trialOf(
      routeBetween(plan, graph, [cell('labour_cost'), cell('travel_cost')], cell('list_price')),
      results.read,
    );
    const whole = closuresOf({
      ...plan,
      cells: plan.cells.map((one, at) => {
        if (at === cell('labour_cost')) return { ...one, content: { kind: 'number', value: 2000 } };
        return at === cell('travel_cost') ? { ...one, content: { kind: 'number', value: 75.5 } } : one;
      }),
    });
    trial.setValue(cell('labour_cost'), 2000);
    trial.setValue(cell('travel_cost'), 75.5);
    expect(trial.result()).toBe(whole.value(cell('list_price')));
    expect(trial.result()).not.toBe(results.read(cell('list_price')));
  });

  it('gives what stands when nothing else is tried', () => {
    const route = routeBetween(plan, graph, [cell('labour_cost')], cell('net_margin'));
    expect(trialOf(route, results.read).result()).toBe(results.read(cell('net_margin')));
  });

  it('works out only what lies between', () => {
    const { between } = routeBetween(plan, graph, [cell('labour_cost')], cell('list_price'));
    expect(between.map((at) => plan.cells[at]?.place)).toEqual([
      { kind: 'line', name: 'direct_cost' },
      { kind: 'line', name: 'contingency_cost' },
      { kind: 'line', name: 'reserve_cost' },
      { kind: 'line', name: 'full_cost' },
      { kind: 'line', name: 'list_price' },
    ]);
  });
});
