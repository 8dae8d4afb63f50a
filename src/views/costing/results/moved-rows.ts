import type { BoardRow, BoardView } from './board-view.ts';

/** Whether a number moved that `before` did not show: rows that a change left alone are the same objects. */
export function movesOn(board: BoardView, before: BoardView | undefined): boolean {
  const shown = new Set<BoardRow>(before?.groups.flatMap(({ rows }) => rows));
  return board.groups.some(({ rows }) =>
    rows.some((row) => !shown.has(row) && row.values.some(({ delta }) => delta !== '')),
  );
}
