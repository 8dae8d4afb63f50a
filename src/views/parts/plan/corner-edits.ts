import type { SeveralEdits, SingleEdit } from '../../../quote/edit.ts';
import type { StoredValue } from '../../../quote/quote-document.ts';
import type { OutlineCorner } from '../../../trade/crossing-sides.ts';
import {
  areasTable,
  cornersTable,
  type MeasuredArea,
  type MeasuredCorner,
  type MeasuredFloor,
} from './measured-floor.ts';
import type { PlanMeasure } from './plan-measure.ts';
import { areaOutline } from './shape-outline.ts';

// Every change of a plan is one edit, so one step back.
const sheet = { kind: 'floor' } as const;

/** A corner at another place. */
export function moveCornerEdit(
  area: MeasuredArea,
  corner: MeasuredCorner,
  to: OutlineCorner,
  measure: PlanMeasure,
): SeveralEdits {
  const entered = (feet: number): StoredValue => {
    const typed = measure.typed(feet);
    return typed === undefined ? feet : { value: feet, typed };
  };
  const cell = (column: 'across' | 'along'): SingleEdit[] =>
    corner[column] === to[column]
      ? []
      : [{ kind: 'enterCell', sheet, table: cornersTable, row: corner.row, column, value: entered(to[column]) }];
  const number = area.corners.indexOf(corner) + 1;
  return several(`corner ${number} of ${area.label}`, [...cell('across'), ...cell('along')]);
}

/** The area by its corners, as they are now; corners left from before are taken away. Undefined when it is not drawn. */
export function drawByCornersEdit(floor: MeasuredFloor, area: MeasuredArea): SeveralEdits | undefined {
  const outline = areaOutline(area);
  if (outline.kind === 'not drawn' || outline.sides.length < 3 || area.shape === 'corners') return undefined;
  const codes = freeRows(floor.cornerRows, outline.places.length);
  const stays = floor.cornerRows.length - area.corners.length;
  const rows = outline.places.map(
    ({ across, along }, at): SingleEdit => ({
      kind: 'addRow',
      sheet,
      table: cornersTable,
      row: codes[at] ?? '',
      at: stays + at,
      cells: { of_area: area.number, across, along },
    }),
  );
  return several(`${area.label} by its corners`, [
    ...area.corners.map(({ row }): SingleEdit => ({ kind: 'removeRow', sheet, table: cornersTable, row })),
    ...rows,
    { kind: 'enterCell', sheet, table: areasTable, row: area.row, column: 'shape', value: 'corners' },
  ]);
}

/** Another corner in the middle of the side that begins at a corner. */
export function addCornerEdit(floor: MeasuredFloor, area: MeasuredArea, corner: MeasuredCorner): SeveralEdits {
  const number = area.corners.indexOf(corner) + 1;
  const next = area.corners[number % area.corners.length] ?? corner;
  const cells = {
    of_area: area.number,
    across: (corner.across + next.across) / 2,
    along: (corner.along + next.along) / 2,
  };
  const [row = ''] = freeRows(floor.cornerRows, 1);
  const at = floor.cornerRows.indexOf(corner.row) + 1;
  return several(`a corner on side ${number} of ${area.label}`, [
    { kind: 'addRow', sheet, table: cornersTable, row, at, cells },
  ]);
}

export function removeCornerEdit(area: MeasuredArea, corner: MeasuredCorner): SeveralEdits {
  const number = area.corners.indexOf(corner) + 1;
  return several(`corner ${number} of ${area.label} taken away`, [
    { kind: 'removeRow', sheet, table: cornersTable, row: corner.row },
  ]);
}

function several(words: string, edits: readonly SingleEdit[]): SeveralEdits {
  return { kind: 'several', words, edits };
}

/** Codes that no row of corners has. */
function freeRows(taken: readonly string[], count: number): string[] {
  const free: string[] = [];
  for (let number = taken.length + 1; free.length < count; number += 1)
    if (!taken.includes(`corner_${number}`)) free.push(`corner_${number}`);
  return free;
}
