import { columnName } from '../formula/cell-name.ts';
import type { CellValue, Failure } from '../formula/cells.ts';
import type { ValueType } from '../formula/checked-tree.ts';
import { nameOfCell } from '../quote/named-cell.ts';
import { cellOfColumn, cellOfLine, writtenLine } from '../quote/option-results.ts';
import { toldText } from '../quote/said-texts.ts';
import { toldChecks } from '../quote/told-checks.ts';
import { type CompiledLine, type CompiledTable, caseOf } from '../template/compiled-stack.ts';
import { standingRows } from '../template/table-rows.ts';
import { writtenIn } from '../template/written-words.ts';
import { isDated, isSerialDay, writeIsoDate } from '../units/serial-day.ts';
import { failureWords } from './failure-words.ts';
import type { PricedSystem } from './price-systems.ts';

/**
 * A number's 15 digits, a code or text, a truth, a date as ISO text, a text as it is told; null for no date, for a text that is not told
 * and for a number that failed.
 */
type JsonValue = number | string | boolean | null;

interface JsonLine {
  readonly value: JsonValue;
  /** Why there is no value. */
  readonly failure?: string;
  /** As declared; null for what has none. */
  readonly unit: string | null;
  /** The formula's source text; null for what is entered. */
  readonly formula: string | null;
}

interface JsonSheet {
  readonly lines: Readonly<Record<string, JsonLine>>;
  readonly tables: Readonly<Record<string, readonly Readonly<Record<string, JsonValue>>[]>>;
  /** Why cells have no value, by `table.row.column`; left out when all have. */
  readonly failures?: Readonly<Record<string, string>>;
  readonly checks: readonly object[];
}

type SheetLayer = 'shop' | 'floor' | 'system';

/** Every line, table and check of the systems' sheets, each under its own sheet; shop and floor are shared. */
export function jsonOutput(systems: readonly PricedSystem[]): string {
  const [first] = systems;
  const shared = first === undefined ? {} : { shop: jsonSheet(first, 'shop'), floor: jsonSheet(first, 'floor') };
  const own = Object.fromEntries(systems.map((system) => [system.sheet.id, jsonSheet(system, 'system')]));
  return `${JSON.stringify({ ...shared, ...own }, undefined, 2)}\n`;
}

function jsonSheet(system: PricedSystem, layer: SheetLayer): JsonSheet {
  const { stack } = system.results;
  const failures: Record<string, string> = {};
  const lines = [...stack.lines].filter(([, line]) => line.layer === layer);
  const tables = [...stack.tables].filter(([, table]) => table.layer === layer);
  const checks = toldChecks(system.results).filter((check) => check.layer === layer);
  const sheet = {
    lines: Object.fromEntries(lines.map(([name, line]) => [name, jsonLine(system, line)])),
    tables: Object.fromEntries(tables.map(([name, table]) => [name, jsonRows(system, table, failures)])),
    checks: checks.map((check) => ({
      name: check.name,
      severity: check.severity,
      absolute: check.absolute,
      verdict: check.verdict,
      says: check.says,
      ...(check.source !== undefined && { source: check.source }),
    })),
  };
  return Object.keys(failures).length === 0 ? sheet : { ...sheet, failures };
}

function jsonLine({ results }: PricedSystem, { definition, type }: CompiledLine): JsonLine {
  const { kind, name } = definition;
  if (kind === 'text') return { value: toldText(results, name) ?? null, unit: null, formula: null };
  if (kind === 'words') return { value: writtenLine(results, name), unit: null, formula: null };
  const cell = cellOfLine(results, name);
  if (cell === undefined) throw new Error(`The option has no line ${name}`);
  const value = results.read(cell);
  const failure = failureIn(value, type, (failed) => failureWords(results, failed));
  return {
    value: jsonValue(value, type),
    ...(failure !== undefined && { failure }),
    unit: kind === 'entry' || kind === 'formula' ? (definition.unit ?? null) : null,
    formula: kind === 'formula' ? definition.formula : kind === 'check' ? definition.check : null,
  };
}

function jsonRows(
  { results, entries }: PricedSystem,
  table: CompiledTable,
  failures: Record<string, string>,
): Readonly<Record<string, JsonValue>>[] {
  const { name } = table.definition;
  const rows = results.option.rows.get(name) ?? [];
  const standing = new Map(standingRows(table, entries.tables.get(name)).map((row) => [row.id, row.cells]));
  return rows.map(({ id, unitCase }, row) => {
    const cells = [...table.columns].map(([column, compiled]): [string, JsonValue] => {
      const { definition } = compiled;
      if (definition.kind === 'text') {
        const own = standing.get(id)?.[column];
        return [column, typeof own === 'string' ? own : definition.text];
      }
      if (definition.kind === 'words') return [column, writtenIn(results.option.written, name, column, row) ?? ''];
      const cell = cellOfColumn(results, name, column, row);
      const type = caseOf(compiled, unitCase)?.type;
      if (cell === undefined || type === undefined)
        throw new Error(`The option has no column ${columnName(name, column)}`);
      const value = results.read(cell);
      const failure = failureIn(value, type, (failed) => failureWords(results, failed));
      if (failure !== undefined)
        failures[nameOfCell(results.option, { kind: 'cell', table: name, column, row })] = failure;
      return [column, jsonValue(value, type)];
    });
    return Object.fromEntries(cells);
  });
}

function jsonValue(value: CellValue, type: ValueType): JsonValue {
  if (typeof value === 'object') return null;
  if (typeof value !== 'number' || !isDate(type)) return value;
  return isDated(value) ? writeIsoDate(value) : null;
}

function failureIn(value: CellValue, type: ValueType, say: (failure: Failure) => string): string | undefined {
  if (typeof value === 'object') return say(value);
  return typeof value === 'number' && isDate(type) && !isSerialDay(value) ? `${value} is no date.` : undefined;
}

function isDate(type: ValueType): boolean {
  return type.kind === 'number' && type.unit.text === 'date';
}
