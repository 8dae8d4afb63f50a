/** A cell of a grid that may have focus: a row by its id, a column by its name. */
export interface GridPlace {
  readonly row: string;
  readonly column: string;
}

/** Every place of a grid, in order. */
export interface GridShape {
  readonly rows: readonly string[];
  readonly columns: readonly string[];
}

type GridMove = 'up' | 'down' | 'left' | 'right' | 'row start' | 'row end' | 'start' | 'end' | 'page up' | 'page down';

/** What of a keyboard event tells where focus goes. */
export interface PressedKey {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

/** Rows that Page Up and Page Down go over. */
const page = 10;

const plainMoves = new Map<string, GridMove>([
  ['ArrowUp', 'up'],
  ['ArrowDown', 'down'],
  ['ArrowLeft', 'left'],
  ['ArrowRight', 'right'],
  ['Home', 'row start'],
  ['End', 'row end'],
  ['PageUp', 'page up'],
  ['PageDown', 'page down'],
]);

/** Where a key leads from a place, or undefined when it leads nowhere. At an edge it stays: `End` in the last column. */
export function placeAfterKey(from: GridPlace, pressed: PressedKey, shape: GridShape): GridPlace | undefined {
  const move = moveOf(pressed);
  return move && placeAfter(from, move, shape);
}

function moveOf({ key, ctrlKey, metaKey, altKey, shiftKey }: PressedKey): GridMove | undefined {
  if (altKey || shiftKey) return undefined;
  if (!(ctrlKey || metaKey)) return plainMoves.get(key);
  if (key === 'Home') return 'start';
  return key === 'End' ? 'end' : undefined;
}

function placeAfter(from: GridPlace, move: GridMove, { rows, columns }: GridShape): GridPlace {
  const lastRow = rows.length - 1;
  const lastColumn = columns.length - 1;
  const row = rows.indexOf(from.row);
  const column = columns.indexOf(from.column);
  const at = (nextRow: number, nextColumn: number): GridPlace => ({
    row: rows[Math.min(Math.max(nextRow, 0), lastRow)] ?? from.row,
    column: columns[Math.min(Math.max(nextColumn, 0), lastColumn)] ?? from.column,
  });
  switch (move) {
    case 'up':
      return at(row - 1, column);
    case 'down':
      return at(row + 1, column);
    case 'left':
      return at(row, column - 1);
    case 'right':
      return at(row, column + 1);
    case 'row start':
      return at(row, 0);
    case 'row end':
      return at(row, lastColumn);
    case 'start':
      return at(0, 0);
    case 'end':
      return at(lastRow, lastColumn);
    case 'page up':
      return at(row - page, column);
    case 'page down':
      return at(row + page, column);
    default:
      return move satisfies never;
  }
}

/**
 * Where focus is once the shape has changed: at its place where that is still there, else at the neighbour that took the
 * row's or column's position. Undefined in a grid without cells.
 */
export function placeKept(place: GridPlace | undefined, before: GridShape, now: GridShape): GridPlace | undefined {
  const row = kept(place?.row, before.rows, now.rows);
  const column = kept(place?.column, before.columns, now.columns);
  return row === undefined || column === undefined ? undefined : { row, column };
}

function kept(id: string | undefined, before: readonly string[], now: readonly string[]): string | undefined {
  if (id !== undefined && now.includes(id)) return id;
  const at = id === undefined ? 0 : Math.max(0, before.indexOf(id));
  return now[Math.min(at, now.length - 1)];
}

/** The next place after `from`, row by row, that `accepts`; `step` is 1 or −1. */
export function nextPlace(
  from: GridPlace,
  step: 1 | -1,
  { rows, columns }: GridShape,
  accepts: (place: GridPlace) => boolean,
): GridPlace | undefined {
  const places = rows.flatMap((row) => columns.map((column): GridPlace => ({ row, column })));
  const at = places.findIndex((place) => isSamePlace(place, from));
  const onward = step === 1 ? places.slice(at + 1) : places.slice(0, Math.max(at, 0)).toReversed();
  return onward.find(accepts);
}

export function isSamePlace(a: GridPlace | undefined, b: GridPlace | undefined): boolean {
  return a !== undefined && b !== undefined && a.row === b.row && a.column === b.column;
}
