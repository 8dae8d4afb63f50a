import type { OutlineCorner, OutlineFault } from '../../../trade/crossing-sides.ts';
import type { MeasuredArea } from './measured-floor.ts';
import { barRoom, extentOf, type PlanPlacement, placeAreas, type SheetSize, smallBlock } from './place-areas.ts';
import type { PlanMeasure } from './plan-measure.ts';
import { type AreaOutline, areaOutline, type OutlineSide } from './shape-outline.ts';

/** A plan in pixels, x to the right and y down. */
export interface PlanDrawing {
  readonly placement: PlanPlacement;
  readonly areas: readonly DrawnArea[];
  /** Areas without an outline, each with the reason. */
  readonly notDrawn: readonly { readonly label: string; readonly why: string }[];
  readonly bar: { readonly x: number; readonly y: number; readonly length: number; readonly words: string } | undefined;
}

export interface DrawnArea {
  readonly row: string;
  readonly label: string;
  /** As SVG has them: `x,y x,y …`. */
  readonly points: string;
  readonly corners: readonly Spot[];
  readonly sides: readonly DrawnSide[];
  readonly isTrue: boolean;
  /** Where name and size stand. */
  readonly name: Spot;
  readonly size: string;
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface DrawnSide {
  readonly from: Spot;
  readonly to: Spot;
  readonly words: string;
  readonly at: Spot;
  /** Degrees, so that the words run along the side and are read from below or from the right. */
  readonly turn: number;
  /** Whether there is room for the words; they stand in the list too. */
  readonly hasRoom: boolean;
  /** Whether it is one of two sides that may not meet as they do. */
  readonly isFaulty: boolean;
}

interface Drawing {
  readonly area: MeasuredArea;
  readonly outline: Extract<AreaOutline, { kind: 'drawn' }>;
}

export interface PlanWish {
  readonly size: SheetSize;
  readonly measure: PlanMeasure;
  /** While a corner is dragged the scale stands still. */
  readonly held?: PlanPlacement | undefined;
  readonly faults?: ReadonlyMap<string, OutlineFault>;
}

const letterWidth = 7;
const labelAway = 12;

/** Draws every area to one scale. */
export function drawPlan(areas: readonly MeasuredArea[], wish: PlanWish): PlanDrawing {
  const outlines = areas.map((area) => ({ area, outline: areaOutline(area) }));
  const drawn = outlines.flatMap(({ area, outline }): Drawing[] =>
    outline.kind === 'drawn' ? [{ area, outline }] : [],
  );
  const notDrawn = outlines.flatMap(({ area, outline }) =>
    outline.kind === 'drawn' ? [] : [{ label: area.label, why: outline.why }],
  );
  const placement =
    wish.held ??
    placeAreas(
      drawn.map(({ area, outline }) => ({
        row: area.row,
        places: outline.places,
        byCorners: area.shape === 'corners',
      })),
      wish.size,
    );
  return {
    placement,
    areas: drawn.map((each) => drawnArea(each, placement, wish)),
    notDrawn,
    bar: barOf(placement, wish),
  };
}

/** Where a place of an area stands on the sheet. */
export function spotOf({ across, along }: OutlineCorner, row: string, { scale, origins }: PlanPlacement): Spot {
  const origin = origins.get(row) ?? { x: 0, y: 0 };
  return { x: origin.x + across * scale, y: origin.y - along * scale };
}

/** The place of an area that a spot on the sheet is. */
export function placeAt({ x, y }: Spot, row: string, { scale, origins }: PlanPlacement): OutlineCorner {
  const origin = origins.get(row) ?? { x: 0, y: 0 };
  return { across: (x - origin.x) / scale, along: (origin.y - y) / scale };
}

/** Area in square feet inside an outline whose sides do not cross, whichever way round it is given. */
export function outlineArea(places: readonly OutlineCorner[]): number {
  return Math.abs(signedArea(places));
}

function drawnArea({ area, outline }: Drawing, placement: PlanPlacement, { measure, faults }: PlanWish): DrawnArea {
  const spot = (place: OutlineCorner): Spot => spotOf(place, area.row, placement);
  const fault = faults?.get(area.row);
  const outward = signedArea(outline.places) < 0 ? -1 : 1;
  const corners = outline.places.map(spot);
  return {
    row: area.row,
    label: area.label,
    points: corners.map(({ x, y }) => `${round(x)},${round(y)}`).join(' '),
    corners,
    sides: outline.sides.map((side, at) =>
      drawnSide(
        side,
        spot(side.from),
        spot(side.to),
        outward,
        measure,
        fault?.first === at + 1 || fault?.second === at + 1,
      ),
    ),
    isTrue: outline.isTrue,
    name: nameSpot(outline.places, spot, placement.scale),
    size: area.area === undefined ? '' : measure.area(area.area),
  };
}

function drawnSide(
  side: OutlineSide,
  from: Spot,
  to: Spot,
  outward: number,
  measure: PlanMeasure,
  isFaulty: boolean,
): DrawnSide {
  const words = measure.length(side.feet) + side.words;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.hypot(dx, dy);
  const away = length === 0 ? 0 : (labelAway * outward) / length;
  // y runs down: right of the way taken is outside an outline that is given anticlockwise.
  const at = { x: (from.x + to.x) / 2 - dy * away, y: (from.y + to.y) / 2 + dx * away };
  const degrees = (Math.atan2(dy, dx) * 180) / Math.PI;
  const turn = degrees >= 90 ? degrees - 180 : degrees < -90 ? degrees + 180 : degrees;
  return { from, to, words, at, turn, hasRoom: length >= words.length * letterWidth + 2 * letterWidth, isFaulty };
}

/** In the middle where there is most room, or below an area too small for it. */
function nameSpot(places: readonly OutlineCorner[], spot: (place: OutlineCorner) => Spot, scale: number): Spot {
  const { left, right, bottom, top } = extentOf(places);
  if (Math.min(right - left, top - bottom) * scale < smallBlock) {
    const below = spot({ across: (left + right) / 2, along: bottom });
    return { x: below.x, y: below.y + 2 * labelAway + 14 };
  }
  return spot(roomiestPlace(places));
}

const trials = 20;

/** Of a grid the place inside an outline that is far from every side, the middle one where a long area has many. */
export function roomiestPlace(places: readonly OutlineCorner[]): OutlineCorner {
  const { left, right, bottom, top } = extentOf(places);
  const middle = { across: (left + right) / 2, along: (bottom + top) / 2 };
  let best = middle;
  let most = Number.NEGATIVE_INFINITY;
  for (let column = 1; column < trials; column += 1) {
    for (let row = 1; row < trials; row += 1) {
      const place = {
        across: left + ((right - left) * column) / trials,
        along: bottom + ((top - bottom) * row) / trials,
      };
      if (!isInside(place, places)) continue;
      const aside = Math.hypot(place.across - middle.across, place.along - middle.along);
      const room = roomAt(place, places) - aside / 20;
      if (room > most) [best, most] = [place, room];
    }
  }
  return best;
}

function isInside({ across, along }: OutlineCorner, places: readonly OutlineCorner[]): boolean {
  return places.reduce((inside, a, at) => {
    const b = places[(at + 1) % places.length] ?? a;
    if (a.along > along === b.along > along) return inside;
    return across < ((b.across - a.across) * (along - a.along)) / (b.along - a.along) + a.across ? !inside : inside;
  }, false);
}

function roomAt(place: OutlineCorner, places: readonly OutlineCorner[]): number {
  return Math.min(
    ...places.map((a, at) => {
      const b = places[(at + 1) % places.length] ?? a;
      const [x, y] = [b.across - a.across, b.along - a.along];
      const share = ((place.across - a.across) * x + (place.along - a.along) * y) / (x * x + y * y || 1);
      const nearest = Math.min(1, Math.max(0, share));
      return Math.hypot(place.across - a.across - nearest * x, place.along - a.along - nearest * y);
    }),
  );
}

/** The longest of the round lengths that takes less than a third of the sheet. */
function barOf({ scale, width, height, origins }: PlanPlacement, { measure }: PlanWish): PlanDrawing['bar'] {
  if (origins.size === 0) return undefined;
  const feet = measure.bars.findLast((length) => length * scale <= width / 3) ?? measure.bars[0] ?? 1;
  return { x: 12, y: height - barRoom / 3, length: feet * scale, words: measure.length(feet) };
}

function signedArea(places: readonly OutlineCorner[]): number {
  return places.reduce((sum, a, at) => {
    const b = places[(at + 1) % places.length] ?? a;
    return sum + (a.across * b.along - b.across * a.along) / 2;
  }, 0);
}

function round(pixels: number): number {
  return Math.round(pixels * 100) / 100;
}
