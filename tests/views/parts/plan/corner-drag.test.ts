import { describe, expect, it } from 'vitest';
import {
  dragFault,
  dragRefusal,
  floorWith,
  removalRefusal,
  snapped,
  stepped,
} from '../../../../src/views/parts/plan/corner-drag.ts';
import { planMeasure } from '../../../../src/views/parts/plan/plan-measure.ts';
import { areaByCorners, floorOf } from '../../../helpers/measured-areas.ts';

const us = planMeasure('us');
const l = areaByCorners([0, 0], [24, 0], [24, 14], [16, 14], [16, 22], [0, 22]);
const dragTo = (corner: number, across: number, along: number) => ({
  area: 'bay',
  corner: `c${corner}`,
  to: { across, along },
});

describe('a dragged corner', () => {
  it('snaps to 3 in, and to the wall beside it where that is nearer', () => {
    expect(snapped({ across: 23.93, along: 13.6 }, l, 'c2', us)).toEqual({ across: 24, along: 13.5 });
    const odd = areaByCorners([0, 0], [24, 0], [24.1, 14.07], [0, 14]);
    expect(snapped({ across: 20, along: 14.1 }, odd, 'c4', us)).toEqual({ across: 20, along: 14.07 });
  });

  it('shows the area it would leave, less what is left out', () => {
    const floor = floorOf({ ...l, leftOut: 10 });
    expect(floorWith(floor, dragTo(3, 24, 18)).areas[0]?.area).toBe(464 + 16 - 10);
    expect(floorWith(floor, undefined)).toBe(floor);
  });

  it('shows no area while its sides cross', () => {
    expect(floorWith(floorOf(l), dragTo(4, 20, -5)).areas[0]?.area).toBeUndefined();
  });

  it('does not go where sides would cross, touch or stand in one place, and says which', () => {
    expect(dragRefusal(l, dragTo(4, 20, -5))).toBe('Side 1 would cross side 3; the corner stays where it was.');
    expect(dragRefusal(l, dragTo(4, 20, 0))).toBe('Side 1 would touch side 3; the corner stays where it was.');
    expect(dragRefusal(l, dragTo(4, 24, 14))).toBe(
      'Corners 3 and 4 would be in one place; the corner stays where it was.',
    );
    expect(dragRefusal(l, dragTo(4, 20, 15))).toBeUndefined();
  });

  it('of an outline that crosses already may go anywhere, so that it can be mended', () => {
    const crossed = areaByCorners([0, 0], [20, 22], [20, 0], [0, 22]);
    expect(dragFault(crossed, dragTo(2, 21, 22))).toBeUndefined();
    expect(dragRefusal(crossed, dragTo(2, 21, 22))).toBeUndefined();
  });
});

describe('an arrow key', () => {
  it('moves 1 in across or along, ten presses ten inches to the last digit', () => {
    let place = { across: 14, along: 0 };
    for (let press = 0; press < 10; press += 1) place = stepped(place, 'ArrowRight', us.step, us.step) ?? place;
    expect(place).toEqual({ across: 178 / 12, along: 0 });
    expect(stepped(place, 'ArrowDown', us.longStep, us.step)).toEqual({ across: 178 / 12, along: -1 });
    expect(stepped(place, 'Enter', us.step, us.step)).toBeUndefined();
  });

  it('moves 1 cm in metres', () => {
    const metric = planMeasure('metric');
    const place = stepped({ across: 0, along: 0 }, 'ArrowUp', metric.step, metric.step);
    expect((place?.along ?? 0) * 0.3048).toBeCloseTo(0.01, 9);
  });
});

describe('a corner taken away', () => {
  it('leaves three at least, and no sides that cross', () => {
    const [first = { row: '', across: 0, along: 0 }] = l.corners;
    expect(removalRefusal({ ...l, corners: l.corners.slice(0, 3) }, first)).toBe(
      'An area keeps at least three corners.',
    );
    expect(removalRefusal(l, first)).toBeUndefined();
    // A notch from above, cut deeper than the corner that goes.
    const notched = areaByCorners([0, 0], [10, -6], [20, 0], [20, 20], [10, -3], [0, 20]);
    const [, low = first] = notched.corners;
    expect(removalRefusal(notched, low)).toBe('Without it side 1 would cross side 3, counted anew; the corner stays.');
  });
});
