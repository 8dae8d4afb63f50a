import type { CellValue } from '../formula/cells.ts';

/** Something that was made of cells, and of other things that were. */
interface Made {
  isOutdated: boolean;
  /** What was made of it in turn. */
  readonly usedBy: Set<Made>;
}

/** What is being made just now: it is made of every cell that is read in the meantime. */
let making: Made | undefined;

/** The cells of one option as they move. They know what was made of them, so nobody has to look for what an edit moved. */
export class MovingCells {
  private readonly value: (cell: number) => CellValue;
  private readonly madeOf: Set<Made>[] = [];

  constructor(value: (cell: number) => CellValue) {
    this.value = value;
  }

  readonly read = (cell: number): CellValue => {
    if (making !== undefined) {
      const known = this.madeOf[cell];
      if (known === undefined) this.madeOf[cell] = new Set([making]);
      else known.add(making);
    }
    return this.value(cell);
  };

  /** What was made of these cells is made anew when it is next asked for. */
  moved(cells: readonly number[]): void {
    for (const cell of cells) outdate(this.madeOf[cell]);
  }
}

function outdate(all: Set<Made> | undefined): void {
  if (all === undefined) return;
  for (const made of all) {
    made.isOutdated = true;
    outdate(made.usedBy);
  }
  // Whoever makes one of them again reads again.
  all.clear();
}

/** What is made of cells; without `moving` nothing of it is kept. */
interface OfCells {
  readonly moving?: MovingCells;
}

interface Kept<T> {
  readonly made: Made;
  readonly also: readonly unknown[];
  readonly value: T;
}

/**
 * What was made of an option's cells, by name, to be given again until one of them moves: the one memo of the page. Which cells
 * those are nobody lists: they are read while it is made. An option that is laid out anew has cells of which nothing was made.
 * What comes out as it was is the same object as before, so that whatever shows it has nothing to draw.
 */
export class KeptByCells<T> {
  private readonly known = new WeakMap<MovingCells, Map<string, Kept<T>>>();

  /** `also` is all that it is made of beside cells, compared by identity; also of what is kept within it. */
  of({ moving }: OfCells, name: string, also: readonly unknown[], make: () => T): T {
    return moving === undefined ? make() : this.kept(moving, name, also, make);
  }

  /** The same of what is made of several options in their order. */
  ofAll(options: readonly OfCells[], name: string, also: readonly unknown[], make: () => T): T {
    const all = options.flatMap(({ moving }) => moving ?? []);
    const [first] = all;
    if (first === undefined || all.length < options.length) return make();
    return this.kept(first, name, [...all, ...also], make);
  }

  private kept(cells: MovingCells, name: string, also: readonly unknown[], make: () => T): T {
    const byName = this.known.get(cells) ?? new Map<string, Kept<T>>();
    const before = byName.get(name);
    const made = before?.made ?? { isOutdated: true, usedBy: new Set() };
    const stands = before !== undefined && !made.isOutdated && sameList(before.also, also);
    const now = stands ? before : { made, also, value: madeAnew(made, make, before) };
    if (!stands) this.known.set(cells, byName.set(name, now));
    if (making !== undefined) made.usedBy.add(making);
    return now.value;
  }
}

function madeAnew<T>(made: Made, make: () => T, before: Kept<T> | undefined): T {
  const user = making;
  making = made;
  try {
    const value = make();
    made.isOutdated = false;
    return before !== undefined && sameParts(before.value, value) ? before.value : value;
  } finally {
    making = user;
  }
}

/** Whether two plain objects or lists hold the same: each part by its identity, a list in an object by its own parts. */
function sameParts(before: unknown, now: unknown): boolean {
  if (isList(before) && isList(now)) return sameList(before, now);
  if (!isPlain(before) || !isPlain(now)) return Object.is(before, now);
  const [names, others] = [Object.keys(before), Object.keys(now)];
  return names.length === others.length && names.every((name) => name in now && samePart(before[name], now[name]));
}

function samePart(before: unknown, now: unknown): boolean {
  return isList(before) && isList(now) ? sameList(before, now) : Object.is(before, now);
}

function isList(value: unknown): value is readonly unknown[] {
  return Array.isArray(value);
}

function isPlain(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;
}

function sameList(before: readonly unknown[], now: readonly unknown[]): boolean {
  return before.length === now.length && before.every((part, at) => Object.is(part, now[at]));
}
