import { polygonArea, polygonLength } from 'd3-polygon';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RowFile } from '../../src/template/line-schema.ts';
import { readTyped } from '../../src/units/typed-number.ts';
import { one, parseUnit } from '../../src/units/unit.ts';
import { priced, quicklyPriced } from '../helpers/priced-floor.ts';
import { printedSeed } from '../helpers/random-seed.ts';

// Second opinion: d3-polygon. The two named outlines are derived by the shoelace formula.
const seed = printedSeed('areas.property');

type Point = [number, number];
interface Strip {
  readonly width: number;
  readonly height: number;
}

const eighths = (most: number) => fc.integer({ min: 8, max: most * 8 }).map((count) => count / 8);
const strips = fc.array(fc.record({ width: eighths(30), height: eighths(40) }), { minLength: 1, maxLength: 6 });

/** Strips side by side, all standing on one wall: an L, T, U or stair from corner to corner. */
function outlineOf(all: readonly Strip[]): Point[] {
  let x = 0;
  const top = all.flatMap(({ width, height }): Point[] => {
    const left = x;
    x += width;
    return [
      [left, height],
      [x, height],
    ];
  });
  return [[0, 0], ...top, [x, 0]];
}

/** One row a strip; each of two neighbours says what they share. */
function rowsOf(all: readonly Strip[]): RowFile[] {
  return all.map(({ width, height }, at) => ({
    place: `strip_${at + 1}`,
    shape: 'rectangle',
    length: width,
    width: height,
    joined: Math.min(height, all[at - 1]?.height ?? 0) + Math.min(height, all[at + 1]?.height ?? 0),
  }));
}

function typedFeet(text: string): number {
  const unit = parseUnit('ft');
  const read = readTyped(text, unit.kind === 'unit' ? unit.unit : one);
  return read.kind === 'number' ? read.value : Number.NaN;
}

describe('areas and edges against d3-polygon', () => {
  it('agree for random rectangles, row by row', () => {
    fc.assert(
      fc.property(eighths(300), eighths(300), (length, width) => {
        const floor = quicklyPriced('solid-colour', { set: { 'areas.bay.length': length, 'areas.bay.width': width } });
        const outline = outlineOf([{ width, height: length }]);
        expect(floor.number('areas.bay.area')).toBeCloseTo(Math.abs(polygonArea(outline)), 8);
        expect(floor.number('areas.bay.perimeter')).toBeCloseTo(polygonLength(outline), 8);
      }),
      { seed, numRuns: 100 },
    );
  });

  it('agree for random stepped floors taken as rows with shared sides', () => {
    fc.assert(
      fc.property(strips, (all) => {
        const floor = quicklyPriced('flake-full-broadcast', { rows: { areas: rowsOf(all) } });
        const outline = outlineOf(all);
        expect(floor.number('floor_area')).toBeCloseTo(Math.abs(polygonArea(outline)), 8);
        expect(floor.number('edge_length')).toBeCloseTo(polygonLength(outline), 8);
      }),
      { seed, numRuns: 200 },
    );
  });

  it('agree for the L of 464 ft2 and 92 ft, measured as 24 x 14 and 16 x 8 with 16 ft shared', () => {
    const outline: Point[] = [
      [0, 0],
      [24, 0],
      [24, 14],
      [16, 14],
      [16, 22],
      [0, 22],
    ];
    const floor = priced('flake-full-broadcast', {
      rows: {
        areas: [
          { place: 'front', length: 24, width: 14, joined: 16 },
          { place: 'back', length: 16, width: 8, joined: 16 },
        ],
      },
    });
    expect(Math.abs(polygonArea(outline))).toBe(464);
    expect([floor.number('floor_area'), floor.number('edge_length')]).toEqual([464, 92]);
  });

  it('agree for a five-sided floor of 387.5625 ft2 and 77.0018 ft that is entered as known', () => {
    const outline: Point[] = [
      [0, 0],
      [21.5, 0],
      [23, 12.25],
      [10, 19.75],
      [0, 18],
    ];
    const known = { known_area: Math.abs(polygonArea(outline)), known_edge: polygonLength(outline) };
    const floor = priced('flake-full-broadcast', { rows: { areas: [{ place: 'odd', shape: 'known', ...known }] } });
    expect(floor.number('floor_area')).toBeCloseTo(387.5625, 10);
    expect(floor.number('edge_length')).toBeCloseTo(77.0018, 5);
  });

  it('reads 22\' 7 1/2" x 24\' 3 1/4" as 549.1276 ft2', () => {
    // Derived: 22.625 x 24.27083.
    const set = { 'areas.bay.length': typedFeet('22\' 7 1/2"'), 'areas.bay.width': typedFeet('24\' 3 1/4"') };
    expect(priced('flake-full-broadcast', { set }).number('floor_area')).toBeCloseTo(549.1276, 4);
  });

  it('takes the wall without the door, 92 - 16 ft by 4 in, as 25.33333 ft2 of stem wall', () => {
    // Derived.
    const set = { stem_wall_length: 92 - 16, stem_wall_height: 4 };
    const floor = priced('flake-full-broadcast', { set });
    expect(floor.number('stem_wall_area')).toBeCloseTo(25.33333, 5);
    expect(floor.number('surface_area')).toBeCloseTo(528 + 25.33333, 5);
  });
});
