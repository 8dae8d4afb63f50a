import { describe, expect, it } from 'vitest';
import type { Edit } from '../../../../src/quote/edit.ts';
import { lineValue } from '../../../../src/quote/option-results.ts';
import type { QuoteSession } from '../../../../src/session/quote-session.ts';
import {
  addCornerEdit,
  drawByCornersEdit,
  moveCornerEdit,
  removeCornerEdit,
} from '../../../../src/views/parts/plan/corner-edits.ts';
import {
  type MeasuredArea,
  type MeasuredFloor,
  measuredFloor,
} from '../../../../src/views/parts/plan/measured-floor.ts';
import { planMeasure } from '../../../../src/views/parts/plan/plan-measure.ts';
import { flake, openQuote } from '../../../helpers/demo-quote.ts';

const us = planMeasure('us');
const sheet = { kind: 'floor' } as const;

function measured(session: QuoteSession): { floor: MeasuredFloor; bay: MeasuredArea; area: unknown; edge: unknown } {
  const results = session.results(flake);
  const floor = results && measuredFloor(results);
  const bay = floor?.areas[0];
  if (results === undefined || floor === undefined || bay === undefined) throw new Error('The floor is gone');
  return { floor, bay, area: lineValue(results, 'floor_area'), edge: lineValue(results, 'edge_length') };
}

function take(session: QuoteSession, edit: Edit | undefined): void {
  const done = edit === undefined ? undefined : session.dispatch(edit);
  if (done?.kind !== 'done') throw new Error(done?.reason ?? 'There is no edit');
}

async function drawnBay(): Promise<QuoteSession> {
  const { session } = await openQuote();
  const { floor, bay } = measured(session);
  take(session, drawByCornersEdit(floor, bay));
  return session;
}

describe('drawing a bay by its corners', () => {
  it('keeps 528 ft² and 92 ft of edge, and is one step back', async () => {
    const { session } = await openQuote();
    const before = session.quote;
    const { floor, bay, area, edge } = measured(session);
    take(session, drawByCornersEdit(floor, bay));
    expect([area, edge]).toEqual([528, 92]);
    const after = measured(session);
    expect([after.area, after.edge]).toEqual([528, 92]);
    expect(after.bay.corners.map(({ across, along }) => [across, along])).toEqual([
      [0, 0],
      [24, 0],
      [24, 22],
      [0, 22],
    ]);
    session.undo();
    expect(session.quote).toEqual(before);
  });

  it('takes away corners it had before, and leaves those of another area', async () => {
    const { session } = await openQuote();
    const rows = [1, 2, 2, 2, 1].map((of_area, at) => ({
      row: `corner_${at + 1}`,
      cells: { of_area, across: at * at, along: at },
    }));
    take(session, { kind: 'replaceRows', sheet, table: 'corners', rows });
    const { floor, bay } = measured(session);
    take(session, drawByCornersEdit(floor, bay));
    const after = measured(session);
    expect(after.bay.corners).toHaveLength(4);
    expect(after.floor.cornerRows.slice(0, 3)).toEqual(['corner_2', 'corner_3', 'corner_4']);
    expect(after.area).toBe(528);
  });

  it('is not offered for a round area, nor for one that is by its corners already', async () => {
    const { session } = await openQuote();
    const { floor, bay } = measured(session);
    expect(drawByCornersEdit(floor, { ...bay, shape: 'circle' })).toBeUndefined();
    expect(drawByCornersEdit(floor, { ...bay, shape: 'segment' })).toBeUndefined();
    expect(drawByCornersEdit(floor, { ...bay, shape: 'corners' })).toBeUndefined();
  });
});

describe('a corner', () => {
  it('moved 3 ft out makes 561 ft² of 528, keeps what is typed for it, and is one step back', async () => {
    const session = await drawnBay();
    const { bay } = measured(session);
    const [, , third] = bay.corners;
    if (third === undefined) throw new Error('There is no third corner');
    const steps = session.log.length;
    take(session, moveCornerEdit(bay, third, { across: 27, along: 22 }, us));
    expect(measured(session).area).toBe(561);
    expect(session.quote.floor.tables['corners']?.cells?.[third.row]).toEqual({ across: { value: 27, typed: "27'" } });
    expect(session.log.length).toBe(steps + 1);
    session.undo();
    expect(measured(session).area).toBe(528);
  });

  it('is added in the middle of its side, which changes neither area nor edge, and taken away again', async () => {
    const session = await drawnBay();
    const before = measured(session);
    const [first] = before.bay.corners;
    if (first === undefined) throw new Error('There is no corner');
    take(session, addCornerEdit(before.floor, before.bay, first));
    const added = measured(session);
    expect(added.bay.corners.map(({ across, along }) => [across, along])[1]).toEqual([12, 0]);
    expect([added.area, added.edge]).toEqual([528, 92]);
    const [, second] = added.bay.corners;
    if (second === undefined) throw new Error('There is no second corner');
    take(session, removeCornerEdit(added.bay, second));
    expect(measured(session).bay.corners).toEqual(before.bay.corners);
  });
});
