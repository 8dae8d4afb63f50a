import { cellName, lineOrTableOf } from '../formula/cell-name.ts';
import { nearestName } from '../formula/nearest-name.ts';
import { didYouMean } from '../units/nearest-word.ts';
import type { ComposedSection, PlacedRow, PlacedTable } from './composed-sheet.ts';
import type { ColumnFile, LineFile } from './line-schema.ts';
import { ownValue } from './own-value.ts';
import type { SheetFault } from './sheet-fault.ts';
import type { SetValue } from './sheet-schema.ts';
import { givenInFile, namesItsRow, valueRefusal, workedOut } from './value-refusal.ts';

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
    const isFormula = typeof ownValue(cells, column.name) === 'object';
    const refusal = isFormula ? workedOut(column.name) : setRefusal(column, given.value);
    if (refusal === undefined) cells = { ...cells, [column.name]: given.value };
    else refuse(name, refusal);
  }
  return cells === row.cells ? row : { ...row, cells };
}

/** The line with another value, or why it cannot have it. */
function lineWith(line: LineFile, value: SetValue): LineFile | string {
  const refusal = setRefusal(line, value);
  if (refusal !== undefined) return refusal;
  switch (line.kind) {
    case 'formula':
    case 'check':
      return workedOut(line.name);
    case 'text':
      return { ...line, text: String(value) };
    case 'words':
      return { ...line, words: String(value) };
    case 'choice':
    case 'product':
      return { ...line, value: String(value) };
    case 'entry':
      return { ...line, value };
    default:
      return line satisfies never;
  }
}

/** Why a sheet cannot set a line or a cell of a row to a value; undefined when it can. Which products there are is told later. */
export function setRefusal(definition: LineFile | ColumnFile, value: SetValue): string | undefined {
  const { kind, name } = definition;
  if (kind === 'key') return namesItsRow(name);
  if (kind === 'text') return typeof value === 'string' ? undefined : `“${name}” takes a text.`;
  return valueRefusal(definition, givenInFile(definition, value), { name });
}
