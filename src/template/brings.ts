import { codeRefusal } from '../formula/code-text.ts';
import { nearestName } from '../formula/nearest-name.ts';
import { didYouMean } from '../units/nearest-word.ts';
import { setRefusal } from './apply-set.ts';
import type { DeclaredNames, DeclaredTable } from './declared-names.ts';
import { filledRow, hole, type RowPlace } from './filled-rows.ts';
import type { ColumnFile, RowCell, RowFile } from './line-schema.ts';
import { ownValue } from './own-value.ts';
import { noRow } from './row-choices.ts';
import type { FaultReporter } from './sheet-fault.ts';
import type { Brought } from './sheet-schema.ts';
import { unknownCells } from './table-shape.ts';
import { rowFormulaRefusal } from './value-refusal.ts';

/** Reads the formulas that a row gives, telling what is wrong in them. */
export type RowReader = (table: DeclaredTable, cells: RowFile, path: string) => void;

/**
 * Tells what is wrong with the rows of other tables that a table brings (`brings`), filled for a row of its own. Those for
 * a table that another part has are judged when a system places both.
 */
export function tellBrings(
  declared: DeclaredTable,
  names: DeclaredNames,
  report: FaultReporter,
  read: RowReader,
): void {
  const key = keyOf(declared);
  declared.table.brings.forEach((brings, at) => {
    const path = `${declared.path}.brings[${at}]`;
    const target = names.tables.get(brings.table);
    const refusal = targetRefusal(brings.table, declared, target, names);
    if (refusal !== undefined) report(path, refusal);
    const { aboveIf } = brings;
    const above = declared.table.columns.find(({ name }) => name === aboveIf);
    if (aboveIf !== undefined && above?.kind !== 'entry')
      report(`${path}.aboveIf`, `“${aboveIf}” is no entry of “${declared.table.name}”.`);
    if (refusal === undefined && target !== undefined && key !== undefined)
      new RowTeller(declared, target, key, report, read).tell(brings, path);
  });
}

function keyOf({ table }: DeclaredTable): string | undefined {
  return table.columns.find((column) => column.kind === 'key')?.name;
}

function targetRefusal(
  name: string,
  declared: DeclaredTable,
  target: DeclaredTable | undefined,
  names: DeclaredNames,
): string | undefined {
  if (declared.table.rows !== 'free' || keyOf(declared) === undefined)
    return 'Rows that bring others are of a free table with a key.';
  if (target === undefined) {
    if (declared.layer === 'part' || names.broken.has(name)) return undefined;
    return `There is no table “${name}” in this sheet.${didYouMean(nearestName(name, names.tables.keys()))}`;
  }
  if (
    target !== declared &&
    target.layer === declared.layer &&
    target.table.rows === 'free' &&
    keyOf(target) !== undefined
  )
    return undefined;
  return `“${name}” is no other table of this sheet that is free and has a key.`;
}

class RowTeller {
  private readonly own: string;
  private readonly target: DeclaredTable;
  private readonly key: string;
  private readonly sample: RowPlace;
  private readonly report: FaultReporter;
  private readonly read: RowReader;

  constructor(declared: DeclaredTable, target: DeclaredTable, key: string, report: FaultReporter, read: RowReader) {
    this.own = declared.table.name;
    this.target = target;
    this.key = key;
    this.sample = { id: `${key}_0`, key, code: `${key}_0`, label: 'Added', above: noRow };
    this.report = report;
    this.read = read;
  }

  tell({ rows, asAbove = [] }: Brought, path: string): void {
    const columns = this.target.table.columns;
    for (const [at, name] of asAbove.entries()) {
      const kind = columns.find((column) => column.name === name)?.kind;
      if (kind !== 'entry' && kind !== 'choice' && kind !== 'product')
        this.report(
          `${path}.asAbove[${at}]`,
          `“${name}” is no column of “${this.target.table.name}” that a row gives.`,
        );
    }
    for (const [at, row] of rows.entries()) this.row(row, `${path}.rows[${at}]`);
  }

  private row(row: RowFile, path: string): void {
    const targetKey = keyOf(this.target) ?? '';
    const code = ownValue(row, targetKey);
    if (
      typeof code !== 'string' ||
      !code.includes(`{${this.key}}`) ||
      code.includes('{above}') ||
      code.includes('{label}')
    )
      this.report(`${path}.${targetKey}`, `The code of a row that comes with another has “{${this.key}}” in it.`);
    for (const { name, reason } of unknownCells(this.target.table, row)) this.report(`${path}.${name}`, reason);
    const filled = filledRow(row, this.sample);
    for (const column of this.target.table.columns) {
      const cell = ownValue(filled, column.name);
      const refusal = cell === undefined ? undefined : this.refusal(column, cell);
      if (refusal !== undefined) this.report(`${path}.${column.name}`, refusal);
    }
    for (const [name, cell] of Object.entries(filled)) this.holes(cell, `${path}.${name}`);
    this.read(this.target, filled, path);
  }

  private refusal(column: ColumnFile, cell: RowCell): string | undefined {
    if (typeof cell === 'object') return rowFormulaRefusal(column);
    if (column.kind === 'key') return codeRefusal(String(cell));
    const ofOwn = column.kind === 'choice' && column.rowOf === this.own;
    return ofOwn && (cell === this.sample.code || cell === noRow) ? undefined : setRefusal(column, cell);
  }

  private holes(cell: RowCell, path: string): void {
    if (typeof cell === 'number') return;
    const text = typeof cell === 'string' ? cell : cell.formula;
    for (const [unknown] of text.matchAll(hole))
      this.report(path, `There is no “${unknown}” here; there are {${this.key}}, {above} and {label}.`);
  }
}
