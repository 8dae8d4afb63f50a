import type { CellPlace, CellValue } from '../../../formula/cells.ts';
import type { OptionResults } from '../../../quote/option-results.ts';
import type { SheetEntries } from '../../../quote/quote-document.ts';

/** What is not as it was when a sheet was last shown. */
export interface Moved {
  /** Cells that read something else, by their index in the plan. */
  readonly cells: ReadonlySet<number>;
  /** The lines and tables of those cells. */
  readonly names: ReadonlySet<string>;
  /** Lines and tables that hold other entries. */
  readonly held: ReadonlySet<string>;
}

const nothing: Readonly<Record<string, unknown>> = {};

/** Tells what of a sheet reads as it did when it was last shown, and holds what it held. */
export class SeenValues {
  private from: readonly unknown[] = [];
  private values: readonly CellValue[] = [];
  private entries: SheetEntries | undefined;

  /** Looks again. Undefined when all may be another, since one of the things that a sheet is shown `from` is. */
  moved(
    { option, read }: OptionResults,
    entries: SheetEntries | undefined,
    from: readonly unknown[],
  ): Moved | undefined {
    const { values: before, entries: heldBefore } = this;
    const isAnother = from.length !== this.from.length || from.some((part, at) => part !== this.from[at]);
    const values = option.plan.cells.map((_, cell) => read(cell));
    this.from = from;
    this.values = values;
    this.entries = entries;
    if (isAnother) return undefined;
    const cells = values.flatMap((value, cell) => (value === before[cell] ? [] : [cell]));
    return {
      cells: new Set(cells),
      names: new Set(cells.map((cell) => nameAt(option.plan.cells[cell]?.place))),
      held: new Set([
        ...differing(heldBefore?.lines, entries?.lines),
        ...differing(heldBefore?.tables, entries?.tables),
      ]),
    };
  }
}

function nameAt(place: CellPlace | undefined): string {
  if (place === undefined) return '';
  return place.kind === 'line' ? place.name : place.table;
}

/** The keys under which two records hold something else. */
function differing(one = nothing, other = nothing): string[] {
  if (one === other) return [];
  return [...Object.keys(one), ...Object.keys(other)].filter((key) => one[key] !== other[key]);
}
