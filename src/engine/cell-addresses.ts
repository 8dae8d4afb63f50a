import { columnName } from '../formula/cell-name.ts';
import type { PlainPlan } from '../formula/cells.ts';

/** Names begin with a letter, so no table can have this one. */
const linesSheet = '_lines';

/**
 * One HyperFormula sheet: its columns, each the cell indices of its rows. An empty table has columns of no cells; what an
 * operator gives fills its sheet from the one cell on.
 */
interface SheetPlan {
  readonly name: string;
  readonly columns: readonly (readonly number[])[];
}

/** Counted from 0, as HyperFormula does. */
interface CellAddress {
  readonly sheet: number;
  readonly col: number;
  readonly row: number;
}

/**
 * Where every cell of a plan stands: all lines in one column of one sheet, each table in a sheet of its own with one
 * column a field. Users never see an address.
 */
export interface CellAddresses {
  readonly sheets: readonly SheetPlan[];
  /** The address of a cell. */
  of(cell: number): CellAddress;
  /** The cell at an address, if there is one. */
  cellAt(address: CellAddress): number | undefined;
  /** Example: `'coats'!$B$3`. */
  cellText(cell: number): string;
  /** The cells of a column, or of a line, as one range. */
  rangeText(cells: readonly number[]): string;
  /** Where an operator leaves what it gives for a result column and a row. */
  outputText(operator: number, column: number, row: number): string;
  /** The first `rows` rows of a table's column. Example: `'coats'!$B$1:$B$3`. An empty one spans a blank row. */
  columnText(table: string, column: string, rows: number): string;
}

export function addressCells(plan: PlainPlan): CellAddresses {
  const sheets = sheetsOf(plan);
  const addresses: CellAddress[] = [];
  for (const [sheet, { columns }] of sheets.entries()) {
    for (const [col, cells] of columns.entries()) {
      for (const [row, cell] of cells.entries()) addresses[cell] = { sheet, col, row };
    }
  }
  const columnStarts = new Map<string, { readonly sheet: number; readonly col: number }>();
  for (const [i, [table, { columns }]] of [...plan.tables].entries()) {
    // The lines' sheet comes before the tables'.
    for (const [col, column] of [...columns.keys()].entries()) {
      columnStarts.set(columnName(table, column), { sheet: i + 1, col });
    }
  }
  const sheetText = (sheet: number) => `'${sheets[sheet]?.name ?? fail(`no sheet ${sheet}`)}'!`;
  const of = (cell: number) => addresses[cell] ?? fail(`cell ${cell} stands in no line and no table`);
  const addressText = ({ sheet, col, row }: CellAddress) => `${sheetText(sheet)}$${columnLetters(col)}$${row + 1}`;
  return {
    sheets,
    of,
    cellAt: ({ sheet, col, row }) => sheets[sheet]?.columns[col]?.[row],
    cellText: (cell) => addressText(of(cell)),
    rangeText(cells) {
      const { sheet, col, row } = of(cells[0] ?? fail('an empty range'));
      return `${addressText({ sheet, col, row })}:$${columnLetters(col)}$${row + cells.length}`;
    },
    outputText(operator, column, row) {
      const start = of(operator);
      return addressText({ sheet: start.sheet, col: start.col + column, row: start.row + row });
    },
    columnText(table, column, rows) {
      const start = columnStarts.get(columnName(table, column)) ?? fail(`no column ${columnName(table, column)}`);
      const letters = columnLetters(start.col);
      return `${sheetText(start.sheet)}$${letters}$1:$${letters}$${Math.max(rows, 1)}`;
    },
  };
}

/** Example: `columnLetters(0)` → `A`, `columnLetters(27)` → `AB`. */
export function columnLetters(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : columnLetters(Math.floor(column / 26) - 1) + last;
}

function sheetsOf(plan: PlainPlan): readonly SheetPlan[] {
  const lines: SheetPlan = { name: linesSheet, columns: [[...plan.lines.values()]] };
  const tables = [...plan.tables].map(([name, table]) => ({ name, columns: [...table.columns.values()] }));
  const operators = [...plan.operators].map(([table, { cell }]) => ({ name: `_${table}`, columns: [[cell]] }));
  return [lines, ...tables, ...operators];
}

function fail(reason: string): never {
  throw new Error(`cell plan: ${reason}`);
}
