import { describe, expect, it } from 'vitest';
import { priced } from '../helpers/priced-floor.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';

const system = 'flake-full-broadcast';
const five = ['materials_cost', 'consumables_cost', 'labour_cost', 'equipment_cost', 'travel_cost'] as const;
const bare = priced(system);

/** Equipment of $110 a day of 9 h, charged by the time it is used. */
const hourOfEquipment = 110 / 9;

type Five = Readonly<Partial<Record<(typeof five)[number], number>>>;

/** Two people at $38 an hour; 30 miles at $0.95 a round trip. What each extra adds to the five parts of the job cost. */
const extras: readonly (readonly [name: string, set: Readonly<Record<string, number>>, adds: Five, told: string])[] = [
  [
    'an hour of moving furniture',
    { furniture_hours: 1 },
    { labour_cost: 38, equipment_cost: hourOfEquipment / 2 },
    'furniture_term',
  ],
  [
    'an hour more of masking',
    { masking_hours: 1 },
    { labour_cost: 38, equipment_cost: hourOfEquipment / 2 },
    'masking_term',
  ],
  // 0.3 h by one, and the other waits.
  ['the door seal', { door_seal_off: 1 }, { labour_cost: 22.8, equipment_cost: hourOfEquipment * 0.3 }, 'seal_term'],
  ['two days of heat', { heating_days: 2 }, { equipment_cost: 230, consumables_cost: 80 }, 'heating_term'],
  ['a dump fee of $35', { dump_fee: 35 }, { consumables_cost: 35 }, 'dump_term'],
  // One person half an hour there and an hour on the way; three kits.
  [
    'three moisture tests',
    { moisture_test_wanted: 1 },
    { labour_cost: 57, consumables_cost: 75, travel_cost: 28.5 },
    'moisture_test_term',
  ],
];

describe.each(extras)('%s', (_, set, adds, told) => {
  const floor = priced(system, { set });

  it('is charged in the right part of the job cost, and nowhere else', () => {
    for (const part of five) expect(floor.number(part) - bare.number(part), part).toBeCloseTo(adds[part] ?? 0, 6);
  });

  it('leaves job cost the sum of its five parts', () => {
    expect(floor.number('direct_cost')).toBeCloseTo(
      five.reduce((sum, part) => sum + floor.number(part), 0),
      6,
    );
  });

  it('is named with the price, and only when it is in it', () => {
    expect(bare.said(told)).toBeUndefined();
    expect(floor.said(told)).not.toContain('NaN');
    expect((floor.said(told) ?? '').length).toBeGreaterThan(10);
  });
});

describe('extras', () => {
  it('are named with their amounts', () => {
    const set = { furniture_hours: 3, heating_days: 2, moisture_test_wanted: 1, cove_wanted: 1 };
    const floor = priced(system, { set });
    expect(floor.said('furniture_term')).toContain('3 h');
    expect(floor.said('heating_term')).toContain('2 d');
    expect(floor.said('moisture_test_term')).toContain('3');
    expect(floor.said('cove_term')).toContain('92 ft');
  });

  it('of the moisture test take no crew-day and no visit of the crew', () => {
    const floor = priced(system, { set: { moisture_test_wanted: 1 } });
    for (const line of ['crew_days', 'visits']) expect(floor.number(line)).toBe(bare.number(line));
    expect(floor.number('round_trips')).toBe(bare.number('round_trips') + 1);
  });

  it('sell the moisture test for $150 to 350, as is usual', () => {
    // Common practice, no source.
    const more = priced(system, { set: { moisture_test_wanted: 1 } }).number('list_price') - bare.number('list_price');
    expect(more).toBeGreaterThanOrEqual(150);
    expect(more).toBeLessThanOrEqual(350);
  });

  it('name the second clear, its grit and the edge strip once they are in', () => {
    const set = { 'coats.second_clear.include': 1, 'additions.grit.include': 1, 'extras.door_strip.include': 1 };
    const floor = priced(system, { set });
    for (const told of ['second_clear_term', 'grit_term', 'strip_term']) {
      expect(bare.said(told)).toBeUndefined();
      expect(floor.said(told), told).toBeDefined();
    }
    expect(floor.number('tasks.fit_strips.task_hours')).toBeCloseTo(0.5, 12);
  });

  it('of a second colour take pigment for a fifth of the second coat, and 2 h', () => {
    const floor = priced('solid-colour', { set: { 'tints.accent_colour.include': 1 } });
    expect(floor.number('tints.accent_colour.pieces')).toBeCloseTo((3.28772 * 0.2) / 3, 5);
    expect(floor.number('buy_count.pigment_clay.packs')).toBe(1);
    expect(floor.number('tasks.line_out.task_hours')).toBe(2);
    expect(floor.said('second_colour_term')).toContain('105.6 ft²');
  });

  it.each(shippedSystems)('are all off in %s as shipped', (each) => {
    const floor = priced(each);
    for (const line of ['extras_consumables', 'extras_equipment', 'test_paid_hours', 'cove_length', 'strips_fitted'])
      expect(floor.number(line), line).toBe(0);
  });
});
