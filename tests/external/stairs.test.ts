import { describe, expect, it } from 'vitest';
import type { RowFile } from '../../src/template/line-schema.ts';
import type { Given } from '../helpers/given-floor.ts';
import { type PricedFloor, priced, quicklyPriced } from '../helpers/priced-floor.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';

const flake = 'flake-full-broadcast';

// The stair is a worked example: 13 risers of 7.5 in and 12 treads of 10.5 in, 3.5 ft wide. Derived.
const stair = { risers: 13, riser_height: 7.5, treads: 12, tread_depth: 10.5, width: 3.5 };

const withRows = (rows: NonNullable<Given['rows']>, set: NonNullable<Given['set']> = {}): PricedFloor =>
  quicklyPriced(flake, { rows, set });

describe('a stair of 13 risers and 12 treads, 3.5 ft wide', () => {
  const basement = priced(flake, { rows: { steps: [stair] } });

  it('has 28.4375 ft2 of riser, 36.75 ft2 of tread and 42 ft of nosing', () => {
    expect(basement.number('steps.1.riser_area')).toBeCloseTo(28.4375, 9);
    expect(basement.number('steps.1.tread_area')).toBeCloseTo(36.75, 9);
    expect(basement.number('nosing_length')).toBeCloseTo(42, 9);
  });

  it('is coated, 65.1875 ft2 of it, and is no floor', () => {
    expect(basement.number('step_area')).toBeCloseTo(65.1875, 9);
    expect(basement.number('floor_area')).toBe(528);
    expect(basement.number('surface_area')).toBeCloseTo(528 + 65.1875, 9);
  });

  it('takes one person 8 h 40 min, at 1.5 steps an hour (common practice, no source)', () => {
    expect(basement.number('step_count')).toBe(13);
    expect(basement.number('tasks.steps.task_hours')).toBeCloseTo(8 + 40 / 60, 9);
  });

  it('is begun by one and done by two once the grinding is, so that nobody is paid to stand by', () => {
    const floor = priced(flake, { rows: { steps: [stair] }, set: { 'areas.bay.length': 46, 'areas.bay.width': 25 } });
    const steps = (column: string): number => floor.number(`tasks.steps.${column}`);
    const alone = floor.number('tasks.grind.finish') - steps('start');
    expect(alone).toBeGreaterThan(0);
    expect(steps('elapsed')).toBeCloseTo(alone + (steps('task_hours') - alone) / 2, 9);
    // Edges and cracks are one person’s work: the hours of the fact stay.
    expect(floor.number('tasks.edge_grind.elapsed')).toBeCloseTo(142 / 35, 9);
  });

  it('of two steps is done by one person while the floor is ground', () => {
    const set = { 'areas.bay.length': 46, 'areas.bay.width': 25, grinder: 'walk_behind' };
    const floor = priced(flake, { rows: { steps: [{ ...stair, risers: 2, treads: 2 }] }, set });
    expect(floor.number('tasks.steps.elapsed')).toBeCloseTo(2 / 1.5, 9);
  });

  it('takes three to five times the labour hours of as much floor (common practice, no source)', () => {
    const bare = priced(flake);
    const perFoot = bare.number('person_hours') / bare.number('floor_area');
    const times = basement.number('tasks.steps.task_hours') / (65.1875 * perFoot);
    expect(times).toBeGreaterThan(3);
    expect(times).toBeLessThan(5);
  });

  it.each(shippedSystems)('costs more with %s, or is none of a job in spots', (system) => {
    const [bare, built] = [priced(system), priced(system, { rows: { steps: [stair] } })];
    const dearer = built.number('direct_cost') > bare.number('direct_cost');
    expect(dearer).toBe(bare.value('extent') === 'whole_floor');
  });

  it('is neither coated nor worked at when it is not included', () => {
    const [bare, without] = [withRows({}), withRows({ steps: [{ ...stair, include: 0 }] })];
    for (const line of ['surface_area', 'direct_cost', 'price', 'person_hours'])
      expect(without.number(line), line).toBe(bare.number(line));
  });

  it('with 10 treads is cautioned: two fewer than risers less one', () => {
    const verdicts = [12, 13, 14, 10].map((treads) => withRows({ steps: [{ ...stair, treads }] }));
    expect(verdicts.map((floor) => floor.value('steps.1.treads_fit'))).toEqual([true, true, true, false]);
  });

  it('without a width is stopped', () => {
    expect(withRows({ steps: [{ ...stair, width: 0 }] }).value('steps.1.flight_measured')).toBe(false);
  });
});

