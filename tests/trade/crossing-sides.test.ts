import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type OutlineCorner, outlineFault, repeatedCorner } from '../../src/trade/crossing-sides.ts';
import { printedSeed } from '../helpers/random-seed.ts';

const corners = (...places: readonly (readonly [number, number])[]): OutlineCorner[] =>
  places.map(([across, along]) => ({ across, along }));

describe('the outline of a floor', () => {
  it('an L of 464 ft² has no sides that cross', () => {
    expect(outlineFault(corners([0, 0], [24, 0], [24, 14], [16, 14], [16, 22], [0, 22]))).toBeUndefined();
  });

  it('corners 2 and 3 of a square taken in the wrong order make side 1 cross side 3', () => {
    expect(outlineFault(corners([0, 0], [20, 20], [20, 0], [0, 20]))).toEqual({
      kind: 'crosses',
      first: 1,
      second: 3,
    });
  });

  it('a corner on another side touches it, and on another corner both sides that end there', () => {
    expect(outlineFault(corners([0, 0], [20, 0], [20, 20], [10, 0], [0, 20]))).toEqual({
      kind: 'touches',
      first: 1,
      second: 3,
    });
    expect(outlineFault(corners([0, 0], [10, 10], [20, 0], [20, 20], [10, 10], [0, 20]))?.kind).toBe('touches');
  });

  it('a side that runs back along the one before it folds back', () => {
    expect(outlineFault(corners([0, 0], [20, 0], [20, 30], [20, 20], [0, 20]))).toEqual({
      kind: 'foldsBack',
      first: 2,
      second: 3,
    });
    expect(outlineFault(corners([0, 0], [10, 0], [20, 0]))?.kind).toBe('foldsBack');
  });

  it('a corner in the middle of a straight wall is no fault', () => {
    expect(outlineFault(corners([0, 0], [10, 0], [20, 0], [20, 20], [0, 20]))).toBeUndefined();
  });

  it('a wall 1/8 in from another is not one with it', () => {
    const gap = 1 / 96;
    expect(outlineFault(corners([0, 0], [20, 0], [20, 20], [10, gap], [0, 20]))).toBeUndefined();
  });

  it('names corner 3 when corner 4 stands in the same place, and still finds what crosses', () => {
    const twice = corners([0, 0], [20, 0], [20, 20], [20, 20], [0, 20]);
    expect(repeatedCorner(twice)).toBe(3);
    expect(outlineFault(twice)).toBeUndefined();
    expect(outlineFault(corners([0, 0], [20, 20], [20, 0], [20, 0], [0, 20]))).toEqual({
      kind: 'crosses',
      first: 1,
      second: 4,
    });
  });

  it('names the last corner when it stands on the first, as people close a round', () => {
    const closed = corners([0, 0], [20, 0], [20, 20], [0, 20], [0, 0]);
    expect(repeatedCorner(closed)).toBe(5);
    expect(outlineFault(closed)).toBeUndefined();
    expect(repeatedCorner(closed.slice(0, 4))).toBeUndefined();
  });
});

type Place = readonly [bigint, bigint];

/** Exact, by solving for where both lines meet (Cramer), or for how far two on one line reach: no turns, no nearness. */
function doMeet([a, b]: readonly [Place, Place], [c, d]: readonly [Place, Place]): boolean {
  const r = [b[0] - a[0], b[1] - a[1]] as const;
  const s = [d[0] - c[0], d[1] - c[1]] as const;
  const q = [c[0] - a[0], c[1] - a[1]] as const;
  const below = r[0] * s[1] - r[1] * s[0];
  const t = q[0] * s[1] - q[1] * s[0];
  const u = q[0] * r[1] - q[1] * r[0];
  const within = (share: bigint) => (below > 0n ? share >= 0n && share <= below : share <= 0n && share >= below);
  if (below !== 0n) return within(t) && within(u);
  if (u !== 0n) return false;
  const along = (place: Place) => (place[0] - a[0]) * r[0] + (place[1] - a[1]) * r[1];
  const [low, high] = along(c) < along(d) ? [along(c), along(d)] : [along(d), along(c)];
  return high >= 0n && low <= r[0] * r[0] + r[1] * r[1];
}

