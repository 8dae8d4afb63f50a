import type { MeasuredArea, MeasuredFloor } from '../../src/views/parts/plan/measured-floor.ts';

/** An area as measured, for tests of plans. */
export function measuredArea(shape: string, lengths: Readonly<Record<string, number>> = {}): MeasuredArea {
  return {
    row: 'bay',
    number: 1,
    label: 'Bay',
    shape,
    shapeWords: shape,
    lengths,
    area: undefined,
    leftOut: 0,
    corners: [],
  };
}

/** An area by its corners; their rows are c1, c2, … */
export function areaByCorners(...places: readonly (readonly [across: number, along: number])[]): MeasuredArea {
  const corners = places.map(([across, along], at) => ({ row: `c${at + 1}`, across, along }));
  return { ...measuredArea('corners'), corners };
}

export function floorOf(...areas: readonly MeasuredArea[]): MeasuredFloor {
  return { areas, cornerRows: areas.flatMap(({ corners }) => corners.map(({ row }) => row)) };
}
