import { describe, expect, it } from 'vitest';
import { priced } from '../helpers/priced-floor.ts';

/*
 * Full flake beside solid colour on one cracked slab. Under full flake repairs are filled and shaved; under a floor that hides
 * nothing they are filled, shaved, skimmed, shaved again and primed, and a spall takes 1.6 times as long. Common practice,
 * no source.
 */
const cracked = { set: { crack_length: 60, spall_count: 4, spall_area: 2, finance_share: 0 } };
const [flake, solid] = [priced('flake-full-broadcast', cracked), priced('solid-colour', cracked)];
const onlySkimmed = ['skim_cracks', 'shave_again', 'prime_spots'];

describe('a slab with 60 ft of cracks and 4 spalls', () => {
  it('has its cracks filled and shaved under both: 2.4 h and 1 h', () => {
    for (const floor of [flake, solid]) {
      expect(floor.number('tasks.fill_cracks.task_hours')).toBeCloseTo(2.4, 12);
      expect(floor.number('tasks.shave_cracks.task_hours')).toBeCloseTo(1, 12);
    }
  });

  it('has them skimmed, shaved again and primed under solid colour alone: 3 h, 1 h and 0.75 h', () => {
    const hours = (floor: typeof flake) => onlySkimmed.map((task) => floor.number(`tasks.${task}.task_hours`));
    expect(hours(flake)).toEqual([0, 0, 0]);
    expect(hours(solid)).toEqual([3, 1, 0.75]);
  });

  it('takes 1 h of patching under flake and 1.6 h under solid colour', () => {
    expect(flake.number('tasks.patch_spalls.task_hours')).toBeCloseTo(1, 12);
    expect(solid.number('tasks.patch_spalls.task_hours')).toBeCloseTo(1.6, 12);
  });

  it('takes skimming mix over the cracks under solid colour alone', () => {
    expect(flake.number('repairs.crack_skim.mixed_gallons')).toBe(0);
    // 60 ft by 4 in, 1/32 in deep, 15 % waste: 20 x 144 / 32 / 231 x 1.15.
    expect(solid.number('repairs.crack_skim.mixed_gallons')).toBeCloseTo(0.44805, 5);
  });

  it('is ground finer under solid colour, 1.2 times the hours', () => {
    const ratio = solid.number('tasks.grind.task_hours') / flake.number('tasks.grind.task_hours');
    expect(ratio).toBeCloseTo(1.2, 12);
  });

  it('sells more crack and more patches dearer under solid colour', () => {
    for (const price of ['crack_foot_price', 'spall_price'])
      expect(solid.number(price), price).toBeGreaterThan(flake.number(price));
    expect(solid.number('joint_foot_price')).toBe(flake.number('joint_foot_price'));
  });

  it('tells the customer what becomes of the cracks, and prices more of them', () => {
    expect(flake.said('your_cracks')).toBe('Filled, not seen.');
    expect(solid.said('your_cracks')).toBe('Filled and skimmed; you may still see them.');
    for (const floor of [flake, solid])
      expect(floor.said('crack_allowance')).toContain(`$${floor.number('crack_foot_price')} a foot`);
    // Why a foot is $9 here and $15 there stands beside it.
    expect([flake.number('crack_foot_price'), solid.number('crack_foot_price')]).toEqual([9, 15]);
    expect(flake.said('cracks_shaved')).toBe('Each is filled and ground flush, and not seen under the flake.');
    expect(flake.said('cracks_skimmed')).toBeUndefined();
    expect(solid.said('cracks_skimmed')).toBe(
      'Each is filled, skimmed and ground again, more work than under full flake, and may still be seen under one colour.',
    );
    expect(solid.said('cracks_shaved')).toBeUndefined();
    expect(flake.said('spot_repair')).not.toBe(solid.said('spot_repair'));
  });

  it('costs solid colour more than flake for each crack: its repairs are the dearer part', () => {
    const clean = { set: { ...cracked.set, crack_length: 0, spall_count: 0, spall_area: 0 } };
    const repairs = (system: string, floor: typeof flake): number =>
      floor.number('direct_cost') - priced(system, clean).number('direct_cost');
    expect(repairs('solid-colour', solid)).toBeGreaterThan(repairs('flake-full-broadcast', flake));
  });
});

describe('solid colour without its wear coat', () => {
  it('says that it is a utility floor, and no other time', () => {
    expect(solid.said('utility_grade')).toBeUndefined();
    const utility = priced('solid-colour', { set: { ...cracked.set, cars_park: 0 } });
    expect(utility.said('utility_grade')).toContain('Utility grade');
    expect(utility.said('utility_term_no_cars')).toBe('No clear wear coat: a utility floor.');
    expect(utility.said('wet_grip_utility')).toContain('Smooth');
    expect(utility.said('wet_grip')).toBeUndefined();
  });
});
