import { describe, expect, it } from 'vitest';
import { priced } from '../helpers/priced-floor.ts';

const system = 'flake-full-broadcast';
const cubicInchesPerGallon = 231;

// Geometry: a concave cove fills a square of its radius less a quarter of its circle, 12 r2 (1 - pi/4) in3 a foot.
describe('the fill of a concave cove', () => {
  it.each([
    [1, 2.575, 3],
    [4, 41.2, 2],
  ])('of radius %f in is %f in3 a foot', (radius, fill, digits) => {
    const floor = priced(system, { set: { cove_radius: radius } });
    expect(floor.number('cove_fill')).toBeCloseTo(fill, digits);
  });

  it('is what the patches take: 100 ft at 1 in are 257.5 in3, 1.115 gal before waste', () => {
    const floor = priced(system, { set: { cove_wanted: 1, cove_typed: 100, cove_radius: 1, patch_waste: 0 } });
    const gallons = floor.number('repairs.cove.mixed_gallons');
    expect(gallons * cubicInchesPerGallon).toBeCloseTo(257.5, 1);
    expect(floor.number('repairs.cove.resin_gallons')).toBe(gallons);
  });
});

describe('a cove at the walls of 24 by 22 ft', () => {
  it('runs along all 92 ft of edge unless a length is entered', () => {
    expect(priced(system, { set: { cove_wanted: 1 } }).number('cove_length')).toBe(92);
    expect(priced(system, { set: { cove_wanted: 1, cove_typed: 40 } }).number('cove_length')).toBe(40);
  });

  it('takes 4.6 labour hours at 20 ft an hour, and costs more than the floor without', () => {
    const [without, with_] = [priced(system), priced(system, { set: { cove_wanted: 1 } })];
    expect(with_.number('tasks.lay_cove.task_hours')).toBeCloseTo(4.6, 12);
    expect(with_.number('price')).toBeGreaterThan(without.number('price'));
    expect(without.number('tasks.lay_cove.task_hours')).toBe(0);
    expect(without.number('repairs.cove.mixed_gallons')).toBe(0);
  });
});
