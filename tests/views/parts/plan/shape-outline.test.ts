import { polygonArea, polygonLength } from 'd3-polygon';
import { describe, expect, it } from 'vitest';
import type { MeasuredArea } from '../../../../src/views/parts/plan/measured-floor.ts';
import { roomiestPlace } from '../../../../src/views/parts/plan/plan-geometry.ts';
import { areaOutline } from '../../../../src/views/parts/plan/shape-outline.ts';
import { areaByCorners, measuredArea } from '../../../helpers/measured-areas.ts';

// Second opinion: d3-polygon; the areas and edges are those that the floor sheet is tested with.
function drawn(area: MeasuredArea) {
  const outline = areaOutline(area);
  if (outline.kind === 'not drawn') throw new Error(outline.why);
  const points = outline.places.map(({ across, along }): [number, number] => [across, along]);
  return {
    ...outline,
    area: Math.abs(polygonArea(points)),
    edge: polygonLength(points),
    lengths: outline.sides.map(({ feet }) => feet),
    points,
  };
}

function whyNot(area: MeasuredArea): string {
  const outline = areaOutline(area);
  return outline.kind === 'not drawn' ? outline.why : 'drawn';
}

describe('the outline of', () => {
  it('a bay of 24 × 22 ft is 528 ft² and 92 ft round', () => {
    const bay = drawn(measuredArea('rectangle', { length: 24, width: 22 }));
    expect([bay.area, bay.edge, bay.lengths]).toEqual([528, 92, [24, 22, 24, 22]]);
  });

  it('an L of 24 × 22 ft less 8 × 8 ft has the corners of the L of 464 ft²', () => {
    const l = drawn(measuredArea('l_shape', { length: 24, width: 22, cut_length: 8, cut_width: 8 }));
    expect(l.points).toEqual([
      [0, 0],
      [24, 0],
      [24, 14],
      [16, 14],
      [16, 22],
      [0, 22],
    ]);
    expect([l.area, l.edge]).toEqual([464, 92]);
  });

  it('a triangle of 13.5, 17.25 and 20 ft holds 114.7151 ft², its sides in that order', () => {
    const triangle = drawn(measuredArea('triangle', { length: 13.5, width: 17.25, third_side: 20 }));
    expect(triangle.area).toBeCloseTo(114.7151, 4);
    expect(triangle.lengths.map((feet) => feet.toFixed(9))).toEqual(['13.500000000', '17.250000000', '20.000000000']);
  });

  it('a triangle that leans out past its first side has its third corner left of it', () => {
    const leaning = drawn(measuredArea('triangle', { length: 5, width: 14, third_side: 10 }));
    expect(leaning.points[2]?.[0]).toBeLessThan(0);
    expect(leaning.edge).toBeCloseTo(29, 9);
  });

  it('parallel sides of 18 and 24 ft, 11.5 ft apart, holds 241.5 ft² with one side square', () => {
    const trapezoid = drawn(measuredArea('trapezoid', { length: 18, third_side: 24, width: 11.5 }));
    expect(trapezoid.area).toBe(241.5);
    expect(trapezoid.lengths[3]).toBe(11.5);
  });

  it('a round area 7.5 ft wide is as wide in every direction, and within 0.2 % of 44.17865 ft²', () => {
    const round = drawn(measuredArea('circle', { length: 7.5 }));
    for (const [across, along] of round.points) expect(Math.hypot(across - 3.75, along - 3.75)).toBeCloseTo(3.75, 9);
    expect(round.area / 44.17865).toBeGreaterThan(0.998);
    expect(round.area / 44.17865).toBeLessThan(1);
    expect(round.lengths).toEqual([7.5]);
  });

  it('a bow of 16 ft that goes 4 ft out holds 44.7295 ft²: radius 10 ft, 2 × 53.1301° (derived)', () => {
    const bow = drawn(measuredArea('segment', { length: 16, width: 4 }));
    expect(bow.area).toBeGreaterThan(44.7295 * 0.998);
    expect(bow.area).toBeLessThan(44.7296);
    expect(Math.max(...bow.points.map(([, along]) => along))).toBeCloseTo(4, 9);
    expect(bow.lengths).toEqual([16, 4]);
  });

  it('a bow of half a circle and more goes out past its straight side', () => {
    const half = drawn(measuredArea('segment', { length: 10, width: 5 }));
    expect(half.area / ((Math.PI * 25) / 2)).toBeCloseTo(1, 2);
    const most = drawn(measuredArea('segment', { length: 10, width: 9 }));
    expect(Math.min(...most.points.map(([across]) => across))).toBeLessThan(-0.1);
  });

  it('five corners holds 387.5625 ft² in 77.0018 ft', () => {
    const five = drawn(areaByCorners([0, 0], [21.5, 0], [23, 12.25], [10, 19.75], [0, 18]));
    expect(five.area).toBeCloseTo(387.5625, 9);
    expect(five.edge).toBeCloseTo(77.0018, 4);
  });

  it('an area of 120 ft² whose shape nobody knows is a square of 120 ft² that says so', () => {
    const known = drawn(measuredArea('known', { known_area: 120 }));
    expect(known.area).toBeCloseTo(120, 9);
    expect([known.isTrue, known.lengths]).toEqual([false, []]);
  });

  it('a shape of a later sheet stands in the same way, by its area', () => {
    const later = drawn({ ...measuredArea('oval'), area: 50 });
    expect([later.area.toFixed(9), later.isTrue]).toEqual(['50.000000000', false]);
  });
});

describe('an area is not drawn, and says why', () => {
  it('when a length is missing or 0', () => {
    expect(whyNot(measuredArea('rectangle', { length: 24 }))).toBe('its width cannot be worked out');
    expect(whyNot(measuredArea('triangle', { length: 3, width: 4, third_side: 0 }))).toBe(
      'its third side is not more than 0',
    );
    expect(whyNot(measuredArea('oval'))).toBe('its area cannot be worked out');
  });

  it('when three sides do not meet, or the corner cut away is the whole', () => {
    expect(whyNot(measuredArea('triangle', { length: 3, width: 4, third_side: 8 }))).toBe(
      'its three sides do not meet',
    );
    expect(whyNot(measuredArea('l_shape', { length: 20, width: 20, cut_length: 20, cut_width: 4 }))).toBe(
      'the corner cut away is as large as the area',
    );
  });

  it('with two corners, a corner without a number, or all on one line', () => {
    expect(whyNot(areaByCorners([0, 0], [20, 0]))).toBe('fewer than three of its corners are given');
    expect(whyNot(areaByCorners([0, 0], [20, 0], [20, Number.NaN]))).toBe('a corner cannot be worked out');
    expect(whyNot(areaByCorners([0, 0], [20, 0], [40, 0]))).toBe('all its corners lie on one line');
  });
});

describe('the name of an area stands', () => {
  it('in the middle of a bay, and inside an L whose middle is cut away', () => {
    const bay = drawn(measuredArea('rectangle', { length: 60, width: 20 }));
    expect(roomiestPlace(bay.places)).toEqual({ across: 30, along: 10 });
    const l = drawn(measuredArea('l_shape', { length: 24, width: 24, cut_length: 18, cut_width: 18 }));
    const { across, along } = roomiestPlace(l.places);
    expect(across < 6 || along < 6).toBe(true);
  });
});
