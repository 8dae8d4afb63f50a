/** A corner of an outline, in feet from one point: across to the right, along away from whoever stands at it. */
export interface OutlineCorner {
  readonly across: number;
  readonly along: number;
}

/** Two sides of an outline that may not meet as they do. Side n runs from corner n to the next, counted from 1. */
export interface OutlineFault {
  readonly kind: 'crosses' | 'touches' | 'foldsBack';
  readonly first: number;
  readonly second: number;
}

interface Side {
  readonly number: number;
  readonly from: OutlineCorner;
  readonly to: OutlineCorner;
}

/** Places nearer than this are one, in feet: a hundredth of an inch, which no tape tells apart. */
const onePlace = 0.01 / 12;

/**
 * The first two sides of a closed outline that cross, touch, or lie on each other, in the order of their numbers;
 * undefined when none do. A corner given twice running makes no fault of its own (`repeatedCorner` tells it).
 *
 * @example outlineFault([{0, 0}, {4, 4}, {4, 0}, {0, 4}]) is { kind: 'crosses', first: 1, second: 3 }
 */
export function outlineFault(corners: readonly OutlineCorner[]): OutlineFault | undefined {
  const sides = sidesOf(corners);
  for (const [at, one] of sides.entries()) {
    for (const [other, two] of sides.entries()) {
      if (other <= at) continue;
      const isLast = at === 0 && other === sides.length - 1;
      const kind = other === at + 1 ? foldOf(one, two) : isLast ? foldOf(two, one) : meeting(one, two);
      if (kind !== undefined) return { kind, first: one.number, second: two.number };
    }
  }
  return undefined;
}

/** The first corner, counted from 1, that stands where the next one does; undefined when none does. */
export function repeatedCorner(corners: readonly OutlineCorner[]): number | undefined {
  const at = corners.findIndex((corner, index) => {
    const next = corners[(index + 1) % corners.length];
    return corners.length > 1 && next !== undefined && isOnePlace(corner, next);
  });
  return at < 0 ? undefined : at + 1;
}

/** Of corners in one place running, the last begins the side. */
function sidesOf(corners: readonly OutlineCorner[]): Side[] {
  const sides = corners.flatMap((from, at): Side[] => {
    const to = corners[(at + 1) % corners.length];
    return to === undefined || isOnePlace(from, to) ? [] : [{ number: at + 1, from, to }];
  });
  return sides.length < 2 ? [] : sides;
}

function isOnePlace(a: OutlineCorner, b: OutlineCorner): boolean {
  return Math.hypot(a.across - b.across, a.along - b.along) < onePlace;
}

/** A side that begins where another ends may only leave it there. */
function foldOf(before: Side, after: Side): 'foldsBack' | undefined {
  return liesOn(after.to, before) || liesOn(before.from, after) ? 'foldsBack' : undefined;
}

function meeting(one: Side, two: Side): 'crosses' | 'touches' | undefined {
  if (liesOn(two.from, one) || liesOn(two.to, one) || liesOn(one.from, two) || liesOn(one.to, two)) return 'touches';
  return areApart(two.from, two.to, one) && areApart(one.from, one.to, two) ? 'crosses' : undefined;
}

/** Whether two places are on different sides of the line through a side. */
function areApart(a: OutlineCorner, b: OutlineCorner, side: Side): boolean {
  return turn(side, a) > 0 !== turn(side, b) > 0;
}

/** Twice the area of the triangle of a side and a place: above 0 when the place is to the left. */
function turn({ from, to }: Side, place: OutlineCorner): number {
  return (
    (to.across - from.across) * (place.along - from.along) - (to.along - from.along) * (place.across - from.across)
  );
}

function liesOn(place: OutlineCorner, { from, to }: Side): boolean {
  const [across, along] = [to.across - from.across, to.along - from.along];
  const length = across * across + along * along;
  const share = ((place.across - from.across) * across + (place.along - from.along) * along) / length;
  const nearest = Math.min(1, Math.max(0, share));
  return isOnePlace(place, { across: from.across + nearest * across, along: from.along + nearest * along });
}
