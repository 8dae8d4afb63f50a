import { beforeEach, describe, expect, it } from 'vitest';
import type { OptionResults } from '../../src/quote/option-results.ts';
import { passEdit, takePassEdit } from '../../src/quote/pass-stop.ts';
import { readQuote } from '../../src/quote/read-quote.ts';
import { isHeldBack, openChecks } from '../../src/quote/told-checks.ts';
import type { QuoteSession } from '../../src/session/quote-session.ts';
import { heldBack } from '../../src/views/parts/checks/held-price.ts';
import { flake, openQuote, solid } from '../helpers/demo-quote.ts';

const rain = 'no_rain_on_wet_coat';
const given = { by: ' Dana R. ', why: 'The garage door stays shut.', at: '2026-11-25T14:05:00.000Z' };

let session: QuoteSession;

beforeEach(async () => {
  ({ session } = await openQuote());
});

function resultsOf(option: string): OptionResults {
  const results = session.results(option);
  if (results === undefined) throw new Error('The option is gone');
  return results;
}

function enterFloor(line: string, value: number | string): void {
  const done = session.dispatch({ kind: 'enterLine', sheet: { kind: 'floor' }, line, value });
  if (done.kind === 'refused') throw new Error(done.reason);
}

/** A slab colder than the dew point leaves it: a stop of the floor, and so of every option. */
function wetBySlabAtDew(): void {
  enterFloor('slab_temperature', 60);
  enterFloor('air_temperature', 75);
  enterFloor('humidity', 0.7);
}

function dewStop(option: string) {
  return openChecks(resultsOf(option)).find(({ name }) => name === 'slab_above_dew');
}

function goAhead(option = flake): ReturnType<QuoteSession['dispatch']> {
  const edit = passEdit(resultsOf(option), option, 'slab_above_dew', given);
  if (edit === undefined) throw new Error('The stop is not open');
  return session.dispatch(edit);
}

describe('a stop on the floor', () => {
  it('keeps the price until somebody goes ahead past it with name, time and reason, in every option', () => {
    wetBySlabAtDew();
    expect([flake, solid].map((option) => isHeldBack(resultsOf(option)))).toEqual([true, true]);
    expect(goAhead()).toEqual({ kind: 'done' });
    expect([flake, solid].map((option) => isHeldBack(resultsOf(option)))).toEqual([false, false]);
    expect(dewStop(solid)).toMatchObject({
      verdict: 'fails',
      passed: { by: 'Dana R.', why: 'The garage door stays shut.', at: '2026-11-25T14:05:00.000Z' },
    });
    expect(session.quote.floor.passed?.['slab_above_dew']?.said).toBe(dewStop(flake)?.says);
  });

  it('is told to no customer once it is passed, and neither is who passed it', () => {
    wetBySlabAtDew();
    expect(heldBack(resultsOf(flake), 'us')).not.toEqual([]);
    goAhead();
    expect(heldBack(resultsOf(flake), 'us')).toEqual([]);
  });

  it('stops again once its numbers are others, and tells what was passed', () => {
    wetBySlabAtDew();
    goAhead();
    enterFloor('humidity', 0.8);
    expect(isHeldBack(resultsOf(flake))).toBe(true);
    expect(dewStop(flake)).toMatchObject({ lapsed: { by: 'Dana R.' } });
    expect(dewStop(flake)).not.toHaveProperty('passed');
    enterFloor('humidity', 0.7);
    expect(isHeldBack(resultsOf(flake))).toBe(false);
  });

  it('is passed whether its numbers are read in US measures or in metric', () => {
    wetBySlabAtDew();
    goAhead();
    const inMetric = openChecks(resultsOf(flake), 'metric').find(({ name }) => name === 'slab_above_dew');
    expect(inMetric?.says).toContain('°C');
    expect(inMetric?.passed?.by).toBe('Dana R.');
  });

  it('stands again when the pass is taken back or undone; the quote is then as it was', () => {
    wetBySlabAtDew();
    const before = session.quote;
    goAhead();
    session.undo();
    expect(session.quote).toEqual(before);
    session.redo();
    const taken = takePassEdit(resultsOf(solid), solid, 'slab_above_dew');
    expect(taken && session.dispatch(taken)).toEqual({ kind: 'done' });
    expect(session.quote).toEqual(before);
    expect(isHeldBack(resultsOf(flake))).toBe(true);
  });

  it('is kept as passed by what is stored, and read back', () => {
    wetBySlabAtDew();
    goAhead();
    expect(readQuote(JSON.parse(JSON.stringify(session.quote)))).toEqual({ kind: 'quote', quote: session.quote });
  });
});

describe('a stop whose numbers are rounded in what it says', () => {
  it('stays passed when the quote is read back and worked out anew, in both measures and after an edit aside', async () => {
    wetBySlabAtDew();
    goAhead();
    expect(dewStop(flake)?.says).toContain('with a dew point of 64.6 °F it must be 69.6 °F');
    const read = readQuote(JSON.parse(JSON.stringify(session.quote)));
    if (read.kind !== 'quote') throw new Error('The quote cannot be read');
    const { workbooks } = await openQuote();
    expect(workbooks.load(read.quote).kind).not.toBe('refused');
    const again = workbooks.results(flake);
    if (again === undefined) throw new Error('The option is gone');
    expect(isHeldBack(again)).toBe(false);
    for (const measures of ['us', 'metric'] as const) {
      const stop = openChecks(again, measures).find(({ name }) => name === 'slab_above_dew');
      expect(stop?.passed?.by).toBe('Dana R.');
    }
    enterFloor('crack_length', 25);
    expect(isHeldBack(resultsOf(flake))).toBe(false);
  });
});

describe('nobody goes ahead', () => {
  const pass = { by: 'Dana R.', why: 'I say so.', at: given.at, said: 'x' };
  const refusal = (check: string, changed: Partial<typeof pass> = {}): string => {
    const sheet = { kind: 'option', option: flake } as const;
    const done = session.dispatch({ kind: 'passStop', sheet, check, pass: { ...pass, ...changed } });
    return done.kind === 'refused' ? done.reason : '';
  };

  it('past a price under the walk-away price, or a slab colder than the product takes', () => {
    expect(refusal('price_above_walk_away')).toContain('no way round');
    expect(refusal('coats.base.warm_enough')).toContain('no way round');
  });

  it('past a caution, a line that is no check, or a check of another sheet', () => {
    expect(refusal('net_target_likely')).not.toBe('');
    expect(refusal('price')).toContain('no check');
    expect(refusal('slab_above_dew')).toContain('no check');
  });

  it('without a name or a reason', () => {
    expect(refusal(rain, { by: '  ' })).toBe('Say who goes ahead.');
    expect(refusal(rain, { why: ' ' })).toContain('why');
    expect(
      session.dispatch({
        kind: 'passStop',
        sheet: { kind: 'option', option: flake },
        check: rain,
        pass: { ...pass, by: '' },
      }).kind,
    ).toBe('refused');
  });

  it('past a stop that is not open', () => {
    expect(passEdit(resultsOf(flake), flake, rain, given)).toBeUndefined();
  });
});
