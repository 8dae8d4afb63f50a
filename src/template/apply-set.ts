import { cellName, lineOrTableOf } from '../formula/cell-name.ts';
import { isCode } from '../formula/code-text.ts';
import { nearestName } from '../formula/nearest-name.ts';
import { didYouMean } from '../units/nearest-word.ts';
import type { ComposedSection, PlacedRow, PlacedTable } from './composed-sheet.ts';
import type { ColumnFile, LineFile } from './line-schema.ts';
import { ownValue } from './own-value.ts';
import type { SheetFault } from './sheet-fault.ts';
import type { SetValue } from './sheet-schema.ts';
import { writtenRefusal } from './written-text.ts';

export interface PlacedSet {
  readonly set: Readonly<Record<string, SetValue>>;
  readonly path: string;
}

/** Gives the lines and entry cells that `set` names their values; what cannot be set is added to `faults`. What `broken` names is told already. */
export function applySets(
  sections: readonly ComposedSection[],
  sets: readonly PlacedSet[],
  broken: ReadonlySet<string>,
  faults: SheetFault[],
): ComposedSection[] {
  const wanted = collect(sets, faults);
  const met = new Set<string>();
  const refuse = (name: string, reason: string): void => {
    faults.push({ path: wanted.get(name)?.path ?? name, reason });
  };
  const set = sections.map((section) => ({
    ...section,
    lines: section.lines.map((placed) => {
      const given = wanted.get(placed.line.name);
      if (given === undefined) return placed;
      met.add(placed.line.name);
      const changed = lineWith(placed.line, given.value);
      if (typeof changed !== 'string') return { ...placed, line: changed };
      refuse(placed.line.name, changed);
      return placed;
    }),
    tables: section.tables.map((placed) => ({
      ...placed,
      rows: placed.rows.map((row) => rowWith(placed, row, wanted, met, refuse)),
    })),
  }));
  const known = () => sections.flatMap(namesToSet);
  for (const name of wanted.keys()) {
    if (met.has(name) || broken.has(lineOrTableOf(name))) continue;
    const near = nearestName(name, known());
    refuse(name, `There is nothing called “${name}” to set.${didYouMean(near)}`);
  }
  return set;
}

interface Wanted {
  readonly value: SetValue;
  readonly path: string;
}

function collect(sets: readonly PlacedSet[], faults: SheetFault[]): Map<string, Wanted> {
  const wanted = new Map<string, Wanted>();
  for (const { set, path } of sets) {
    for (const [name, value] of Object.entries(set)) {
      const at = `${path}.set.${name}`;
      if (wanted.has(name))
        faults.push({ path: at, reason: `“${name}” is set twice; the other is ${wanted.get(name)?.path}.` });
      else wanted.set(name, { value, path: at });
    }
  }
  return wanted;
}

function namesToSet(section: ComposedSection): string[] {
  const cells = section.tables.flatMap(({ table, rows }) =>
    rows.flatMap((row) => table.columns.map((column) => cellName(table.name, row.id, column.name))),
  );
  return [...section.lines.map(({ line }) => line.name), ...cells];
}

function rowWith(
  { table }: PlacedTable,
  row: PlacedRow,
  wanted: ReadonlyMap<string, Wanted>,
  met: Set<string>,
  refuse: (name: string, reason: string) => void,
): PlacedRow {
  let cells = row.cells;
  for (const column of table.columns) {
    const name = cellName(table.name, row.id, column.name);
    const given = wanted.get(name);
    if (given === undefined) continue;
    met.add(name);
    const refusal = typeof ownValue(cells, column.name) === 'object' ? workedOut : cellRefusal(column, given.value);
    if (refusal === undefined) cells = { ...cells, [column.name]: given.value };
    else refuse(name, refusal);
  }
  return cells === row.cells ? row : { ...row, cells };
}

const workedOut = 'This is worked out by a formula; only an entry or a choice can be set.';

/** The line with another value, or why it cannot have it. */
export function lineWith(line: LineFile, value: SetValue): LineFile | string {
  switch (line.kind) {
    case 'formula':
    case 'check':
      return workedOut;
    case 'text':
      return typeof value === 'string' ? { ...line, text: value } : 'A text is wanted here.';
    case 'words':
      if (typeof value !== 'string') return 'Words are wanted here.';
      return writtenRefusal(value) ?? { ...line, words: value };
    case 'choice':
    case 'product': {
      const refusal = codeRefusal(line, value);
      return refusal === undefined && typeof value === 'string' ? { ...line, value } : (refusal ?? workedOut);
    }
    case 'entry':
      return entryRefusal(line.unit, value) ?? { ...line, value };
    default:
      return line satisfies never;
  }
}

export function cellRefusal(column: ColumnFile, value: SetValue): string | undefined {
  switch (column.kind) {
    case 'operated':
    case 'formula':
    case 'check':
      return workedOut;
    case 'key':
      return 'The key of a row stands in the row itself.';
    case 'text':
      return typeof value === 'string' ? undefined : 'A text is wanted here.';
    case 'words':
      return typeof value === 'string' ? writtenRefusal(value) : 'Words are wanted here.';
    case 'choice':
    case 'product':
      return codeRefusal(column, value);
    case 'entry':
      return entryRefusal(column.unit, value);
    default:
      return column satisfies never;
  }
}

type Coded = Extract<LineFile | ColumnFile, { kind: 'choice' | 'product' }>;

function codeRefusal(of: Coded, value: SetValue): string | undefined {
  if (of.kind === 'product')
    return typeof value === 'string' && isCode(value) ? undefined : 'The code of a product is wanted here.';
  const codes = of.options.map((option) => option.code);
  return typeof value === 'string' && codes.includes(value) ? undefined : `One of ${codes.join(', ')} is wanted here.`;
}

function entryRefusal(unit: string | undefined, value: SetValue): string | undefined {
  const wanted = unit === 'date' ? 'string' : 'number';
  return typeof value === wanted ? undefined : `A ${wanted === 'string' ? 'date' : 'number'} is wanted here.`;
}