/** Numbers of sides that meet, neighbours aside, on whole feet. */
function meetingPairs(places: readonly Place[]): string[] {
  const side = (at: number): [Place, Place] => [
    places[at % places.length] ?? [0n, 0n],
    places[(at + 1) % places.length] ?? [0n, 0n],
  ];
  return places.flatMap((_, one) =>
    places.flatMap((__, two) => {
      const areNeighbours = two === one + 1 || (one === 0 && two === places.length - 1);
      return two <= one || areNeighbours || !doMeet(side(one), side(two)) ? [] : [`${one + 1} ${two + 1}`];
    }),
  );
}

/** Neighbours that meet in more than their corner: on one line, and turning back on it. */
function foldedPairs(places: readonly Place[]): string[] {
  return places.flatMap((b, at) => {
    const a = places[(at + places.length - 1) % places.length] ?? b;
    const c = places[(at + 1) % places.length] ?? b;
    const isLine = (b[0] - a[0]) * (c[1] - b[1]) === (b[1] - a[1]) * (c[0] - b[0]);
    const isBack = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) < 0n;
    const pair = at === 0 ? `1 ${places.length}` : `${at} ${at + 1}`;
    return isLine && isBack ? [pair] : [];
  });
}

describe('against whole-number arithmetic', () => {
  const seed = printedSeed('crossing-sides');
  const grid = (size: number) => fc.tuple(fc.integer({ min: 0, max: size }), fc.integer({ min: 0, max: size }));

  it('finds the same first two sides on random outlines, on coarse and fine grids', () => {
    let [faulty, sound] = [0, 0];
    const polygons = fc
      .tuple(fc.constantFrom(4, 12, 60), fc.integer({ min: 3, max: 9 }))
      .chain(([size, count]) => fc.array(grid(size), { minLength: count, maxLength: count }))
      .filter((places) => repeatedCorner(corners(...places)) === undefined);
    fc.assert(
      fc.property(polygons, (places) => {
        const exact = places.map(([x, y]): Place => [BigInt(x), BigInt(y)]);
        const pairs = [...meetingPairs(exact), ...foldedPairs(exact)];
        const inOrder = pairs
          .map((pair) => pair.split(' ').map(Number))
          .sort(([a = 0, b = 0], [c = 0, d = 0]) => a - c || b - d);
        const found = outlineFault(corners(...places));
        expect(found && [found.first, found.second]).toEqual(inOrder[0]);
        if (found === undefined) sound += 1;
        else faulty += 1;
      }),
      { seed, numRuns: 3000 },
    );
    // Neither verdict is rare.
    expect(Math.min(faulty, sound)).toBeGreaterThan(300);
  });

  it('finds none in outlines that go once round a point, and one after two corners that are no neighbours change places', () => {
    const steps = fc.array(fc.tuple(fc.integer({ min: 10, max: 60 }), fc.integer({ min: 5, max: 40 })), {
      minLength: 5,
      maxLength: 12,
    });
    fc.assert(
      fc.property(steps, (all) => {
        const turn = all.reduce((sum, [step]) => sum + step, 0);
        let angle = 0;
        const round = all.map(([step, radius]) => {
          angle += (step / turn) * 2 * Math.PI;
          return { across: radius * Math.cos(angle), along: radius * Math.sin(angle) };
        });
        const widest = Math.max(...all.map(([step]) => step)) / turn;
        // Steps under half a turn go round the point.
        fc.pre(widest < 0.5);
        expect(outlineFault(round)).toBeUndefined();
      }),
      { seed, numRuns: 500 },
    );
    const ring = Array.from({ length: 8 }, (_, at) => ({
      across: 10 * Math.cos((at * Math.PI) / 4),
      along: 10 * Math.sin((at * Math.PI) / 4),
    }));
    const swapped = ring.map((corner, at) => (at === 2 ? ring[5] : at === 5 ? ring[2] : corner) ?? corner);
    expect(outlineFault(swapped)?.kind).toBe('crosses');
  });
});
