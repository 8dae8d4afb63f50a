import { describe, expect, it } from 'vitest';
import { priced } from '../helpers/priced-floor.ts';

const system = 'flake-full-broadcast';
const price = (code: string, set = {}): number => priced(system, { set }).number(`change_orders.${code}.change_price`);

describe('change orders', () => {
  // $38 an hour; 47 % and 7 points leave 46 % of the price to pay for it. Rates are common practice, no source, or guesses.
  it.each([
    // 0.057 x 38 + 1.55 = 3.716; / 0.46 = 8.08
    ['crack', 9],
    // 0.136 x 38 + 1.55 = 6.718; / 0.46 = 14.60
    ['crack_skimmed', 15],
    // 0.033 x 38 + 4.03 = 5.284; / 0.46 = 11.49
    ['joint', 12],
    // 0.25 x 38 + 7 = 16.5; / 0.46 = 35.87
    ['patch', 36],
    // 0.4 x 38 + 7 = 22.2; / 0.46 = 48.26
    ['patch_skimmed', 49],
    // 0.25 x 38 + 5 = 14.5; / 0.46 = 31.52
    ['oil_spot', 32],
    // 0.025 x 38 + 0.25 = 1.2; / 0.46 = 2.61
    ['second_coating', 3],
    // 0.012 x 38 + 0.08 = 0.536; / 0.46 = 1.17
    ['extra_pass', 2],
    // 0.01 x 38 + 0.7 = 1.08; / 0.46 = 2.35
    ['barrier', 3],
    // 2 x (0.3 + 0.75 + 0.75 + 1) = 5.6 h; 5.6 x 38 + 55 + 28.5 = 296.3; / 0.46 = 644.13
    ['visit', 645],
    // 2 x 38 = 76; / 0.46 = 165.2
    ['waiting', 166],
    // 4 x 38 = 152; / 0.46 = 330.4
    ['reschedule', 331],
  ])('sell %s for $%d', (code, dollars) => {
    expect(price(code)).toBe(dollars);
  });

  it('are sold at 5 to 10 points above the target: dearer with more points, and with a higher target', () => {
    expect(price('visit', { change_order_points: 0.1 })).toBe(Math.ceil(296.3 / 0.43));
    expect(price('visit', { change_order_points: 0.05 })).toBe(Math.ceil(296.3 / 0.48));
    expect(price('visit', { target_margin: 0.5 })).toBe(Math.ceil(296.3 / 0.43));
  });

  it('carry overhead where the target is net', () => {
    const set = { target_on: 'net', target_margin: 0.15, finance_share: 0 };
    // (38 + 30) x 2 = 136; kept 1 - 0.15 - 0.08 - 0.012 - 0.07 = 0.688
    expect(price('waiting', set)).toBe(Math.ceil(136 / 0.688));
  });

  it('have no price where target and points take all of it: a failed number, not a negative one', () => {
    const floor = priced(system, { set: { target_margin: 0.95 } });
    expect(typeof floor.value('change_orders.crack.change_price')).toBe('object');
  });

  it('are what the quote names for more crack, joint and patch, by how repairs are finished', () => {
    const flake = priced(system);
    const solid = priced('solid-colour');
    const names = ['crack_foot_price', 'joint_foot_price', 'spall_price'];
    expect(names.map((name) => flake.number(name))).toEqual([9, 12, 36]);
    expect(names.map((name) => solid.number(name))).toEqual([15, 12, 49]);
  });

  it('tell the price of waiting, of a visit more, and of a second coating where there is a first', () => {
    const floor = priced(system, { set: { old_surface: 'thin_paint' } });
    expect(floor.said('waiting_term')).toContain('30 min');
    expect(floor.said('waiting_term')).toContain('$166 an hour');
    expect(floor.said('visit_term')).toContain('$645');
    expect(floor.said('second_coating_term')).toContain('$3 a square foot');
    expect(priced(system).said('second_coating_term')).toBeUndefined();
  });
});
