import { describe, expect, it } from 'vitest';
import { optionSummaries } from '../../src/quote/quote-head.ts';
import { isHeldBack, openChecks, toldChecks } from '../../src/quote/told-checks.ts';
import { flake, openQuote } from '../helpers/demo-quote.ts';

async function openChecksAfter(line: string, sheet: 'shop' | 'floor' | 'option', value: number | string) {
  const { session } = await openQuote();
  const place = sheet === 'option' ? ({ kind: 'option', option: flake } as const) : ({ kind: sheet } as const);
  const done = session.dispatch({ kind: 'enterLine', sheet: place, line, value });
  if (done.kind === 'refused') throw new Error(done.reason);
  const results = session.results(flake);
  if (results === undefined) throw new Error('The option is gone');
  return openChecks(results);
}

describe('a price', () => {
  const told = async (discount: number) => {
    const { session } = await openQuote();
    const sheet = { kind: 'option', option: flake } as const;
    session.dispatch({ kind: 'enterLine', sheet, line: 'discount', value: discount });
    const results = session.results(flake);
    if (results === undefined) throw new Error('The option is gone');
    return {
      held: isHeldBack(results),
      options: optionSummaries(session.quote, (option) => session.results(option)),
    };
  };

  it('is held back by a stop, and the list of quotes is told of that option alone', async () => {
    const { held, options } = await told(0.2);
    expect(held).toBe(true);
    expect(options.map((option) => option.held)).toEqual([true, undefined]);
  });

  it('is not held back by cautions and notes', async () => {
    const { held, options } = await told(0);
    expect(held).toBe(false);
    expect(options.every((option) => !('held' in option))).toBe(true);
  });
});

describe('checks', () => {
  it('stop a price under the walk-away price, with no way round, and say both prices', async () => {
    const checks = await openChecksAfter('discount', 'option', 0.2);
    const stop = checks.find((check) => check.name === 'price_above_walk_away');
    expect(stop).toMatchObject({ severity: 'stop', absolute: true, verdict: 'fails' });
    expect(stop?.says).toMatch(/\$[\d,.]+.*\$[\d,.]+/);
  });

  it('stop a slab of 45 °F, which is under what the base allows, naming the coat', async () => {
    const checks = await openChecksAfter('slab_temperature', 'floor', 45);
    const cold = checks.find((check) => check.name === 'coats.base.warm_enough');
    expect(cold).toMatchObject({ severity: 'stop', absolute: true, verdict: 'fails' });
    expect(cold?.says).toContain('45 °F');
  });

  it('cannot tell, which is no pass, when what they ask cannot be worked out', async () => {
    const { session } = await openQuote();
    session.dispatch({
      kind: 'enterCell',
      sheet: { kind: 'floor' },
      table: 'areas',
      row: 'bay',
      column: 'length',
      value: 0,
    });
    const results = session.results(flake);
    if (results === undefined) throw new Error('The option is gone');
    const checks = toldChecks(results);
    expect(checks.find((check) => check.name === 'floor_measured')).toMatchObject({
      verdict: 'fails',
      severity: 'stop',
    });
    expect(checks.find((check) => check.name === 'price_in_band')?.verdict).toBe('unknown');
  });
});
