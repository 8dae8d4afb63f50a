import { productKey } from '../formula/cells.ts';
import { nearestName } from '../formula/nearest-name.ts';
import { didYouMean } from '../units/nearest-word.ts';
import { onlyCase } from './compiled-stack.ts';
import type { DeclaredTable } from './declared-names.ts';
import type { ColumnFile, RowCell } from './line-schema.ts';
import { ownValue } from './own-value.ts';
import type { FaultReporter } from './sheet-fault.ts';
import { sheetLimits } from './sheet-limits.ts';
import type { TableFile } from './sheet-schema.ts';

type EntryColumn = Extract<ColumnFile, { kind: 'entry' }>;

/** Where a column stands in its file. */
export function columnPath({ table, path }: DeclaredTable, column: ColumnFile): string {
  return `${path}.columns[${table.columns.indexOf(column)}]`;
}

/** Tells keys that are wrong: a table has at most one, and a gathered table begins with the product. */
export function tellKeys(declared: DeclaredTable, report: FaultReporter): void {
  const [first] = declared.table.columns;
  const keys = declared.table.columns.filter((column) => column.kind === 'key');
  for (const second of keys.slice(1)) report(columnPath(declared, second), 'A table has one key column.');
  if (declared.table.rows === 'gathered' && (first?.kind !== 'key' || first.name !== productKey))
    report(`${declared.path}.columns[0]`, `The first column of a gathered table is the key “${productKey}”.`);
}

/** The choice column that units follow; tells what is wrong with it or missing from it. */
export function unitColumnOf(declared: DeclaredTable, report: FaultReporter): string | undefined {
  const { columns } = declared.table;
  const following = columns.filter(
    (column): column is EntryColumn => column.kind === 'entry' && column.unitBy !== undefined,
  );
  const leaders = [...new Set(following.map((column) => column.unitBy?.column ?? ''))];
  const [leader] = leaders;
  if (leader === undefined) return undefined;
  if (leaders.length > 1) report(declared.path, 'The units of one table follow one column.');
  const chosen = columns.find((column) => column.name === leader);
  if (chosen?.kind !== 'choice') {
    report(declared.path, `Units follow a choice column of the same table, and “${leader}” is none.`);
    return undefined;
  }
  if (chosen.options.length > sheetLimits.unitCases)
    report(columnPath(declared, chosen), `Units follow at most ${sheetLimits.unitCases} choices.`);
  const codes = chosen.options.map((option) => option.code);
  for (const column of following) tellUnits(declared, column, codes, report);
  return leader;
}

function tellUnits(
  declared: DeclaredTable,
  column: EntryColumn,
  codes: readonly string[],
  report: FaultReporter,
): void {
  const path = `${columnPath(declared, column)}.unitBy`;
  if (column.unit !== undefined) report(path, 'A column has either “unit” or “unitBy”.');
  const units = column.unitBy?.units ?? {};
  for (const code of codes) if (ownValue(units, code) === undefined) report(path, `The unit for “${code}” is missing.`);
  for (const code of Object.keys(units)) {
    if (!codes.includes(code)) report(`${path}.units.${code}`, `“${code}” is not among ${codes.join(', ')}.`);
  }
}

/** The codes by which the units of a table differ, or the one case of a table whose units are fixed. */
export function unitCasesOf({ table }: DeclaredTable, unitColumn: string | undefined): string[] {
  const column = table.columns.find((candidate) => candidate.name === unitColumn);
  if (column?.kind !== 'choice') return [onlyCase];
  return column.options.slice(0, sheetLimits.unitCases).map((option) => option.code);
}

/** The unit case of a row of which `given` gives the code of the column that units follow, if it gives one. */
export function unitCaseOf(
  columns: readonly ColumnFile[],
  unitColumn: string | undefined,
  given: (column: string) => RowCell | undefined,
): string {
  if (unitColumn === undefined) return onlyCase;
  const column = columns.find((candidate) => candidate.name === unitColumn);
  const standard = column?.kind === 'choice' ? column.default : undefined;
  return String(given(unitColumn) ?? standard ?? onlyCase);
}

/** Tells cells of rows whose column the table has not. */
export function tellUnknownCells({ table, rows, path }: DeclaredTable, report: FaultReporter): void {
  const tell = (cells: object, at: string): void => {
    for (const { name, reason } of unknownCells(table, cells)) report(`${at}.${name}`, reason);
  };
  for (const row of rows) tell(row.cells, row.path);
  tell(table.newRow, `${path}.newRow`);
}

/** What a row gives for columns that its table has not. */
export function unknownCells(table: TableFile, cells: object): { readonly name: string; readonly reason: string }[] {
  const names = table.columns.map((column) => column.name);
  return Object.keys(cells).flatMap((name) => {
    if (names.includes(name) || name === 'label') return [];
    const hint = didYouMean(nearestName(name, names));
    return [{ name, reason: `The table “${table.name}” has no column “${name}”.${hint}` }];
  });
}
