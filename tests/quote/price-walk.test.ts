import { describe, expect, it } from 'vitest';
import type { Edit } from '../../src/quote/edit.ts';
import { lineValue, type OptionResults } from '../../src/quote/option-results.ts';
import { priceWalk } from '../../src/quote/price-walk.ts';
import { flake, openQuote, solid } from '../helpers/demo-quote.ts';

async function walkAfter(...edits: readonly Edit[]) {
  const { session } = await openQuote();
  for (const edit of edits) {
    const done = session.dispatch(edit);
    if (done.kind === 'refused') throw new Error(done.reason);
  }
  const [from, to] = [session.results(flake), session.results(solid)];
  if (from === undefined || to === undefined) throw new Error('An option is gone');
  return { from, to, walk: priceWalk(from, to) };
}

const shop = (line: string, value: number | string): Edit => ({
  kind: 'enterLine',
  sheet: { kind: 'shop' },
  line,
  value,
});

function cost(results: OptionResults, line: string): number {
  const value = lineValue(results, line);
  if (typeof value !== 'number') throw new Error(`${line} cannot be worked out`);
  return value;
}

describe('the walk from flake to solid colour', () => {
  it.each([
    ['our standard', []],
    ['a net target of 15 %', [shop('target_on', 'net'), shop('target_margin', 0.15)]],
    ['60 ft of cracks', [{ kind: 'enterLine', sheet: { kind: 'floor' }, line: 'crack_length', value: 60 }]],
    [
      'a discount on one of them',
      [{ kind: 'enterLine', sheet: { kind: 'option', option: solid }, line: 'discount', value: 0.05 }],
    ],
  ] as const)('adds up to the difference to the cent with %s', async (_, edits) => {
    const { from, to, walk } = await walkAfter(...edits);
    if (walk.kind === 'incomplete') throw new Error('The walk is incomplete');
    const sum = walk.steps.reduce((total, step) => total + Math.round(step.delta * 100), 0);
    expect(sum).toBe(Math.round((cost(to, 'price') - cost(from, 'price')) * 100));
    expect(walk.steps.length).toBeGreaterThan(2);
  });

  it('moves the price by the cost difference over 1 less the gross target', async () => {
    const { from, to, walk } = await walkAfter();
    if (walk.kind === 'incomplete') throw new Error('The walk is incomplete');
    const labour = walk.steps.find((step) => step.cost === 'labour_cost');
    expect(labour?.delta).toBeCloseTo((cost(to, 'labour_cost') - cost(from, 'labour_cost')) / (1 - 0.47), 2);
    expect(labour?.because).toEqual({ line: 'paid_hours', more: cost(to, 'paid_hours') - cost(from, 'paid_hours') });
  });

  it('has no step from an option to itself', async () => {
    const { from } = await walkAfter();
    expect(priceWalk(from, from)).toMatchObject({ steps: [] });
  });

  it('reads entries as they stand, not as they were laid out', async () => {
    const { from, to, walk } = await walkAfter(shop('labour_rate', 55));
    if (walk.kind === 'incomplete') throw new Error('The walk is incomplete');
    const labour = walk.steps.find((step) => step.cost === 'labour_cost');
    expect(labour?.delta).toBeCloseTo((cost(to, 'labour_cost') - cost(from, 'labour_cost')) / (1 - 0.47), 2);
  });

  it('is incomplete when no price can reach a net target of 90 % after commission and fees', async () => {
    const { walk } = await walkAfter(shop('target_on', 'net'), shop('target_margin', 0.9));
    expect(walk).toEqual({ kind: 'incomplete' });
  });
});
