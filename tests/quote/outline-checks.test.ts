import { describe, expect, it } from 'vitest';
import { outlineChecks } from '../../src/quote/outline-checks.ts';
import { flake, openQuote } from '../helpers/demo-quote.ts';
import { type PricedFloor, priced } from '../helpers/priced-floor.ts';

type Place = readonly [across: number, along: number];

const square: readonly Place[] = [
  [0, 0],
  [20, 0],
  [20, 22],
  [0, 22],
];

function cornersOf(area: number, places: readonly Place[]) {
  return places.map(([across, along]) => ({ of_area: area, across, along }));
}

/** A floor of one area by these corners. */
function floorOf(...places: readonly Place[]): PricedFloor {
  const areas = [{ place: 'bay', label: 'Bay', shape: 'corners' }];
  return priced('flake-full-broadcast', { rows: { areas, corners: cornersOf(1, places) } });
}

describe('an area by its corners', () => {
  it('of 464 ft² in an L may be sold', () => {
    const floor = floorOf([0, 0], [24, 0], [24, 14], [16, 14], [16, 22], [0, 22]);
    expect(floor.number('floor_area')).toBe(464);
    expect(floor.check('areas.row-1.outline')).toMatchObject({ verdict: 'holds', says: '' });
    expect(floor.check('areas.row-1.repeated_corner').verdict).toBe('holds');
  });

  it('is stopped, with no way round, when side 1 crosses side 3: its area cannot be worked out so', () => {
    const floor = floorOf([0, 0], [20, 22], [20, 0], [0, 22]);
    // Two triangles that take each other away: what the sheet alone would have priced.
    expect(floor.value('floor_area')).toBe(0);
    expect(floor.check('areas.row-1.outline')).toMatchObject({
      layer: 'floor',
      severity: 'stop',
      absolute: true,
      verdict: 'fails',
      says: 'Bay: side 1 crosses side 3. Side 1 runs from corner 1 to corner 2, side 3 from corner 3 to corner 4. Give the corners in order round it, or measure again.',
    });
  });

  it('is stopped when a corner touches another side, and when two sides lie on each other', () => {
    expect(floorOf([0, 0], [20, 0], [20, 20], [10, 0], [0, 20]).check('areas.row-1.outline').says).toContain(
      'Bay: side 1 touches side 3.',
    );
    expect(floorOf([0, 0], [20, 0], [20, 30], [20, 20], [0, 20]).check('areas.row-1.outline').says).toContain(
      'Bay: side 2 and side 3 lie on each other.',
    );
  });

  it('is cautioned, not stopped, for the first corner given again at the end: area and edge are the same', () => {
    const [closed, open] = [floorOf(...square, [0, 0]), floorOf(...square)];
    expect([closed.number('floor_area'), closed.number('edge_length')]).toEqual([440, 84]);
    expect([open.number('floor_area'), open.number('edge_length')]).toEqual([440, 84]);
    expect(closed.check('areas.row-1.outline').verdict).toBe('holds');
    expect(closed.check('areas.row-1.repeated_corner')).toMatchObject({
      severity: 'caution',
      absolute: false,
      verdict: 'fails',
      says: 'Bay: corners 5 and 1 are in one place. Take one away, or measure it again.',
    });
    expect(open.check('areas.row-1.repeated_corner').verdict).toBe('holds');
  });

  it('is stopped when its corners stand apart in the list, since they are worked out as two areas', () => {
    const [first = [0, 0], ...others] = square;
    const floor = priced('flake-full-broadcast', {
      rows: {
        areas: [
          { place: 'bay', label: 'Bay', shape: 'corners' },
          { place: 'shop', label: 'Shop', shape: 'corners' },
        ],
        corners: [...cornersOf(1, [first]), ...cornersOf(2, square), ...cornersOf(1, others)],
      },
    });
    expect(floor.number('areas.Bay.area')).not.toBe(440);
    expect(floor.check('areas.row-1.outline').says).toBe(
      'Bay: its corners do not stand together in the list. Put them one below the other, in order round it.',
    );
    expect(floor.check('areas.row-2.outline').verdict).toBe('holds');
  });
});

describe('corners that no area asks for', () => {
  it('are not looked at, neither of a rectangle nor under three, which the sheet stops itself', async () => {
    const { session } = await openQuote();
    const results = () => {
      const found = session.results(flake);
      if (found === undefined) throw new Error('The option is gone');
      return found;
    };
    const sheet = { kind: 'floor' } as const;
    const crossed: readonly Place[] = [
      [0, 0],
      [20, 22],
      [20, 0],
      [0, 22],
    ];
    const rows = (places: readonly Place[]) =>
      places.map(([across, along], at) => ({ row: `c${at}`, cells: { across, along } }));
    session.dispatch({ kind: 'replaceRows', sheet, table: 'corners', rows: rows(crossed) });
    expect(outlineChecks(results())).toEqual([]);
    session.dispatch({ kind: 'enterCell', sheet, table: 'areas', row: 'bay', column: 'shape', value: 'corners' });
    expect(outlineChecks(results()).map(({ verdict }) => verdict)).toEqual(['fails', 'holds']);
    session.dispatch({ kind: 'replaceRows', sheet, table: 'corners', rows: rows(crossed.slice(0, 2)) });
    expect(outlineChecks(results())).toEqual([]);
  });

  it('tell at which cell a crossing side begins', async () => {
    const { session } = await openQuote();
    const sheet = { kind: 'floor' } as const;
    const places: readonly Place[] = [
      [-9, 0],
      [0, 0],
      [20, 22],
      [20, 0],
      [0, 22],
    ];
    const rows = places.map(([across, along], at) => ({ row: `c${at}`, cells: { across, along } }));
    session.dispatch({
      kind: 'several',
      words: 'corners',
      edits: [
        { kind: 'replaceRows', sheet, table: 'corners', rows },
        { kind: 'enterCell', sheet, table: 'areas', row: 'bay', column: 'shape', value: 'corners' },
      ],
    });
    const results = session.results(flake);
    const [stop] = results === undefined ? [] : outlineChecks(results);
    expect(stop?.says).toContain('side 2 crosses side 4');
    expect(stop?.cell).toBe(results?.option.plan.tables.get('corners')?.columns.get('across')?.[1]);
  });
});
