import { describe, expect, it } from 'vitest';
import { priced } from '../helpers/priced-floor.ts';

/*
 * Wet DCOF by use, ANSI A326.3-2022, as two trade pages give it: secondary copies, not the primary text. The standard says
 * of itself that it compares surfaces and predicts no falls.
 */
const system = 'flake-full-broadcast';

describe('grip when wet', () => {
  it.each([
    ['interior_dry', 0.42],
    ['interior_wet', 0.42],
    ['wet_plus', 0.5],
    ['exterior_wet', 0.55],
    ['oils', 0.55],
  ])('of a floor used as %s is asked for with a DCOF of %f', (use, asked) => {
    const at = (stated: number) => priced(system, { set: { slip_use: use, slip_stated: stated } });
    expect(at(0).number('slip_asked')).toBe(asked);
    expect(at(asked).check('slip_enough').verdict).toBe('holds');
    expect(at(asked - 0.01).check('slip_enough')).toMatchObject({ verdict: 'fails', severity: 'caution' });
  });

  it('outdoors is never asked for with less than 0.55', () => {
    expect(priced(system, { set: { outdoors: 1, slip_use: 'interior_dry' } }).number('slip_asked')).toBe(0.55);
    expect(priced('patio-porch', { set: { slip_use: 'wet_plus' } }).number('slip_asked')).toBe(0.55);
  });

  it('that the maker has not stated is noted with the number to ask for, and no fall is predicted', () => {
    const told = priced(system).check('slip_known');
    expect(told).toMatchObject({ verdict: 'fails', severity: 'note' });
    expect(told.says).toContain('0.55');
    expect(told.says).toContain('predicts no fall');
    expect(priced(system).check('slip_enough').verdict).toBe('holds');
    expect(priced(system, { set: { slip_stated: 0.6 } }).check('slip_known').verdict).toBe('holds');
  });
});
