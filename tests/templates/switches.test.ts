import { describe, expect, it } from 'vitest';
import { answerEdit, asksOf, standingAnswer } from '../../src/quote/asks.ts';
import { lineValue, type OptionResults } from '../../src/quote/option-results.ts';
import { flake, type OpenQuote, openQuote } from '../helpers/demo-quote.ts';
import { shippedSystems } from '../helpers/priced-floor.ts';

function resultsOf({ session }: OpenQuote): OptionResults {
  const found = session.results(flake);
  if (found === undefined) throw new Error('The option is gone');
  return found;
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

  it('of the floor are thrown and thrown back, and the price is what it was', async () => {
    const asked = thereAndBack(await openQuote([shippedSystems[0] ?? '']), 'floor');
    for (const id of ['furniture', 'heat', 'moisture-test', 'door-seal', 'dump']) expect(asked).toContain(id);
  });
});
