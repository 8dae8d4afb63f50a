import { describe, expect, it } from 'vitest';
import type { MeasuredArea } from '../../../../src/views/parts/plan/measured-floor.ts';
import { drawPlan, placeAt, spotOf } from '../../../../src/views/parts/plan/plan-geometry.ts';
import { planMeasure } from '../../../../src/views/parts/plan/plan-measure.ts';
import { areaByCorners, measuredArea } from '../../../helpers/measured-areas.ts';

const bay = measuredArea('rectangle', { length: 24, width: 22 });
const named = (row: string, area: MeasuredArea): MeasuredArea => ({ ...area, row, label: row });
const plan = (areas: readonly MeasuredArea[], width = 600) =>
  drawPlan(areas, { size: { width, mostHeight: 360 }, measure: planMeasure('us') });

/** What an area takes of the sheet, in pixels. */
function boxOf(areas: ReturnType<typeof plan>, row: string) {
  const corners = areas.areas.find((area) => area.row === row)?.corners ?? [];
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

describe('a plan', () => {
  it.each([320, 360, 820, 1440])('of one bay lies within a sheet of %i px, to scale', (width) => {
    const drawing = plan([bay], width);
    const { left, right, top, bottom } = boxOf(drawing, 'bay');
    expect(left).toBeGreaterThanOrEqual(0);
    expect(right).toBeLessThanOrEqual(width);
    expect(top).toBeGreaterThanOrEqual(0);
    expect(bottom).toBeLessThanOrEqual(drawing.placement.height);
    expect((right - left) / (bottom - top)).toBeCloseTo(24 / 22, 9);
    expect(right - left).toBeGreaterThan(180);
  });

  it('has one scale for a bay and its closet, which stand apart', () => {
    const drawing = plan([bay, named('closet', measuredArea('rectangle', { length: 6, width: 3 }))]);
    const [large, small] = [boxOf(drawing, 'bay'), boxOf(drawing, 'closet')];
    expect((large.right - large.left) / (small.right - small.left)).toBeCloseTo(4, 9);
    expect(small.left > large.right || small.top > large.bottom).toBe(true);
  });

  it('of eight areas on a phone grows down until they can be seen', () => {
    const rooms = Array.from({ length: 8 }, (_, at) => named(`room ${at}`, bay));
    const drawing = plan(rooms, 320);
    const { left, right } = boxOf(drawing, 'room 0');
    expect(right - left).toBeGreaterThan(90);
    expect(drawing.placement.height).toBeGreaterThan(360);
    expect(Math.max(...drawing.areas.flatMap(({ corners }) => corners.map(({ y }) => y)))).toBeLessThan(
      drawing.placement.height,
    );
  });

  it('keeps two areas by their corners beside each other where they share a wall', () => {
    const front = named('front', areaByCorners([0, 0], [24, 0], [24, 14], [0, 14]));
    const back = named('back', areaByCorners([0, 14], [16, 14], [16, 22], [0, 22]));
    const drawing = plan([front, back]);
    expect(boxOf(drawing, 'back').bottom).toBeCloseTo(boxOf(drawing, 'front').top, 9);
    expect(boxOf(drawing, 'back').left).toBeCloseTo(boxOf(drawing, 'front').left, 9);
  });

  it('sets areas apart that were each measured from a corner of their own', () => {
    const drawing = plan([
      named('front', areaByCorners([0, 0], [24, 0], [24, 14], [0, 14])),
      named('back', areaByCorners([0, 0], [16, 0], [16, 8], [0, 8])),
    ]);
    const [front, back] = [boxOf(drawing, 'front'), boxOf(drawing, 'back')];
    expect(back.left > front.right || back.top > front.bottom).toBe(true);
  });

  it('has further along up the sheet, and gives back the place of every spot', () => {
    const { placement } = plan([bay]);
    const [near, far] = [
      spotOf({ across: 3, along: 0 }, 'bay', placement),
      spotOf({ across: 3, along: 22 }, 'bay', placement),
    ];
    expect(far.y).toBeLessThan(near.y);
    const { across, along } = placeAt(far, 'bay', placement);
    expect([across.toFixed(9), along.toFixed(9)]).toEqual(['3.000000000', '22.000000000']);
  });

  it('has a scale bar as long as it says', () => {
    const { bar, placement } = plan([bay]);
    const feet = Number(/^\d+/.exec(bar?.words ?? '')?.[0]);
    expect(feet).toBeGreaterThanOrEqual(1);
    expect(bar?.length).toBeCloseTo(feet * placement.scale, 9);
    const metric = drawPlan([bay], { size: { width: 600, mostHeight: 360 }, measure: planMeasure('metric') });
    const metres = Number(/^(\d+) m$/.exec(metric.bar?.words ?? '')?.[1]);
    expect(metric.bar?.length).toBeCloseTo((metres / 0.3048) * metric.placement.scale, 9);
  });

  it('writes each length outside its side, 24 ft below the bay and 22 ft beside it', () => {
    const drawing = plan([bay]);
    const box = boxOf(drawing, 'bay');
    const [below, right, above, left] = drawing.areas[0]?.sides ?? [];
    expect([below?.words, right?.words]).toEqual(["24'", "22'"]);
    expect(below?.at.y).toBeGreaterThan(box.bottom);
    expect(above?.at.y).toBeLessThan(box.top);
    expect(right?.at.x).toBeGreaterThan(box.right);
    expect(left?.at.x).toBeLessThan(box.left);
  });

  it('writes lengths outside a floor given the other way round, too', () => {
    const drawing = plan([areaByCorners([0, 22], [24, 22], [24, 0], [0, 0])]);
    const [above] = drawing.areas[0]?.sides ?? [];
    expect(above?.at.y).toBeLessThan(boxOf(drawing, 'bay').top);
  });

  it('names an area that cannot be drawn, and draws the others', () => {
    const wedge = named('wedge', measuredArea('triangle', { length: 1, width: 9, third_side: 20 }));
    const drawing = plan([wedge, bay]);
    expect(drawing.notDrawn).toEqual([{ label: 'wedge', why: 'its three sides do not meet' }]);
    expect(drawing.areas.map(({ row }) => row)).toEqual(['bay']);
  });
});
