import { describe, expect, it } from 'vitest';
import { priced } from '../helpers/priced-floor.ts';
import { shippedStack, shippedSystems } from '../helpers/shipped-stacks.ts';

// All of this is common practice, no source: what people who do the work say it takes.
const flake = 'flake-full-broadcast';
/** One grinding pass; others seal in three, or do not grind at all. */
const groundOnce = [flake, 'solid-colour'];
const oneCar = { 'areas.bay.length': 20, 'areas.bay.width': 12 };
const preparation = [
  'grind',
  'edge_grind',
  'stem_wall',
  'fill_cracks',
  'shave_cracks',
  'fill_joints',
  'patch_spalls',
  'skim_pits',
];

describe('a one-car garage of 240 ft2', () => {
  it.each([0, 20])('is prepared with hand tools in 2 to 3 hours of clock, with %d ft of cracks', (cracks) => {
    for (const system of groundOnce) {
      const floor = priced(system, { set: { ...oneCar, grinder: 'hand_tools', crack_length: cracks } });
      expect(floor.value('grinder_used')).toBe('hand_tools');
      const clock = preparation.reduce((sum, task) => sum + floor.number(`tasks.${task}.clock_added`), 0);
      expect(clock).toBeGreaterThanOrEqual(2);
      expect(clock).toBeLessThanOrEqual(3);
    }
  });

  it('is ground by a large planetary grinder in about 25 minutes, and vacuumed in about 10', () => {
    const floor = priced(flake, { set: { ...oneCar, grinder: 'large_planetary' } });
    const grinding = floor.number('tasks.grind.elapsed') * 60;
    const vacuuming = floor.number('tasks.vacuum.elapsed') * 60;
    expect(Math.abs(grinding - 25)).toBeLessThan(2.5);
    expect(Math.abs(vacuuming - 10)).toBeLessThan(2.5);
  });

  it('costs more a square foot than a two-car garage, and that more than a shop floor of 1,200 ft2', () => {
    for (const system of shippedSystems) {
      const at = (length: number, width: number): number =>
        priced(system, { set: { 'areas.bay.length': length, 'areas.bay.width': width } }).number('price_per_sqft');
      const [one, two, shop] = [at(20, 12), at(24, 22), at(40, 30)];
      expect(one).toBeGreaterThan(1.25 * two);
      expect(shop).toBeLessThan(0.9 * two);
    }
  });
});

describe('a one-car garage beside a two-car one', () => {
  it('in full flake costs 1.25 to 1.5 times as much a square foot', () => {
    const at = (length: number, width: number): number =>
      priced(flake, {
        set: { finance_share: 0, 'areas.bay.length': length, 'areas.bay.width': width },
      }).number('price_per_sqft');
    const ratio = at(20, 12) / at(24, 22);
    expect(ratio).toBeGreaterThanOrEqual(1.25);
    expect(ratio).toBeLessThanOrEqual(1.5);
  });
});

describe('patching mix of a resin and a hardener in equal parts', () => {
  const equalParts = [...shippedStack(flake).products.values()].filter(
    ({ kind, fields }) => kind === 'patch_resin' && fields.mix_a === fields.mix_b,
  );

  it('is in the price list, and is sanded after about 45 minutes', () => {
    expect(equalParts.length).toBeGreaterThan(0);
    for (const { fields } of equalParts) expect(Math.abs(Number(fields.sand_after) - 45)).toBeLessThanOrEqual(5);
  });

  it('takes 0.4 to 0.5 of the mixed volume in fibre', () => {
    for (const { product } of equalParts) {
      const set = {
        spall_area: 4,
        'repairs.spalls.resin': product,
        'repairs.spalls.thickener': 'thickener_fibre',
      };
      const floor = priced(flake, { set });
      const [resin, fibre] = [
        floor.number('repairs.spalls.resin_gallons'),
        floor.number('repairs.spalls.thickener_gallons'),
      ];
      // The mixed volume is that of resin and hardener; the loose fibre sinks into it.
      expect(fibre / resin).toBeGreaterThanOrEqual(0.4);
      expect(fibre / resin).toBeLessThanOrEqual(0.5);
      expect(floor.number('buy_volume.thickener_fibre.need')).toBeCloseTo(fibre, 12);
    }
  });
});

describe('the shop rates describe one firm: two-car full flake of 528 ft2', () => {
  // Nothing financed, joints left open, 20 ft of cracks, no stem wall.
  const job = () =>
    priced(flake, {
      set: { finance_share: 0, joint_treatment: 'leave_open', crack_length: 20, stem_wall_length: 0 },
    });

  it.each([
    ['floor_area', 528, 528],
    ['paid_hours', 25, 30],
    ['crew_days', 1.5, 2],
    ['price_per_sqft', 8, 9],
    ['net_margin', 0.12, 0.18],
    ['gross_margin', 0.45, 0.5],
    ['visits', 2, 2],
  ])('has %s from %f to %f', (name, least, most) => {
    const found = job().number(name);
    expect(found).toBeGreaterThanOrEqual(least);
    expect(found).toBeLessThanOrEqual(most);
  });

  it('spends about $1,000 on materials and consumables and about $2,289 on the job in all', () => {
    const found = job();
    const spent = found.number('materials_cost') + found.number('consumables_cost');
    expect(Math.abs(spent / 1000 - 1)).toBeLessThan(0.1);
    expect(Math.abs(found.number('direct_cost') / 2289 - 1)).toBeLessThan(0.05);
    expect(Math.abs(found.number('price') / 4319 - 1)).toBeLessThan(0.05);
  });
});

describe('a system on 528 ft2', () => {
  it.each([
    ['flake-full-broadcast', 'paid_hours', 24, 32],
    ['flake-full-broadcast', 'crew_days', 1.5, 2],
    ['flake-full-broadcast', 'price_per_sqft', 5.5, 9],
    ['flake-fast-one-day', 'paid_hours', 24, 34],
    ['flake-fast-one-day', 'crew_days', 1, 1.5],
    ['flake-fast-one-day', 'visits', 1, 1],
    ['flake-fast-one-day', 'price_per_sqft', 6, 10],
    ['flake-partial', 'paid_hours', 24, 32],
    ['solid-self-levelling', 'paid_hours', 32, 42],
    ['metallic', 'paid_hours', 36, 48],
    ['quartz-double', 'paid_hours', 44, 60],
    ['patio-porch', 'paid_hours', 28, 38],
    ['recoat', 'paid_hours', 12, 18],
    ['repair-only', 'paid_hours', 5, 10],
    ['solid-colour', 'paid_hours', 28, 36],
    ['solid-colour', 'crew_days', 2, 2.5],
    ['solid-colour', 'visits', 2, 3],
    ['solid-colour', 'price_per_sqft', 4.5, 8],
  ])('%s has %s from %f to %f', (system, name, least, most) => {
    const found = priced(system, { set: { finance_share: 0 } }).number(name);
    expect(found).toBeGreaterThanOrEqual(least);
    expect(found).toBeLessThanOrEqual(most);
  });
});
