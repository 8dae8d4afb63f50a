import { describe, expect, it } from 'vitest';
import { movedWords, type ToldOption, type ToldOptions, toldOptions } from '../../../src/views/app/told-options.ts';
import { openQuote } from '../../helpers/demo-quote.ts';

const flake: ToldOption = { id: 'a', title: 'Full flake', price: '$4,185', days: 'one day on site', held: '' };
const solid: ToldOption = { id: 'b', title: 'Solid colour', price: '$3,940', days: '2 days on site', held: '' };

function told(...options: ToldOption[]): ToldOptions {
  return { measures: 'us', options };
}

describe('what is told of options', () => {
  it('is what moved, of the options it moved of', () => {
    expect(movedWords(told(flake, solid), told({ ...flake, price: '$4,312' }, solid))).toBe('Full flake: $4,312.');
    expect(movedWords(told(flake, solid), told(flake, { ...solid, days: '3 days on site' }))).toBe(
      'Solid colour: 3 days on site.',
    );
    expect(movedWords(told(flake, solid), told(flake, solid))).toBe('');
  });

  it('is every price where another option stands beside them, and at first', () => {
    expect(movedWords(told(flake), told(flake, solid))).toBe('Full flake: $4,185. Solid colour: $3,940.');
    expect(movedWords(told(flake, solid), told(solid))).toBe('Solid colour: $3,940.');
    expect(movedWords(undefined, told(flake))).toBe('Full flake: $4,185.');
  });

  it('is why a price may not be given, but not the same reason in other measures', () => {
    const held = { ...flake, price: '$4,185, not yet', held: 'A 9 ft door is missing.' };
    expect(movedWords(told(flake), told(held))).toBe('Full flake: $4,185, not yet. A 9 ft door is missing.');
    const inMetric = { ...held, held: 'A 2.74 m door is missing.' };
    expect(movedWords(told(held), { measures: 'metric', options: [inMetric] })).toBe('');
  });

  it('comes from the quote: damp signs below grade hold both prices back, with the reason', async () => {
    const { session } = await openQuote();
    const before = toldOptions(session, 'us');
    expect(before.options.map(({ held }) => held)).toEqual(['', '']);
    expect(before.options.map(({ days }) => /on site, walk on it no sooner than/.test(days))).toEqual([true, true]);
    const said = { moisture_signs: 'wet', grade: 'below_grade' };
    for (const [line, value] of Object.entries(said))
      expect(session.dispatch({ kind: 'enterLine', sheet: { kind: 'floor' }, line, value })).toEqual({ kind: 'done' });
    const words = movedWords(before, toldOptions(session, 'us'));
    for (const { title } of before.options) expect(words).toContain(`${title}: $`);
    expect(words.match(/, not yet/g)).toHaveLength(2);
    expect(words).toContain('moisture test');
  });
});