describe('a door', () => {
  it('of 16 ft, coated 6 in past, adds 8 ft2 of floor and 0.3 h for its seal (common practice, no source)', () => {
    const floor = withRows({ openings: [{ width: 16, lip: 6 }] });
    expect(floor.number('floor_area')).toBe(536);
    expect(floor.number('surface_area')).toBe(536);
    expect(floor.number('price_per_sqft')).toBeCloseTo(floor.number('price') / 536, 12);
    expect(floor.number('tasks.obstacles.task_hours')).toBeCloseTo(0.3, 12);
  });

  it('with the coating stopping inside changes nothing', () => {
    const [bare, door] = [withRows({}), withRows({ openings: [{ width: 16, lip: 0 }] })];
    for (const line of ['floor_area', 'edge_length', 'direct_cost', 'price'])
      expect(door.number(line), line).toBe(bare.number(line));
  });

  it('of 16 ft and 76 ft of stem wall are all of 92 ft of edge; 77 ft of wall is cautioned', () => {
    const openings = [{ width: 16 }];
    expect(withRows({ openings }, { stem_wall_length: 76 }).check('stem_walls_fit').verdict).toBe('holds');
    const over = withRows({ openings }, { stem_wall_length: 77 }).check('stem_walls_fit');
    expect(over).toMatchObject({ verdict: 'fails', severity: 'caution' });
    expect(over.says).toContain('77 ft');
  });
});

describe('a curb', () => {
  // Derived: 20 ft of (6 + 4) in; free standing (6 + 6 + 4) in.
  it.each([
    ['against a wall', 1, 16.666667, 1.388889],
    ['that stands free', 2, 26.666667, 2.222222],
  ])('of 20 ft, 6 in high and 4 in wide, %s, has its faces and its top coated', (_, faces, area, hours) => {
    const curb = { length: 20, height: 6, top_width: 4, faces };
    const floor = withRows({ curbs: [curb] });
    expect(floor.number('curb_area')).toBeCloseTo(area, 6);
    expect(floor.number('surface_area')).toBeCloseTo(528 + area, 6);
    // As a stem wall: 18 ft an hour to 8 in across, longer in proportion above that (common practice, no source).
    expect(floor.number('tasks.curbs.task_hours')).toBeCloseTo(hours, 6);
    expect(floor.number('floor_area')).toBe(528);
  });
});

describe('what stands on a floor of 24 x 22 ft', () => {
  const standing = (...obstacles: RowFile[]): PricedFloor => withRows({ obstacles });

  it('is left out from 4 ft2 up, not below (common practice, no source), and its way round is edge', () => {
    const pier = { what: 'pier', around: 8, footprint: 4 };
    const post = { what: 'post', around: 7.8, footprint: 3.8 };
    expect(standing(pier).number('floor_area')).toBe(524);
    expect(standing(post).number('floor_area')).toBe(528);
    expect(standing(pier, { ...post, pieces: 2 }).number('edge_length')).toBeCloseTo(92 + 8 + 15.6, 9);
  });

  it('takes a quarter of an hour each: 3 posts, a drain and a heater stand 1.25 h (common practice, no source)', () => {
    const floor = standing({ pieces: 3 }, { what: 'drain', around: 3 }, { what: 'heater_stand', around: 6 });
    expect(floor.number('tasks.obstacles.task_hours')).toBeCloseTo(1.25, 12);
  });

  it('is stopped when it takes more than the floor, of which then nothing is left', () => {
    const floor = standing({ what: 'pier', pieces: 6, around: 40, footprint: 100 });
    expect(floor.number('floor_area')).toBe(0);
    expect(floor.check('standing_fits')).toMatchObject({ verdict: 'fails', severity: 'stop' });
    expect(floor.check('standing_fits').says).toContain('600 ft²');
    expect(floor.check('floor_measured')).toMatchObject({ verdict: 'fails', absolute: true });
  });

  it('is stopped when its way round cannot hold its footprint: 8 ft round is at most 5.1 ft2', () => {
    const verdicts = [4, 5, 9].map((footprint) =>
      standing({ around: 8, footprint }).value('obstacles.1.footprint_fits'),
    );
    expect(verdicts).toEqual([true, true, false]);
  });
});
