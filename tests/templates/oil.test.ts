import { describe, expect, it } from 'vitest';
import { priced } from '../helpers/priced-floor.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';

const flake = 'flake-full-broadcast';
const texts = ['oil_ground', 'oil_abraded'];

describe('oil spots', () => {
  it('are paid for as the shop’s entries say: two of 0.1 h and $9 are 0.4 h of a crew of two and $18', () => {
    const shop = { oil_spot_time: 0.1, oil_spot_degreaser: 9 };
    const [none, two] = [priced(flake, { set: shop }), priced(flake, { set: { ...shop, oil_spots: 2 } })];
    const more = (line: string): number => two.number(line) - none.number(line);
    expect(two.number('tasks.obstacles.task_hours')).toBeCloseTo(0.2, 12);
    expect(more('paid_hours')).toBeCloseTo(0.4, 9);
    expect(more('consumables_cost')).toBeCloseTo(18, 9);
    expect(more('labour_cost')).toBeCloseTo(0.4 * 38, 9);
    // The visit is 0.2 h longer, in which equipment of $110 a day of 9 h stands there.
    expect(more('equipment_cost')).toBeCloseTo((0.2 / 9) * 110, 9);
    expect(more('direct_cost')).toBeCloseTo(18 + 0.4 * 38 + (0.2 / 9) * 110, 9);
  });

  it.each(shippedSystems)('cost labour and degreaser in %s, and nothing where there are none', (system) => {
    const [none, one] = [priced(system), priced(system, { set: { oil_spots: 1 } })];
    expect(none.number('tasks.obstacles.task_hours')).toBe(0);
    expect(one.number('tasks.obstacles.task_hours')).toBe(0.25);
    expect(one.number('person_hours')).toBeGreaterThanOrEqual(none.number('person_hours') + 0.25 - 1e-9);
    expect(one.number('consumables_cost') - none.number('consumables_cost')).toBeCloseTo(5, 9);
    expect(one.number('list_price')).toBeGreaterThan(none.number('list_price'));
  });

  it.each(shippedSystems)('are told to the customer of %s with their number and what one more costs', (system) => {
    const floor = priced(system, { set: { oil_spots: 3 } });
    expect(texts.map((text) => priced(system).said(text))).toEqual([undefined, undefined]);
    const done = system === 'recoat' ? 'abraded' : 'ground';
    // 0.25 x 38 + 5 = 14.5; / 0.46 = 31.52
    expect(texts.flatMap((text) => floor.said(text) ?? [])).toEqual([
      `Oil spots degreased and ${done}, up to 3; more found during the work are $32 each.`,
    ]);
  });

  it('are cautioned: what is allowed for them, a test patch, the data sheet', () => {
    expect(priced(flake).check('oil_dealt_with').verdict).toBe('holds');
    const told = priced(flake, { set: { oil_spots: 4 } }).check('oil_dealt_with');
    expect(told).toMatchObject({ verdict: 'fails', severity: 'caution' });
    expect(told.says).toMatch(/Oil spots: 4\. At cost, 1 h of labour and \$20\.00 of degreaser/);
    expect(told.says).toMatch(/test patch; a named person decides.*flames out; the data sheet rules/);
  });

  it('are worked on where only spots of a floor are, and posts and doors there are not', () => {
    const rows = { obstacles: [{ pieces: 2 }] };
    const hours = (oil_spots: number): number =>
      priced('repair-only', { rows, set: { oil_spots } }).number('tasks.obstacles.task_hours');
    expect([hours(0), hours(2)]).toEqual([0, 0.5]);
  });
});
