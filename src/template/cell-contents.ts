import type { CellContent } from '../formula/cells.ts';
import type { ValueType } from '../formula/checked-tree.ts';
import type { Scope } from '../formula/scope.ts';
import { unitOf } from '../formula/value-type.ts';
import type { Unit } from '../units/unit.ts';
import type { FormulaReader } from './compile-formula.ts';
import type { ColumnCase, CompiledColumn, CompiledLine } from './compiled-stack.ts';
import type { GivenValue, ProductRow } from './entries.ts';
import type { ColumnFile, LineFile, RowCell } from './line-schema.ts';
import { ownValue } from './own-value.ts';
import type { FaultReporter } from './sheet-fault.ts';
import type { StandingRow } from './table-rows.ts';
import { givenInFile, rowFormulaRefusal, valueRefusal } from './value-refusal.ts';

/** What stands in the cells of lines and rows: a value or a formula, each value checked against what it may be. */
export class CellContents {
  private readonly report: FaultReporter;
  private readonly reader: FormulaReader;
  private readonly products: ReadonlyMap<string, ProductRow>;

  constructor(report: FaultReporter, reader: FormulaReader, products: ReadonlyMap<string, ProductRow>) {
    this.report = report;
    this.reader = reader;
    this.products = products;
  }

  /** Undefined for free text, which no formula reads, and for what was refused. */
  ofLine(line: CompiledLine, given: GivenValue | undefined): CellContent | undefined {
    const { definition, tree, path } = line;
    switch (definition.kind) {
      case 'text':
      case 'words':
        return undefined;
      case 'formula':
      case 'check':
        if (given?.kind === 'instead') return this.held(definition, given, unitOf(line.type), path);
        if (tree?.kind === 'number') return { kind: 'number', value: tree.value };
        return tree && { kind: 'formula', tree };
      default:
        return this.held(definition, given ?? givenInFile(definition, definition.value), unitOf(line.type), path);
    }
  }

  ofCell(
    column: CompiledColumn,
    one: ColumnCase,
    row: StandingRow,
    place: number,
    scope: Scope,
  ): CellContent | undefined {
    const { definition } = column;
    const path = `${row.path}.${definition.name}`;
    const given = row.given.get(definition.name);
    switch (definition.kind) {
      case 'text':
      case 'words':
        return undefined;
      case 'formula':
      case 'check': {
        if (given?.kind === 'instead') return this.held(definition, given, unitOf(one.type), path);
        const tree = place === 0 && one.first !== undefined ? one.first : one.tree;
        return tree && { kind: 'formula', tree };
      }
      case 'operated':
        return { kind: 'result' };
      case 'key': {
        const value = given?.value ?? ownValue(row.cells, definition.name);
        return typeof value === 'string'
          ? this.held(definition, { kind: 'value', value }, undefined, path)
          : this.refuse(path, `“${definition.name}” is missing: every row has its code.`);
      }
      default:
        if (given !== undefined) return this.held(definition, given, unitOf(one.type), path);
        return this.own(definition, ownValue(row.cells, definition.name) ?? definition.default, one.type, path, scope);
    }
  }

  /** What the row gives itself, or the column its rows. */
  private own(
    definition: Extract<ColumnFile, { kind: 'entry' | 'choice' | 'product' }>,
    cell: RowCell | undefined,
    type: ValueType,
    path: string,
    scope: Scope,
  ): CellContent | undefined {
    if (cell === undefined)
      return this.refuse(path, `“${definition.name}” is missing: the row gives none, and the column has no default.`);
    if (typeof cell !== 'object') return this.held(definition, givenInFile(definition, cell), unitOf(type), path);
    const refusal = rowFormulaRefusal(definition);
    if (refusal !== undefined) return this.refuse(path, refusal);
    const tree = this.reader.read(cell.formula, scope, type, path);
    return tree && { kind: 'formula', tree };
  }

  private held(
    definition: LineFile | ColumnFile,
    given: GivenValue,
    unit: Unit | undefined,
    path: string,
  ): CellContent | undefined {
    const refusal = valueRefusal(definition, given, { name: definition.name, unit, products: this.products });
    if (refusal !== undefined) return this.refuse(path, refusal);
    return typeof given.value === 'number'
      ? { kind: 'number', value: given.value }
      : { kind: 'code', value: given.value };
  }

  private refuse(path: string, reason: string): undefined {
    this.report(path, reason);
    return undefined;
  }
}
