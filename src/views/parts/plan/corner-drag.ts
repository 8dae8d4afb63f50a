import { type OutlineCorner, type OutlineFault, outlineFault, repeatedCorner } from '../../../trade/crossing-sides.ts';
import { roundTo } from '../../../units/decimal-rounding.ts';
import type { MeasuredArea, MeasuredCorner, MeasuredFloor } from './measured-floor.ts';
import { outlineArea } from './plan-geometry.ts';
import type { PlanMeasure } from './plan-measure.ts';

/** A corner under way: nothing of it is in the quote yet. */
export interface CornerDrag {
  readonly area: string;
  readonly corner: string;
  readonly to: OutlineCorner;
}

/** The floor as it would be with the corner there. */
export function floorWith(floor: MeasuredFloor, drag: CornerDrag | undefined): MeasuredFloor {
  if (drag === undefined) return floor;
  return { ...floor, areas: floor.areas.map((area) => (area.row === drag.area ? areaWith(area, drag) : area)) };
}

/** What is left out of the area stays left out. Sides that cross hold no area. */
function areaWith(area: MeasuredArea, drag: CornerDrag): MeasuredArea {
  const corners = cornersWith(area, drag);
  if (outlineFault(corners) !== undefined) return { ...area, corners, area: undefined };
  return { ...area, corners, area: Math.max(0, outlineArea(corners) - area.leftOut) };
}

function cornersWith({ corners }: MeasuredArea, { corner, to }: CornerDrag): MeasuredCorner[] {
  return corners.map((each) => (each.row === corner ? { ...each, ...to } : each));
}

/**
 * A place to the nearest step of a dragged corner, or in line with the corner before or after where that is nearer: walls
 * are mostly square to each other.
 */
export function snapped(place: OutlineCorner, area: MeasuredArea, corner: string, measure: PlanMeasure): OutlineCorner {
  const at = area.corners.findIndex(({ row }) => row === corner);
  const beside = [area.corners.at(at - 1), area.corners[(at + 1) % area.corners.length]];
  const nearest = (column: 'across' | 'along'): number => {
    const line = beside.find((each) => each && Math.abs(each[column] - place[column]) <= measure.drag / 2);
    return line?.[column] ?? toStep(place[column], measure.drag);
  };
  return { across: nearest('across'), along: nearest('along') };
}

/** A corner's place after an arrow key: on whole steps, so that ten inches are ten presses. */
export function stepped(place: OutlineCorner, key: string, step: number, fine: number): OutlineCorner | undefined {
  switch (key) {
    case 'ArrowRight':
      return { ...place, across: toStep(place.across + step, fine) };
    case 'ArrowLeft':
      return { ...place, across: toStep(place.across - step, fine) };
    case 'ArrowUp':
      return { ...place, along: toStep(place.along + step, fine) };
    case 'ArrowDown':
      return { ...place, along: toStep(place.along - step, fine) };
    default:
      return undefined;
  }
}

function toStep(feet: number, step: number): number {
  // 14 ft 1 in is 169 / 12, the number that typing it gives.
  const perFoot = roundTo(1 / step, 6);
  return Number.isInteger(perFoot) ? roundTo(feet * perFoot, 0) / perFoot : roundTo(feet / step, 0) * step;
}

/** The first fault of an area's outline that `drag` would make. An outline with a fault already may be moved to mend it. */
export function dragFault(area: MeasuredArea, drag: CornerDrag): OutlineFault | undefined {
  return outlineFault(area.corners) === undefined ? outlineFault(cornersWith(area, drag)) : undefined;
}

/** Why a corner cannot go where it was taken; undefined when it can. */
export function dragRefusal(area: MeasuredArea, drag: CornerDrag): string | undefined {
  const fault = dragFault(area, drag);
  const stays = 'the corner stays where it was';
  if (fault !== undefined) return `${faultWords(fault)}; ${stays}.`;
  const twice = repeatedCorner(area.corners) === undefined ? repeatedCorner(cornersWith(area, drag)) : undefined;
  if (twice === undefined) return undefined;
  return `Corners ${twice} and ${(twice % area.corners.length) + 1} would be in one place; ${stays}.`;
}

/** Why a corner cannot be taken away; undefined when it can. */
export function removalRefusal(area: MeasuredArea, corner: MeasuredCorner): string | undefined {
  if (area.corners.length <= 3) return 'An area keeps at least three corners.';
  const left = area.corners.filter((each) => each !== corner);
  const fault = outlineFault(area.corners) === undefined ? outlineFault(left) : undefined;
  return fault && `Without it ${faultWords(fault).replace('Side', 'side')}, counted anew; the corner stays.`;
}

function faultWords({ kind, first, second }: OutlineFault): string {
  switch (kind) {
    case 'crosses':
      return `Side ${first} would cross side ${second}`;
    case 'touches':
      return `Side ${first} would touch side ${second}`;
    case 'foldsBack':
      return `Side ${first} and side ${second} would lie on each other`;
    default:
      return kind satisfies never;
  }
}
