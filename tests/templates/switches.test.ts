import { describe, expect, it } from 'vitest';
import { clearedWords } from '../../src/quote/answer-clears.ts';
import { answerEdit, answersOf, asksOf, standingAnswer } from '../../src/quote/asks.ts';
import { lineValue, type OptionResults } from '../../src/quote/option-results.ts';
import type { Ask } from '../../src/template/sheet-schema.ts';
import { flake, type OpenQuote, openQuote } from '../helpers/demo-quote.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';

const flakeSystem = 'flake-full-broadcast';

function resultsOf({ session }: OpenQuote): OptionResults {
  const found = session.results(flake);
  if (found === undefined) throw new Error('The option is gone');
  return found;
}

function askOf(open: OpenQuote, id: string): Ask {
  const found = asksOf(resultsOf(open), 'floor').find((ask) => ask.id === id);
  if (found === undefined) throw new Error(`Nothing asks ${id}`);
  return found;
}

function give(open: OpenQuote, id: string, answer: number): void {
  const edit = answerEdit(askOf(open, id), answer, { kind: 'floor' }, resultsOf(open));
  if (edit === undefined) throw new Error(`${id} has no answer ${answer}`);
  expect(open.session.dispatch(edit).kind, id).not.toBe('refused');
}

/** Answers every toggle of a sheet there and back; gives the ids of those that were asked. */
function thereAndBack(open: OpenQuote, layer: 'floor' | 'system'): string[] {
  const sheet = layer === 'floor' ? ({ kind: 'floor' } as const) : ({ kind: 'option', option: flake } as const);
  const toggles = asksOf(resultsOf(open), layer).filter((ask) => ask.kind === 'toggle');
  for (const ask of toggles) {
    const [stood, before] = [standingAnswer(ask, resultsOf(open)), lineValue(resultsOf(open), 'list_price')];
    expect(stood, ask.id).toBeDefined();
    for (const answer of [1 - (stood ?? 0), stood ?? 0]) {
      const edit = answerEdit(ask, answer, sheet, resultsOf(open));
      if (edit === undefined) throw new Error(`${ask.id} has no answer ${answer}`);
      const done = open.session.dispatch(edit);
      expect(done.kind === 'refused' ? done.reason : done.kind, ask.id).not.toContain(' ');
      expect(standingAnswer(ask, resultsOf(open)), ask.id).toBe(answer);
      expect(typeof lineValue(resultsOf(open), 'price'), ask.id).toBe('number');
    }
    expect(lineValue(resultsOf(open), 'list_price'), ask.id).toBe(before);
  }
  return toggles.map(({ id }) => id);
}

describe('the switches of the first minute', () => {
  it.each(shippedSystems)('of %s are thrown and thrown back, and the price is what it was', async (system) => {
    const open = await openQuote([system]);
    const asked = thereAndBack(open, 'system');
    if (!['recoat', 'repair-only'].includes(system)) expect(asked).toContain('cove');
  });

  it('count three oil spots, which cost more', async () => {
    const open = await openQuote([flakeSystem]);
    const before = Number(lineValue(resultsOf(open), 'list_price'));
    give(open, 'oil', 1);
    expect(lineValue(resultsOf(open), 'oil_spots')).toBe(3);
    expect(Number(lineValue(resultsOf(open), 'list_price'))).toBeGreaterThan(before);
  });

  it.each(['Basement', 'Patio'])(
    'of a garage door are thrown back where a %s is chosen, the edge strip too',
    async (size) => {
      const open = await openQuote([flakeSystem, 'solid-colour']);
      for (const id of ['door-seal', 'door-strip']) give(open, id, 1);
      expect(lineValue(resultsOf(open), 'strips_fitted')).toBe(2);
      const sizes = askOf(open, 'size');
      const chosen = answersOf(sizes).findIndex((label) => label.startsWith(size));
      expect(clearedWords(sizes, chosen, resultsOf(open), 'us')).toContain('edge strip at the door');
      give(open, 'size', chosen);
      expect(['door_seal_off', 'door_strip_wanted'].map((name) => lineValue(resultsOf(open), name))).toEqual([0, 0]);
      expect(lineValue(resultsOf(open), 'strips_fitted')).toBe(0);
      open.session.undo();
      expect(lineValue(resultsOf(open), 'strips_fitted')).toBe(2);
    },
  );

  it('of the floor are thrown and thrown back, and the price is what it was', async () => {
    const asked = thereAndBack(await openQuote([shippedSystems[0] ?? '']), 'floor');
    for (const id of ['furniture', 'heat', 'moisture-test', 'door-seal', 'door-strip', 'oil', 'dump'])
      expect(asked).toContain(id);
  });
});
