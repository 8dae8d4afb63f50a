import type { PlannedTable } from '../formula/cells.ts';
import type { ValueType } from '../formula/checked-tree.ts';
import type { OperatorName } from '../formula/operator.ts';
import { parseUnit, sameUnit } from '../units/unit.ts';
import type { DeclaredTable } from './declared-names.ts';
import { codes, type OperatorContract, type OperatorRead, readText } from './operator-contract.ts';
import { scheduleContract } from './schedule-operator.ts';
import type { ScopeMaker } from './scope-maker.ts';
import type { FaultReporter } from './sheet-fault.ts';
import { columnPath } from './table-shape.ts';

const contracts: Readonly<Record<OperatorName, OperatorContract>> = { schedule: scheduleContract };

export function contractOf(name: OperatorName): OperatorContract {
  return contracts[name];
}

/** The cells of what an operator reads; undefined where the option has none such. */
export function inputCells(
  read: OperatorRead,
  own: string,
  lines: ReadonlyMap<string, number>,
  tables: ReadonlyMap<string, PlannedTable>,
): readonly number[] | undefined {
  if (read.kind === 'column') return tables.get(read.table ?? own)?.columns.get(read.column);
  const cell = lines.get(read.line);
  return cell === undefined ? undefined : [cell];
}

/** Tells what a table lacks that its operator reads or gives, and columns that say they come from another one. */
export function tellOperator(declared: DeclaredTable, scope: ScopeMaker, report: FaultReporter): void {
  const { name, by, columns } = declared.table;
  const given = columns.filter((column) => column.kind === 'operated');
  for (const column of given)
    if (column.by !== by)
      report(`${columnPath(declared, column)}.by`, `The table “${name}” is not by the ${column.by}.`);
  if (by === undefined) return;
  const { reads, gives } = contractOf(by);
  const names = scope(declared.layer, { table: name, unitCase: '', mayReadAbove: false });
  for (const read of reads) {
    const found = read.kind === 'line' ? names.line(read.line) : names.table(read.table ?? name)?.column(read.column);
    const type = found === undefined || !('type' in found) ? undefined : found.type;
    if (type === undefined || !isOf(type, read.unit))
      report(`${declared.path}.by`, `The ${by} reads ${readText(read)}.`);
  }
  for (const { column, unit } of gives)
    if (!given.some((each) => each.name === column && (each.unit ?? codes) === unit))
      report(
        `${declared.path}.by`,
        `The ${by} gives “${column}” in ${unit}; a column of that name is wanted, with “by”.`,
      );
  for (const column of given)
    if (!gives.some((result) => result.column === column.name))
      report(columnPath(declared, column), `The ${by} gives no “${column.name}”.`);
}

function isOf(type: ValueType, unit: string): boolean {
  if (type.kind === 'faulty') return true;
  if (type.kind === 'code') return unit === codes;
  const wanted = parseUnit(unit);
  return type.kind === 'number' && wanted.kind === 'unit' && sameUnit(type.unit, wanted.unit);
}
