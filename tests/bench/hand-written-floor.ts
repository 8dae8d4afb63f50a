import type { HandEntries } from './hand-written-entries.ts';

export interface HandFloor {
  readonly area: number;
  readonly edge: number;
  readonly surface: number;
}

export const inchesPerFoot = 12;

export function measureFloor(entries: HandEntries): HandFloor {
  let area = 0;
  let edge = 0;
  for (const place of Object.values(entries.areas)) {
    const drawn = place.shape === 'rectangle';
    area += drawn ? place.length * place.width : place.knownArea;
    edge += (drawn ? 2 * (place.length + place.width) : place.knownEdge) - place.joined;
  }
  return { area, edge, surface: area + (entries.stemWallLength * entries.stemWallHeight) / inchesPerFoot };
}

/** Pits that the base fills: a share of the floor, or all there are. */
export function pitsInBase(entries: HandEntries, { area }: HandFloor): number {
  return Math.min(entries.pittedArea, entries.pitsInBase * area);
}

/** More than the error of a few multiplications and less than any real part of a pack or cent. */
const slack = 1e-14;

/** Up to a whole number; 86.00000000000001 is 86. */
export function roundUp(value: number): number {
  return Math.ceil(value * (1 - slack));
}

/** Down to a whole number; 85.99999999999999 is 86. */
export function roundDown(value: number): number {
  return Math.floor(value * (1 + slack));
}

export function toCents(value: number): number {
  return Math.round(value * 100 * (1 + slack)) / 100;
}

export function known<T>(row: T | undefined): T {
  if (row === undefined) throw new Error('The hand-written quote has no such row');
  return row;
}
