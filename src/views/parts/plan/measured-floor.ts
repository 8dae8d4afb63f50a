import { KeptByCells } from '../../../quote/kept-by-cells.ts';
import { cellOfColumn, type OptionResults } from '../../../quote/option-results.ts';
import type { OutlineCorner } from '../../../trade/crossing-sides.ts';

/** The areas of a floor as measured, for its plan. Lengths are in feet. */
export interface MeasuredFloor {
  readonly areas: readonly MeasuredArea[];
  /** Ids of all rows of corners, in order. */
  readonly cornerRows: readonly string[];
}

export interface MeasuredArea {
  readonly row: string;
  /** By which its corners name it. */
  readonly number: number;
  readonly label: string;
  /** Code of its shape, and its words. */
  readonly shape: string;
  readonly shapeWords: string;
  /** By column; what cannot be worked out is left out. */
  readonly lengths: Readonly<Record<string, number>>;
  /** In square feet, as the sheet works it out. */
  readonly area: number | undefined;
  readonly leftOut: number;
  readonly corners: readonly MeasuredCorner[];
}

export interface MeasuredCorner extends OutlineCorner {
  readonly row: string;
}

export const areasTable = 'areas';
export const cornersTable = 'corners';
const measuredColumns = ['length', 'width', 'third_side', 'cut_length', 'cut_width', 'known_area'] as const;

const keptFloors = new KeptByCells<MeasuredFloor | undefined>();

/** What an option's floor sheet says of its areas; undefined when it has no table of them. */
export function measuredFloor(results: OptionResults): MeasuredFloor | undefined {
  return keptFloors.of(results, 'floor', [], () => floorOf(results));
}

function floorOf(results: OptionResults): MeasuredFloor | undefined {
  const { stack, option } = results;
  if (!stack.tables.has(areasTable)) return undefined;
  const read = (table: string, column: string, row: number) => {
    const cell = cellOfColumn(results, table, column, row);
    return cell === undefined ? undefined : results.read(cell);
  };
  const number = (table: string, column: string, row: number): number | undefined => {
    const value = read(table, column, row);
    return typeof value === 'number' ? value : undefined;
  };
  const cornerRows = (option.rows.get(cornersTable) ?? []).map(({ id }) => id);
  const corners = cornerRows.map((row, at) => ({
    row,
    of: number(cornersTable, 'of_area', at),
    // A corner without a number has none: its area is then not drawn.
    across: number(cornersTable, 'across', at) ?? Number.NaN,
    along: number(cornersTable, 'along', at) ?? Number.NaN,
  }));
  const areas = (option.rows.get(areasTable) ?? []).map(({ id, label }, at): MeasuredArea => {
    const shape = String(read(areasTable, 'shape', at));
    const lengths = measuredColumns.flatMap((column) => {
      const value = number(areasTable, column, at);
      return value === undefined ? [] : [[column, value] as const];
    });
    return {
      row: id,
      number: at + 1,
      label,
      shape,
      shapeWords: shapeWords(results, shape),
      lengths: Object.fromEntries(lengths),
      area: number(areasTable, 'area', at),
      leftOut: number(areasTable, 'left_out', at) ?? 0,
      corners: corners.flatMap(({ of, ...corner }) => (of === at + 1 ? [corner] : [])),
    };
  });
  return { areas, cornerRows };
}

function shapeWords({ stack }: OptionResults, code: string): string {
  const definition = stack.tables.get(areasTable)?.columns.get('shape')?.definition;
  const options = definition?.kind === 'choice' ? definition.options : [];
  return options.find((option) => option.code === code)?.label ?? '';
}
