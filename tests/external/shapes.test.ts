import { polygonArea, polygonLength } from 'd3-polygon';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quicklyPriced } from '../helpers/priced-floor.ts';
import { printedSeed } from '../helpers/random-seed.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';

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

  it('a bow of radius 10 ft that goes out 3 ft holds 29.54988 ft² (circular segment)', () => {
    // Its straight side: a chord 7 ft from the middle of the circle.
    const { area, edge } = measured({ shape: 'segment', length: 2 * Math.sqrt(10 ** 2 - 7 ** 2), width: 3 });
    expect(area).toBeCloseTo(29.54988, 5);
    // The arc is 10 ft × 2 × 45.5730° = 15.907977 ft, the chord 14.282857 ft.
    expect(edge).toBeCloseTo(30.190834, 5);
  });

  it('a bow as deep as its half width is half a round area, a deeper one more, and all but its corner a round one', () => {
    expect(measured({ shape: 'segment', length: 7.5, width: 3.75 }).area).toBeCloseTo(44.17865 / 2, 5);
    // The rest of the circle of radius 10 ft: 314.15927 - 29.54988.
    const rest = measured({ shape: 'segment', length: 2 * Math.sqrt(10 ** 2 - 7 ** 2), width: 17 });
    expect(rest.area).toBeCloseTo(284.60939, 4);
    expect(measured({ shape: 'segment', length: 0.0001, width: 7.5 }).area).toBeCloseTo(44.17865, 3);
  });

  it('a bow without a height is stopped, and no number of it fails', () => {
    for (const width of [0, 3])
      for (const length of [0, 14]) {
        const bow = { place: 'bow', shape: 'segment', length, width };
        const floor = quicklyPriced(system, { rows: { areas: [{ place: 'bay', length: 24, width: 22 }, bow] } });
        expect(floor.number('floor_area')).toBeGreaterThanOrEqual(528);
        expect(floor.value('areas.2.bow_given')).toBe(length > 0 && width > 0);
      }
  });

  it('a bay of 24 × 22 ft with a bow on its 10 ft window has one edge round both', () => {
    const areas = [
      { place: 'bay', length: 24, width: 22, joined: 10 },
      { place: 'bow', shape: 'segment', length: 10, width: 2, joined: 10 },
    ];
    const floor = quicklyPriced(system, { rows: { areas } });
    // Radius 7.25 ft, half angle 43.60282°: the arc is 11.034685 ft, the segment 13.750733 ft².
    expect(floor.number('edge_length')).toBeCloseTo(92 - 10 + 11.034685, 5);
    expect(floor.number('floor_area')).toBeCloseTo(528 + 13.750733, 5);
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

  it('less is left out than there is: 30 ft² of 24 is stopped, and the floor is not less than nothing', () => {
    const rows = {
      areas: [
        { place: 'bay', length: 24, width: 22 },
        { place: 'nook', length: 6, width: 4, left_out: 30 },
      ],
    };
    const floor = quicklyPriced(system, { rows });
    expect(floor.number('floor_area')).toBe(528);
    expect([1, 2].map((row) => floor.value(`areas.${row}.left_out_fits`))).toEqual([true, false]);
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
