import type { CompiledTable } from './compiled-stack.ts';
import { filledCell, idsBrought, placedRows, type RowPlace, standing } from './filled-rows.ts';
import type { RowCell, RowFile } from './line-schema.ts';
import { ownValue } from './own-value.ts';
import type { Brought } from './sheet-schema.ts';
import type { StandingRow } from './table-rows.ts';

/** A change of the rows of a table. */
export interface RowsChange {
  readonly before: readonly StandingRow[];
  readonly after: readonly StandingRow[];
  /** The row that was moved. */
  readonly moved?: string | undefined;
}

/** What the rows of another table become with it. */
export interface FollowedRows {
  readonly order: readonly string[];
  readonly brought: ReadonlyMap<string, RowFile>;
  /** Cells that said what the row above was, or how the row was called, and say it anew. */
  readonly changed: readonly { readonly row: string; readonly column: string; readonly value: RowCell }[];
}

/**
 * The rows of `target` after a change of the rows of `table` that bring some of them: those of a row that came stand
 * before the first of the next row's, or after the last of the one above; those of a row that went go with it; those of a
 * row that was moved stand where its place is now. A cell that somebody typed over is left as it is.
 */
export function followRows(
  table: CompiledTable,
  brings: Brought,
  target: CompiledTable,
  change: RowsChange,
  rows: readonly StandingRow[],
): FollowedRows {
  const follower = new Follower(brings, target, rows);
  const [before, after] = [placedRows(table, brings, change.before), placedRows(table, brings, change.after)];
  const stays = new Set(after.map(({ id }) => id));
  const stood = new Map(before.map((row) => [row.id, row]));
  for (const row of before) if (!stays.has(row.id)) follower.remove(row);
  after.forEach((row, at) => {
    const was = stood.get(row.id);
    if (was === undefined) follower.add(after, at);
    else {
      if (row.id === change.moved) follower.move(after, at);
      follower.say(was, row);
    }
  });
  return follower;
}

class Follower implements FollowedRows {
  order: readonly string[];
  readonly brought = new Map<string, RowFile>();
  readonly changed: { row: string; column: string; value: RowCell }[] = [];
  private readonly brings: Brought;
  private readonly target: CompiledTable;
  private readonly rows: ReadonlyMap<string, StandingRow>;

  constructor(brings: Brought, target: CompiledTable, rows: readonly StandingRow[]) {
    this.brings = brings;
    this.target = target;
    this.rows = new Map(rows.map((row) => [row.id, row]));
    this.order = rows.map(({ id }) => id);
  }

  remove(row: RowPlace): void {
    const gone = this.idsOf(row);
    this.order = this.order.filter((id) => !gone.includes(id));
  }

  add(rows: readonly RowPlace[], at: number): void {
    const [row, above] = [rows[at], rows[at - 1]];
    if (row === undefined) return;
    let place = this.placeOf(rows, at);
    this.idsOf(row).forEach((id, number) => {
      const pattern = this.brings.rows[number];
      if (pattern === undefined || this.order.includes(id)) return;
      const like = above === undefined ? undefined : this.idsOf(above)[number];
      this.brought.set(id, this.newCells(pattern, row, like, this.order[place - 1]));
      this.order = this.order.toSpliced(place, 0, id);
      place += 1;
    });
  }

  move(rows: readonly RowPlace[], at: number): void {
    const row = rows[at];
    const own = row === undefined ? [] : this.idsOf(row);
    const block = this.order.filter((id) => own.includes(id));
    this.order = this.order.filter((id) => !own.includes(id));
    this.order = this.order.toSpliced(this.placeOf(rows, at), 0, ...block);
  }

  /** Says the row's place anew in the cells that still say the one before. */
  say(was: RowPlace, row: RowPlace): void {
    if (was.code === row.code && was.above === row.above && was.label === row.label) return;
    this.idsOf(row).forEach((id, number) => {
      for (const [column, cell] of Object.entries(this.brings.rows[number] ?? {})) {
        const [before, after] = [filledCell(cell, was), filledCell(cell, row)];
        if (column === this.target.key || same(before, after) || !same(this.cellOf(id, column), before)) continue;
        this.changed.push({ row: id, column, value: after });
      }
    });
  }

  private placeOf(rows: readonly RowPlace[], at: number): number {
    const of = (row: RowPlace): number[] => this.idsOf(row).flatMap((id) => this.placeIn(id) ?? []);
    const above = rows
      .slice(0, at)
      .map(of)
      .findLast((places) => places.length > 0);
    const below = rows
      .slice(at + 1)
      .map(of)
      .find((places) => places.length > 0);
    const [after, before] = [above && Math.max(...above) + 1, below && Math.min(...below)];
    return after === undefined ? (before ?? this.order.length) : Math.max(after, before ?? 0);
  }

  private placeIn(id: string): number | undefined {
    const place = this.order.indexOf(id);
    return place === -1 ? undefined : place;
  }

  private newCells(pattern: RowFile, row: RowPlace, like: string | undefined, justAbove: string | undefined): RowFile {
    const own = Object.entries(pattern).map(([column, cell]) => [column, filledCell(cell, row)] as const);
    const taken = (this.brings.asAbove ?? []).flatMap((column) => {
      const from = like !== undefined && this.order.includes(like) ? like : undefined;
      const cell = this.cellOf(from ?? (column in pattern ? undefined : justAbove), column);
      return cell === undefined ? [] : [[column, cell] as const];
    });
    return Object.fromEntries([...own, ...taken]);
  }

  private cellOf(id: string | undefined, column: string): RowCell | undefined {
    const row = this.rows.get(id ?? '');
    return row === undefined ? ownValue(this.brought.get(id ?? '') ?? {}, column) : standing(row, column);
  }

  private idsOf(row: RowPlace): string[] {
    return idsBrought(this.brings, this.target, row);
  }
}

function same(left: RowCell | undefined, right: RowCell): boolean {
  return JSON.stringify(left) === JSON.stringify(right);
}
