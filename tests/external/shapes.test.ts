import { polygonArea, polygonLength } from 'd3-polygon';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quicklyPriced, shippedSystems } from '../helpers/priced-floor.ts';
import { printedSeed } from '../helpers/random-seed.ts';

const [system = ''] = shippedSystems;

interface Measured {
  readonly area: number;
  readonly edge: number;
}

type Cells = Readonly<Record<string, number | string>>;

/** The area and the edge of one area of the shipped floor sheet. */
function measured(cells: Cells, corners: readonly (readonly [number, number])[] = []): Measured {
  const rows = {
    areas: [{ place: 'floor', ...cells }],
    corners: corners.map(([across, along]) => ({ of_area: 1, across, along })),
  };
  const floor = quicklyPriced(system, { rows });
  return { area: floor.number('floor_area'), edge: floor.number('edge_length') };
}

// Standard mathematics; the numbers worked apart from this program.
describe('areas of the floor sheet', () => {
  it('an L of 24 × 22 ft less 8 × 8 ft has 464 ft² and 92 ft of edge', () => {
    expect(measured({ shape: 'l_shape', length: 24, width: 22, cut_length: 8, cut_width: 8 })).toEqual({
      area: 464,
      edge: 92,
    });
  });

  it('a triangle of 13.5, 17.25 and 20 ft has 114.7151 ft² (Heron)', () => {
    const { area, edge } = measured({ shape: 'triangle', length: 13.5, width: 17.25, third_side: 20 });
    expect(area).toBeCloseTo(114.7151, 4);
    expect(edge).toBe(50.75);
  });

  it('parallel sides of 18 and 24 ft, 11.5 ft apart, hold 241.5 ft²', () => {
    const { area, edge } = measured({ shape: 'trapezoid', length: 18, third_side: 24, width: 11.5 });
    expect(area).toBe(241.5);
    expect(edge).toBeCloseTo(18 + 24 + 11.5 + Math.hypot(11.5, 6), 9);
  });

  it('a round area 7.5 ft wide has 44.17865 ft²', () => {
    const { area, edge } = measured({ shape: 'circle', length: 7.5 });
    expect(area).toBeCloseTo(44.17865, 5);
    expect(edge).toBeCloseTo(Math.PI * 7.5, 9);
  });

  it('five corners hold 387.5625 ft² and 77.0018 ft of edge (shoelace)', () => {
    const { area, edge } = measured({ shape: 'corners' }, [
      [0, 0],
      [21.5, 0],
      [23, 12.25],
      [10, 19.75],
      [0, 18],
    ]);
    expect(area).toBeCloseTo(387.5625, 9);
    expect(edge).toBeCloseTo(77.0018, 4);
  });

  it('what is left out is taken from the area, not from the edge', () => {
    expect(measured({ shape: 'rectangle', length: 24, width: 22, left_out: 28 })).toEqual({ area: 500, edge: 92 });
  });

  it('agree with d3-polygon on random simple polygons, drawn either way round', () => {
    const seed = printedSeed('shapes');
    const star = fc
      .array(fc.tuple(fc.double({ min: 0.2, max: 1, noNaN: true }), fc.double({ min: 1, max: 40, noNaN: true })), {
        minLength: 3,
        maxLength: 12,
      })
      .map((steps) => {
        const turn = steps.reduce((sum, [step]) => sum + step, 0);
        let angle = 0;
        return steps.map(([step, radius]): [number, number] => {
          angle += (step / turn) * 2 * Math.PI;
          return [50 + radius * Math.cos(angle), 50 + radius * Math.sin(angle)];
        });
      });
    fc.assert(
      fc.property(star, fc.boolean(), (corners, reversed) => {
        const drawn = reversed ? corners.toReversed() : corners;
        const { area, edge } = measured({ shape: 'corners' }, drawn);
        expect(area).toBeCloseTo(Math.abs(polygonArea(drawn)), 6);
        expect(edge).toBeCloseTo(polygonLength(drawn), 6);
      }),
      { seed, numRuns: 60 },
    );
  });

  it('of corners are told apart: two areas by their corners add up', () => {
    const floor = quicklyPriced(system, {
      rows: {
        areas: [
          { place: 'one', shape: 'corners' },
          { place: 'two', shape: 'corners' },
        ],
        corners: [
          [1, 0, 0],
          [1, 10, 0],
          [1, 10, 10],
          [2, 0, 0],
          [2, 0, 6],
          [2, 8, 0],
        ].map(([of_area, across, along]) => ({
          of_area: of_area ?? 0,
          across: across ?? 0,
          along: along ?? 0,
        })),
      },
    });
    expect(floor.number('floor_area')).toBe(50 + 24);
  });
});
