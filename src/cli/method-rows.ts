import type { ColumnFile, RowCell, RowFile } from '../template/line-schema.ts';
import type { TableFile } from '../template/sheet-schema.ts';
import { wordsOfCode } from '../template/table-rows.ts';
import { code, markdownTable, words } from './markdown.ts';
import { unitWords, valueText } from './method-lines.ts';

/** Rows of a sheet's table as a table of the page: what each gives, in the columns some row gives. */
export function rowTable(table: TableFile | undefined, rows: readonly RowFile[]): string[] {
  const key = table?.columns.find(({ kind }) => kind === 'key')?.name;
  const names = [...new Set(rows.flatMap((row) => Object.keys(row)))].filter(
    (name) => name !== key && name !== 'label',
  );
  const columns = names.map((name) => table?.columns.find((column) => column.name === name));
  const headed = names.map((name, at) => {
    const unit = fixedUnit(columns[at]);
    return code(name) + (unit === '' ? '' : ` (${unit})`);
  });
  const laid = rows.map((row, place) => [
    rowName(row, key, place),
    ...names.map((name, at) => cellText(row[name], columns[at], { ...table?.newRow, ...row }, table)),
  ]);
  return markdownTable(['Row', ...headed], laid);
}

/** What a new row of the table is given: `include` 1, `people` 2. Empty when nothing is. */
export function newRowWords(table: TableFile): string {
  return Object.entries(table.newRow)
    .map(([name, cell]) => {
      const column = table.columns.find((each) => each.name === name);
      const unit = fixedUnit(column);
      return `${code(name)} ${cellText(cell, column, table.newRow, table)}${unit === '' ? '' : ` ${unit}`}`;
    })
    .join(', ');
}

function rowName(row: RowFile, key: string | undefined, place: number): string {
  const own = key === undefined ? undefined : row[key];
  const name = typeof own === 'string' ? own : `row_${place + 1}`;
  return `${words(typeof row.label === 'string' ? row.label : wordsOfCode(name))} ${code(name)}`;
}

function cellText(
  cell: RowCell | undefined,
  column: ColumnFile | undefined,
  row: RowFile,
  table: TableFile | undefined,
): string {
  if (cell === undefined) return '';
  if (typeof cell === 'object') return code(cell.formula);
  if (column?.kind === 'text' || column?.kind === 'words') return words(cell.toString());
  if (column?.kind !== 'entry') return typeof cell === 'number' ? valueText(cell, undefined) : code(cell);
  if (column.yesNo === true) return cell === 1 ? 'yes' : 'no';
  const unit = unitInRow(column, row, table);
  const shown = valueText(cell, unit);
  return column.unitBy === undefined ? shown : [shown, unitWords(unit)].join(' ').trim();
}

/** The unit that holds in every row: that of the column, shares included. */
function fixedUnit(column: ColumnFile | undefined): string {
  return column?.kind === 'entry' && column.unit !== 'date' ? unitWords(column.unit) : '';
}

function unitInRow(
  column: Extract<ColumnFile, { kind: 'entry' }>,
  row: RowFile,
  table: TableFile | undefined,
): string | undefined {
  const by = column.unitBy;
  if (by === undefined) return column.unit;
  const leader = table?.columns.find(({ name }) => name === by.column);
  const chosen = row[by.column] ?? (leader?.kind === 'choice' ? leader.default : undefined);
  return typeof chosen === 'string' ? by.units[chosen] : undefined;
}
