import { productTable } from '../formula/cells.ts';
import { functionNames } from '../formula/checked-tree.ts';
import type { ComposedSheet, PlacedLine, PlacedTable } from './composed-sheet.ts';
import type { SheetFault } from './sheet-fault.ts';
import type { Layer, Need } from './sheet-schema.ts';

export interface DeclaredLine extends PlacedLine {
  readonly layer: Layer;
}

export interface DeclaredTable extends PlacedTable {
  readonly layer: Layer;
}

/** Every name of a stack of sheets, each standing for one thing only. */
export interface DeclaredNames {
  readonly lines: ReadonlyMap<string, DeclaredLine>;
  readonly tables: ReadonlyMap<string, DeclaredTable>;
  /** What a part reads and others give: lines by name, columns by `table.column`. */
  readonly needs: ReadonlyMap<string, Need>;
  /** Names whose own definition is faulty: known, and told already. */
  readonly broken: ReadonlySet<string>;
}

const reserved = new Set(['above', 'first', 'instead', 'label', productTable]);

/** Collects the names of sheets, lowest first. A name that stands twice, is reserved or is a function's is a fault. */
export function declareNames(sheets: readonly ComposedSheet[], faults: SheetFault[]): DeclaredNames {
  const lines = new Map<string, DeclaredLine>();
  const tables = new Map<string, DeclaredTable>();
  const fieldTables: DeclaredTable[] = [];
  const places = new Map<string, string>();
  const claim = (name: string, path: string): boolean => {
    const refusal = refusalOf(name, places.get(name));
    if (refusal === undefined) places.set(name, path);
    else faults.push({ path, reason: refusal });
    return refusal === undefined;
  };
  for (const sheet of sheets) {
    const { layer } = sheet;
    sectionsOnce(sheet, faults);
    for (const section of sheet.sections) {
      if (layer === 'pricelist') fieldTables.push(...section.tables.map((table) => ({ ...table, layer })));
      else {
        for (const line of section.lines)
          if (claim(line.line.name, line.path)) lines.set(line.line.name, { ...line, layer });
        for (const table of section.tables)
          if (claim(table.table.name, table.path)) tables.set(table.table.name, { ...table, layer });
      }
    }
  }
  for (const table of [...fieldTables, ...tables.values()]) columnNames(table, places, faults);
  const needs = new Map(sheets.flatMap((sheet) => sheet.needs.map((need) => [need.name, need] as const)));
  return { lines, tables, needs, broken: new Set(sheets.flatMap((sheet) => sheet.brokenNames)) };
}

function sectionsOnce(sheet: ComposedSheet, faults: SheetFault[]): void {
  const own = `${sheet.layer} ${sheet.id}`;
  const seen = new Map<string, string>();
  for (const { id, part } of sheet.sections) {
    const at = part === undefined ? own : `part ${part}`;
    const before = seen.get(id);
    if (before !== undefined)
      faults.push({ path: at, reason: `The section “${id}” stands twice; the other is in ${before}.` });
    seen.set(id, at);
  }
}

function refusalOf(name: string, before: string | undefined): string | undefined {
  if (reserved.has(name)) return `“${name}” is reserved and cannot be a name.`;
  if (isFunction(name)) return `“${name}” is the name of a function.`;
  return before === undefined ? undefined : `The name “${name}” stands already: ${before}.`;
}

function isFunction(name: string): boolean {
  return functionNames.some((known) => known.toLowerCase() === name);
}

function columnNames({ table, path }: DeclaredTable, places: ReadonlyMap<string, string>, faults: SheetFault[]): void {
  const seen = new Set<string>();
  for (const [at, { name }] of table.columns.entries()) {
    const twice = seen.has(name) ? `The column “${name}” stands twice in ${table.name}.` : undefined;
    const taken = places.get(name);
    const clash =
      taken === undefined ? undefined : `A column cannot be called “${name}”: a line or table is, ${taken}.`;
    const reason = twice ?? clash ?? refusalOf(name, undefined);
    if (reason !== undefined) faults.push({ path: `${path}.columns[${at}].name`, reason });
    seen.add(name);
  }
}
