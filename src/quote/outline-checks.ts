import { cellName } from '../formula/cell-name.ts';
import type { CellValue } from '../formula/cells.ts';
import type { CompiledTable } from '../template/compiled-stack.ts';
import type { OptionRow } from '../template/plan.ts';
import type { OutlineColumns } from '../template/sheet-schema.ts';
import { type OutlineCorner, type OutlineFault, outlineFault, repeatedCorner } from '../trade/crossing-sides.ts';
import { cellOfColumn, type OptionResults } from './option-results.ts';

/** A check of an area by its corners, which no formula can say. */
interface OutlineCheck {
  /** `table.row.outline`, or `table.row.repeated_corner`, by the area's row. */
  readonly name: string;
  readonly label: string;
  readonly layer: CompiledTable['layer'];
  readonly severity: 'stop' | 'caution';
  readonly absolute: boolean;
  readonly open: boolean;
  readonly verdict: 'holds' | 'fails' | 'unknown';
  readonly says: string;
  /** Where the corner in question is entered. */
  readonly cell: number;
}

interface Corner {
  /** Row of the table of corners, from 0. */
  readonly row: number;
  readonly across: CellValue | undefined;
  readonly along: CellValue | undefined;
}

const fewestCorners = 3;

/**
 * Checks of every area that is given by its corners: no sides may cross, touch or fold back, since the area is worked out
 * from corners in order round it, and a corner that stands twice is cautioned. Areas of fewer than three corners are left
 * to the sheet's own check.
 */
export function outlineChecks(results: OptionResults): OutlineCheck[] {
  return [...results.stack.tables.values()].flatMap((corners): OutlineCheck[] => {
    const { outline } = corners.definition;
    if (outline === undefined) return [];
    return (results.option.rows.get(outline.table) ?? []).flatMap((area, at) => {
      const shape = cellOfColumn(results, outline.table, outline.shape, at);
      if (shape === undefined || results.read(shape) !== outline.code) return [];
      return areaChecks(results, corners, outline, area, at);
    });
  });
}

function areaChecks(
  results: OptionResults,
  table: CompiledTable,
  outline: OutlineColumns,
  area: OptionRow,
  at: number,
): OutlineCheck[] {
  const corners = cornersOf(results, table.definition.name, outline, at + 1);
  const [first] = corners;
  if (first === undefined || corners.length < fewestCorners) return [];
  const cellOf = (corner: number): number =>
    cellOfColumn(results, table.definition.name, outline.across, corners[corner - 1]?.row ?? first.row) ?? 0;
  const common = { layer: table.layer, open: true, cell: cellOf(1) };
  const places = corners.flatMap(placeOf);
  const stop = {
    ...common,
    name: cellName(outline.table, area.id, 'outline'),
    label: 'Its sides do not cross',
  } as const;
  if (places.length < corners.length) {
    const says = `${area.label}: whether its sides cross cannot be told, since a corner is missing.`;
    return [{ ...stop, severity: 'stop', absolute: true, verdict: 'unknown', says }];
  }
  const fault = outlineFault(places);
  const faulty = stopWords(area.label, fault, corners);
  const twice = repeatedCorner(places);
  return [
    {
      ...stop,
      severity: 'stop',
      absolute: true,
      verdict: faulty === '' ? 'holds' : 'fails',
      says: faulty,
      cell: cellOf(fault?.first ?? 1),
    },
    {
      ...common,
      name: cellName(outline.table, area.id, 'repeated_corner'),
      label: 'No corner stands twice',
      severity: 'caution',
      absolute: false,
      verdict: twice === undefined ? 'holds' : 'fails',
      says: twice === undefined ? '' : repeatWords(area.label, twice, corners.length),
      cell: cellOf(twice ?? 1),
    },
  ];
}

function cornersOf(results: OptionResults, table: string, outline: OutlineColumns, number: number): Corner[] {
  const rows = results.option.rows.get(table) ?? [];
  const read = (column: string, row: number): CellValue | undefined => {
    const cell = cellOfColumn(results, table, column, row);
    return cell === undefined ? undefined : results.read(cell);
  };
  return rows.flatMap((_, row) =>
    read(outline.of, row) === number
      ? [{ row, across: read(outline.across, row), along: read(outline.along, row) }]
      : [],
  );
}

function placeOf({ across, along }: Corner): OutlineCorner[] {
  return typeof across === 'number' && typeof along === 'number' ? [{ across, along }] : [];
}

/** Empty when the outline is sound. Corners that stand apart in the list are worked out as two areas, and so are told. */
function stopWords(area: string, fault: OutlineFault | undefined, corners: readonly Corner[]): string {
  const isApart = corners.some(({ row }, at) => at > 0 && row !== (corners[at - 1]?.row ?? row) + 1);
  if (isApart)
    return `${area}: its corners do not stand together in the list. Put them one below the other, in order round it.`;
  if (fault === undefined) return '';
  const { kind, first, second } = fault;
  const between = (side: number): string => `corner ${side} to corner ${(side % corners.length) + 1}`;
  const where = `Side ${first} runs from ${between(first)}, side ${second} from ${between(second)}`;
  return `${area}: ${meetingWords(kind, first, second)}. ${where}. Give the corners in order round it, or measure again.`;
}

function meetingWords(kind: OutlineFault['kind'], first: number, second: number): string {
  switch (kind) {
    case 'crosses':
      return `side ${first} crosses side ${second}`;
    case 'touches':
      return `side ${first} touches side ${second}`;
    case 'foldsBack':
      return `side ${first} and side ${second} lie on each other`;
    default:
      return kind satisfies never;
  }
}

function repeatWords(area: string, corner: number, count: number): string {
  const next = (corner % count) + 1;
  return `${area}: corners ${corner} and ${next} are in one place. Take one away, or measure it again.`;
}
