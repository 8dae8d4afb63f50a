import {
  type ConfigParams,
  DetailedCellError,
  ErrorType,
  type CellValue as Exported,
  ExportedCellChange,
  HyperFormula,
  type RawCellContent,
} from 'hyperformula';
import { placeText } from '../formula/cell-name.ts';
import { type CellValue, type PlainPlan, type PlannedCell, sameValue } from '../formula/cells.ts';
import type { FailureKind } from '../formula/failure-kind.ts';
import { addressCells, type CellAddresses } from './cell-addresses.ts';
import { ColumnFunctions } from './column-functions.ts';
import { codeContent, formulaText, operatorText, resultText } from './emit-cell.ts';
import { OperatorFunctions } from './operator-functions.ts';
import { unknownCell, type Workbook } from './option-workbook.ts';
import { RoundingFunctions } from './rounding-functions.ts';
import { TakenArms } from './taken-arms.ts';

// Static, and once: the `functionPlugins` option would drop every other function.
HyperFormula.registerFunctionPlugin(RoundingFunctions);
HyperFormula.registerFunctionPlugin(ColumnFunctions);
HyperFormula.registerFunctionPlugin(TakenArms);
HyperFormula.registerFunctionPlugin(OperatorFunctions, OperatorFunctions.translations);

/** Builds and works out a plan. Throws on what only a bug can make: a cycle, an unknown name, a value of the wrong type. */
export function openWorkbook(plan: PlainPlan): Workbook {
  const addresses = addressCells(plan);
  const engine = HyperFormula.buildFromSheets(sheetContents(plan, addresses), configFor(addresses));
  const read = (exported: Exported, cell: number) => cellValue(exported, cell, engine, plan, addresses);
  const values = plan.cells.map((_, cell) => read(engine.getCellValue(addresses.of(cell)), cell));

  const setValues = (entries: ReadonlyMap<number, number | string>) => {
    const changes = engine.batch(() => {
      for (const [cell, value] of entries) engine.setCellContents(addresses.of(cell), valueContent(value));
    });
    const changed: number[] = [];
    for (const change of changes) {
      const cell = change instanceof ExportedCellChange ? addresses.cellAt(change.address) : undefined;
      if (cell === undefined || !(change instanceof ExportedCellChange)) continue;
      const value = read(change.newValue, cell);
      if (sameValue(value, values[cell])) continue;
      values[cell] = value;
      changed.push(cell);
    }
    return changed;
  };

  return {
    value: (cell) => values[cell] ?? unknownCell(cell),
    values: () => [...values],
    setValue: (cell, value) => setValues(new Map([[cell, value]])),
    setValues,
    close: () => engine.destroy(),
  };
}

/** `precisionRounding: 14` reads 15 digits; wildcards could freeze the page; the sheets never grow. */
function configFor(addresses: CellAddresses): Partial<ConfigParams> {
  const columns = addresses.sheets.flatMap((sheet) => sheet.columns);
  return {
    licenseKey: 'gpl-v3',
    precisionRounding: 14,
    smartRounding: true,
    useWildcards: false,
    useRegularExpressions: false,
    matchWholeCell: true,
    evaluateNullToZero: true,
    undoLimit: 0,
    maxRows: Math.max(1, ...columns.map((cells) => cells.length)),
    maxColumns: Math.max(1, ...addresses.sheets.map((sheet) => sheet.columns.length)),
  };
}

function sheetContents(plan: PlainPlan, addresses: CellAddresses): Record<string, RawCellContent[][]> {
  const contents: Record<string, RawCellContent[][]> = {};
  for (const { name, columns } of addresses.sheets) {
    const rows = Math.max(0, ...columns.map((cells) => cells.length));
    contents[name] = Array.from({ length: rows }, (_, row) =>
      columns.map((cells) => contentOf(plan.cells[cells[row] ?? -1], plan, addresses)),
    );
  }
  return contents;
}

function contentOf(cell: PlannedCell | undefined, plan: PlainPlan, addresses: CellAddresses): RawCellContent {
  if (cell === undefined) return null;
  const { content } = cell;
  switch (content.kind) {
    case 'number':
    case 'code':
      return valueContent(content.value);
    case 'formula':
      return formulaText(content.tree, cell.place, plan, addresses);
    case 'operator':
      return operatorText(content.table, plan, addresses);
    case 'result':
      return resultText(cell.place, plan, addresses);
    default:
      return content satisfies never;
  }
}

function valueContent(value: number | string): RawCellContent {
  if (typeof value === 'string') return codeContent(value);
  if (!Number.isFinite(value)) throw new Error(`a cell cannot hold the number ${value}`);
  return value;
}

function cellValue(
  exported: Exported,
  cell: number,
  engine: HyperFormula,
  plan: PlainPlan,
  addresses: CellAddresses,
): CellValue {
  if (plan.cells[cell]?.content.kind === 'operator') return 0;
  if (exported instanceof DetailedCellError) {
    const kind = failureKind(exported);
    if (kind === undefined) throw brokenCell(plan, cell, `gave ${exported.value} ${exported.message}`);
    const origin = engine.simpleCellAddressFromString(exported.address ?? '', 0);
    return { kind, origin: (origin && addresses.cellAt(origin)) ?? cell };
  }
  if (exported === null) throw brokenCell(plan, cell, 'is empty');
  if (typeof exported !== 'number') return exported;
  // HyperFormula's reading of a size below 1e-294 is no number, and of the largest it is infinite.
  if (Number.isNaN(exported)) return 0;
  if (!Number.isFinite(exported)) return { kind: 'undefined', origin: cell };
  // Its reading of a size below 1e-8 can be a neighbour of the double that those 15 digits name.
  return Number(exported.toPrecision(15));
}

/** Undefined for what only a bug in this program can make. */
function failureKind(error: DetailedCellError): FailureKind | undefined {
  switch (error.type) {
    case ErrorType.DIV_BY_ZERO:
      return 'division';
    case ErrorType.NA:
      return 'notFound';
    case ErrorType.REF:
      return 'outside';
    case ErrorType.NUM:
      return 'undefined';
    default:
      // DATE before the year 1582.
      return error.type === ErrorType.VALUE && error.message === 'Invalid date.' ? 'undefined' : undefined;
  }
}

function brokenCell(plan: PlainPlan, cell: number, reason: string): Error {
  const planned = plan.cells[cell];
  return new Error(`${planned ? placeText(planned.place) : `cell ${cell}`} ${reason}`);
}
