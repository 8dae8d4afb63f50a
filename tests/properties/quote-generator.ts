import fc from 'fast-check';
import type { Given } from '../helpers/given-floor.ts';

/** A number from least to most, to four places as people type them. */
export function between(least: number, most: number): fc.Arbitrary<number> {
  return fc.double({ min: least, max: most, noNaN: true }).map((value) => Math.round(value * 1e4) / 1e4);
}

/** A floor and a firm that could be: what moves quantities, hours and money, each within the limits of its entry. */
const entries: Readonly<Record<string, fc.Arbitrary<number | string>>> = {
  'areas.bay.length': between(8, 80),
  'areas.bay.width': between(8, 60),
  stem_wall_length: fc.constantFrom(0, 30, 70.5),
  crack_length: between(0, 200),
  joint_length: between(0, 200),
  joint_treatment: fc.constantFrom('leave_open', 'fill_flush', 'fill_after'),
  spall_count: fc.integer({ min: 0, max: 12 }),
  spall_area: between(0, 20),
  pitted_area: between(0, 100),
  hardness: fc.constantFrom('medium', 'soft', 'abrasive', 'very_hard'),
  old_surface: fc.constantFrom('none', 'thin_paint', 'peeling_coating', 'overlay'),
  grinder: fc.constantFrom('hand_tools', 'walk_behind', 'large_planetary'),
  repair_finish: fc.constantFrom('shaved', 'skimmed'),
  cars_park: fc.constantFrom(0, 1),
  resin_waste: between(0, 0.3),
  held_up: between(0, 0.5),
  crack_waste: between(0, 0.6),
  patch_waste: between(0, 0.6),
  labour_rate: between(20, 60),
  overhead_rate: between(0, 50),
  day_length: between(7, 11),
  drive_time: between(0, 1.5),
  miles_one_way: between(0, 60),
  commission_rate: between(0, 0.12),
  card_fee: between(0, 0.04),
  card_share: between(0, 1),
  card_fixed_fee: between(0, 5),
  finance_fee: between(0, 0.15),
  finance_share: between(0, 0.5),
  receipts_tax_rate: between(0, 0.02),
  contingency_rate: between(0, 0.1),
  tax_mode: fc.constantFrom('on_purchases', 'on_materials', 'on_price', 'none'),
  sales_tax_rate: between(0, 0.12),
  taxable_share: between(0, 1),
  discount: between(0, 0.15),
  round_to: fc.constantFrom(0.01, 1, 25, 100),
};

export type Entered = NonNullable<Given['set']>;

/** Some of the entries changed, the rest as shipped. */
export const someEntries: fc.Arbitrary<Entered> = fc
  .record(entries, { requiredKeys: [] })
  .map((given) =>
    Object.fromEntries(Object.entries(given).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]]))),
  );
