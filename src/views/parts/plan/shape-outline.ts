import type { OutlineCorner } from '../../../trade/crossing-sides.ts';
import type { MeasuredArea } from './measured-floor.ts';

/** What is drawn of an area: its outline in feet, or why there is none. */
export type AreaOutline =
  | {
      readonly kind: 'drawn';
      /** Round it, either way; arcs are many short lines. */
      readonly places: readonly OutlineCorner[];
      /** Straight sides, in order from the first corner, and what is measured of arcs. */
      readonly sides: readonly OutlineSide[];
      /** Whether its form is the area's, or only stands for its size. */
      readonly isTrue: boolean;
    }
  | { readonly kind: 'not drawn'; readonly why: string };

export interface OutlineSide {
  readonly from: OutlineCorner;
  readonly to: OutlineCorner;
  readonly feet: number;
  /** What follows its length: 'across'. */
  readonly words: string;
}

const arcPieces = 72;

/** The outline of an area by its shape: across to the right, along up. Its first corner is at 0, 0 but for corners given. */
export function areaOutline(area: MeasuredArea): AreaOutline {
  switch (area.shape) {
    case 'rectangle':
      return measured(area, ['length', 'width'], ([a, b]) => polygon([0, 0], [a, 0], [a, b], [0, b]));
    case 'l_shape':
      return measured(area, ['length', 'width', 'cut_length', 'cut_width'], lShape);
    case 'triangle':
      return measured(area, ['length', 'width', 'third_side'], triangle);
    case 'trapezoid':
      return measured(area, ['length', 'width', 'third_side'], ([a, b, c]) => polygon([0, 0], [a, 0], [c, b], [0, b]));
    case 'circle':
      return measured(area, ['length'], ([across]) => round(across));
    case 'segment':
      return measured(area, ['length', 'width'], ([chord, out]) => bow(chord, out));
    case 'corners':
      return byCorners(area.corners);
    case 'known':
      return measured(area, ['known_area'], ([size]) => standIn(size));
    default:
      return area.area === undefined || area.area <= 0 ? notDrawn('its area cannot be worked out') : standIn(area.area);
  }
}

type Numbers = readonly [number, number, number, number];

/** Lengths by their columns; the first one missing, or not more than 0, is why there is no outline. */
function measured(
  { lengths }: MeasuredArea,
  columns: readonly string[],
  draw: (numbers: Numbers) => AreaOutline,
): AreaOutline {
  for (const column of columns) {
    const words = column.replaceAll('_', ' ');
    const value = lengths[column];
    if (value === undefined) return notDrawn(`its ${words} cannot be worked out`);
    if (value <= 0) return notDrawn(`its ${words} is not more than 0`);
  }
  const at = (index: number): number => lengths[columns[index] ?? ''] ?? 0;
  return draw([at(0), at(1), at(2), at(3)]);
}

function lShape([length, width, cutLength, cutWidth]: Numbers): AreaOutline {
  if (cutLength >= length || cutWidth >= width) return notDrawn('the corner cut away is as large as the area');
  const [inner, upper] = [length - cutLength, width - cutWidth];
  return polygon([0, 0], [length, 0], [length, upper], [inner, upper], [inner, width], [0, width]);
}

function triangle([first, second, third]: Numbers): AreaOutline {
  const across = (first * first + third * third - second * second) / (2 * first);
  const square = third * third - across * across;
  if (square <= 0) return notDrawn('its three sides do not meet');
  return polygon([0, 0], [first, 0], [across, Math.sqrt(square)]);
}

function round(across: number): AreaOutline {
  const radius = across / 2;
  const places = arc({ across: radius, along: radius }, radius, 0, 2 * Math.PI).slice(1);
  const side = { from: { across: 0, along: 0 }, to: { across, along: 0 }, feet: across, words: ' across' };
  return { kind: 'drawn', places, sides: [side], isTrue: true };
}

/** A part of a circle by its straight side and how far it goes out, which may be more than half the circle. */
function bow(chord: number, out: number): AreaOutline {
  const radius = ((chord / 2) ** 2 + out ** 2) / (2 * out);
  const begins = Math.atan2(radius - out, chord / 2);
  const places = arc({ across: chord / 2, along: out - radius }, radius, begins, Math.PI - begins);
  const [right, left] = [
    { across: chord, along: 0 },
    { across: 0, along: 0 },
  ];
  const top = { from: { across: chord, along: out }, to: { across: 0, along: out }, feet: out, words: ' out' };
  return { kind: 'drawn', places, sides: [{ from: left, to: right, feet: chord, words: '' }, top], isTrue: true };
}

function arc(middle: OutlineCorner, radius: number, begins: number, ends: number): OutlineCorner[] {
  return Array.from({ length: arcPieces + 1 }, (_, at): OutlineCorner => {
    const angle = begins + (at / arcPieces) * (ends - begins);
    return { across: middle.across + radius * Math.cos(angle), along: middle.along + radius * Math.sin(angle) };
  });
}

function byCorners(corners: readonly OutlineCorner[]): AreaOutline {
  if (corners.length < 3) return notDrawn('fewer than three of its corners are given');
  if (corners.some(({ across, along }) => !Number.isFinite(across + along)))
    return notDrawn('a corner cannot be worked out');
  if (new Set(corners.map(({ across }) => across)).size < 2 || new Set(corners.map(({ along }) => along)).size < 2)
    return notDrawn('all its corners lie on one line');
  return outlineOf(corners.map(({ across, along }) => ({ across, along })));
}

/** A square as large as an area of which only the size is known. */
function standIn(squareFeet: number): AreaOutline {
  const side = Math.sqrt(squareFeet);
  const { places } = outlineOf(placesOf([0, 0], [side, 0], [side, side], [0, side]));
  return { kind: 'drawn', places, sides: [], isTrue: false };
}

type Place = readonly [across: number, along: number];

function placesOf(...places: readonly Place[]): OutlineCorner[] {
  return places.map(([across, along]) => ({ across, along }));
}

function polygon(...places: readonly Place[]): AreaOutline {
  return outlineOf(placesOf(...places));
}

function outlineOf(places: readonly OutlineCorner[]): Extract<AreaOutline, { kind: 'drawn' }> {
  const sides = places.map((from, at): OutlineSide => {
    const to = places[(at + 1) % places.length] ?? from;
    return { from, to, feet: Math.hypot(to.across - from.across, to.along - from.along), words: '' };
  });
  return { kind: 'drawn', places, sides, isTrue: true };
}

function notDrawn(why: string): AreaOutline {
  return { kind: 'not drawn', why };
}
