import { eitherCode } from '../formula/arms.ts';
import { columnName, type NamedColumn, printCellName } from '../formula/cell-name.ts';
import type { Checked, ValueType } from '../formula/checked-tree.ts';
import { nearestName } from '../formula/nearest-name.ts';
import { parseFormula } from '../formula/parser.ts';
import type { Expression } from '../formula/tree.ts';
import { didYouMean } from '../units/nearest-word.ts';
import { tellBrings } from './brings.ts';
import type { FormulaReader } from './compile-formula.ts';
import type { ColumnCase, CompiledColumn, CompiledTable, ProductFields } from './compiled-stack.ts';
import type { DeclaredNames, DeclaredTable } from './declared-names.ts';
import type { ColumnFile, RowFile } from './line-schema.ts';
import { ownValue } from './own-value.ts';
import { readSay } from './say.ts';
import type { ScopeMaker } from './scope-maker.ts';
import type { FaultReporter } from './sheet-fault.ts';
import type { Layer } from './sheet-schema.ts';
import { columnPath, tellKeys, tellUnknownCells, unitCaseOf, unitCasesOf, unitColumnOf } from './table-shape.ts';

type FormulaColumn = Extract<ColumnFile, { kind: 'formula' }>;
type CheckColumn = Extract<ColumnFile, { kind: 'check' }>;
type EntryColumn = Extract<ColumnFile, { kind: 'entry' }>;

/** Formulas that give codes may lead to each other this deep and still be known by their codes. */
export const deepestCodes = 50;

/** Compiles the columns of tables, once for each unit a row may have. */
export class ColumnCompiler {
  private readonly declared: DeclaredNames;
  private readonly products: ProductFields;
  private readonly reader: FormulaReader;
  private readonly report: FaultReporter;
  private readonly scope: ScopeMaker;
  private readonly types = new Map<string, ValueType>();
  private codesUnderWay = 0;

  constructor(
    declared: DeclaredNames,
    products: ProductFields,
    reader: FormulaReader,
    report: FaultReporter,
    scope: ScopeMaker,
  ) {
    this.declared = declared;
    this.products = products;
    this.reader = reader;
    this.report = report;
    this.scope = scope;
  }

  table(declared: DeclaredTable): CompiledTable {
    const { table, layer, path } = declared;
    tellKeys(declared, this.report);
    const key = table.columns.find((column) => column.kind === 'key')?.name;
    const unitColumn = unitColumnOf(declared, this.report);
    const cases = unitCasesOf(declared, unitColumn);
    const columns = new Map(table.columns.map((column) => [column.name, this.column(declared, column, cases)]));
    const gather = table.gather.filter((column, at) => this.isGathered(column, layer, `${path}.gather[${at}]`));
    this.soldByOne(declared);
    tellUnknownCells(declared, this.report);
    for (const row of declared.rows) this.rowFormulas(declared, row.cells, row.path, unitColumn);
    this.rowFormulas(declared, table.newRow, `${path}.newRow`, unitColumn);
    tellBrings(declared, this.declared, this.report, (target, cells, at) =>
      this.rowFormulas(target, cells, at, unitColumnOf(target, this.report)),
    );
    return {
      definition: table,
      layer,
      path,
      columns,
      rows: declared.rows,
      gather,
      ...(key !== undefined && { key }),
      ...(unitColumn !== undefined && { unitColumn }),
    };
  }

  /** The type of one cell of a column, in rows of the given unit case. */
  typeOf(table: DeclaredTable, column: ColumnFile, unitCase: string): ValueType {
    const name = `${columnName(table.table.name, column.name)}\n${unitCase}`;
    const known = this.types.get(name);
    if (known !== undefined) return known;
    const codeFormula = column.kind === 'formula' && column.code === true;
    const type = codeFormula
      ? this.codeType(table, column, unitCase, name)
      : this.declaredType(table, column, unitCase);
    this.types.set(name, type);
    return type;
  }

  private declaredType(table: DeclaredTable, column: ColumnFile, unitCase: string): ValueType {
    const path = columnPath(table, column);
    switch (column.kind) {
      case 'text':
      case 'words':
      case 'check':
        return { kind: 'truth' };
      case 'key':
        return this.keyType(table);
      case 'choice':
        return { kind: 'code', codes: column.options.map((option) => option.code) };
      case 'product':
        return this.productType(column.accepts, `${path}.accepts`);
      case 'entry':
        return this.entryType(column, unitCase, path);
      case 'operated':
        return column.options === undefined
          ? this.reader.numberType(column.unit, `${path}.unit`)
          : { kind: 'code', codes: column.options.map((option) => option.code) };
      case 'formula':
        return column.code ? { kind: 'code' } : this.reader.numberType(column.unit, `${path}.unit`);
      default:
        return column satisfies never;
    }
  }

  /** The type of a product line or column that accepts these kinds, which must be sold by one measure. */
  productType(accepts: readonly string[], path: string): ValueType {
    const unknown = accepts.filter((kind) => !this.products.kinds.has(kind));
    for (const kind of unknown) {
      const near = nearestName(kind, this.products.kinds.keys());
      this.report(path, `There is no kind of product “${kind}”.${didYouMean(near)}`);
    }
    const soldBy = new Set(accepts.map((kind) => this.products.kinds.get(kind)?.soldBy));
    if (unknown.length === 0 && soldBy.size > 1)
      this.report(path, 'The kinds accepted here are not all sold by one measure.');
    return unknown.length > 0 ? { kind: 'faulty' } : { kind: 'code', products: accepts };
  }

  private keyType(declared: DeclaredTable): ValueType {
    if (declared.table.rows === 'gathered') return { kind: 'code', products: this.gatheredKinds(declared) };
    if (declared.table.rows === 'fixed') return { kind: 'code', codes: declared.rows.map((row) => row.id) };
    return { kind: 'code' };
  }

  private entryType(column: EntryColumn, unitCase: string, path: string): ValueType {
    if (column.unitBy === undefined) return this.reader.numberType(column.unit, `${path}.unit`);
    const unit = ownValue(column.unitBy.units, unitCase) ?? Object.values(column.unitBy.units)[0];
    return this.reader.numberType(unit, `${path}.unitBy`);
  }

  /** A formula that gives a code has the codes of its arms; one that leads back to itself is told as a cycle later. */
  private codeType(table: DeclaredTable, column: FormulaColumn, unitCase: string, name: string): ValueType {
    const unknown: ValueType = { kind: 'code' };
    if (this.codesUnderWay >= deepestCodes) return unknown;
    this.types.set(name, unknown);
    this.codesUnderWay += 1;
    const { tree, first } = this.formulaTrees(table, column, unitCase, unknown);
    this.codesUnderWay -= 1;
    if (tree === undefined || (column.first !== undefined && first === undefined)) return { kind: 'faulty' };
    return first === undefined ? tree.type : eitherCode(tree.type, first.type);
  }

  private column(table: DeclaredTable, definition: ColumnFile, cases: readonly string[]): CompiledColumn {
    const mixedUnits = definition.kind === 'entry' && definition.unitBy !== undefined;
    const compiled = new Map<string, ColumnCase>();
    for (const unitCase of cases) compiled.set(unitCase, this.columnCase(table, definition, unitCase));
    return { definition, cases: compiled, mixedUnits };
  }

  private columnCase(table: DeclaredTable, column: ColumnFile, unitCase: string): ColumnCase {
    const type = this.typeOf(table, column, unitCase);
    if (column.kind !== 'formula' && column.kind !== 'check') return { type };
    const wanted: ValueType = column.kind === 'check' ? { kind: 'truth' } : type;
    const trees = this.formulaTrees(table, column, unitCase, wanted);
    const path = columnPath(table, column);
    if (column.first === undefined && readsAbove(column.kind === 'check' ? column.check : column.formula))
      this.report(`${path}.first`, 'A formula that reads “above” needs “first”, the formula of row one.');
    if (column.kind !== 'check') return { type, ...trees };
    const scope = this.scope(table.layer, { table: table.table.name, unitCase, mayReadAbove: false });
    return { type, ...trees, say: readSay(column.say, scope, this.reader, `${path}.say`) };
  }

  /** The formula of a column in rows of one unit case, and that of row one. */
  private formulaTrees(
    table: DeclaredTable,
    column: FormulaColumn | CheckColumn,
    unitCase: string,
    wanted: ValueType,
  ): { tree?: Checked; first?: Checked } {
    const at = { table: table.table.name, unitCase };
    const path = columnPath(table, column);
    const text = column.kind === 'check' ? column.check : column.formula;
    const scope = this.scope(table.layer, { ...at, mayReadAbove: true });
    const tree = this.reader.read(text, scope, wanted, `${path}.${column.kind}`);
    const firstScope = this.scope(table.layer, { ...at, mayReadAbove: false });
    const first =
      column.first === undefined ? undefined : this.reader.read(column.first, firstScope, wanted, `${path}.first`);
    return { ...(tree && { tree }), ...(first && { first }) };
  }

  /** Reads the formulas that a row of the sheet brings, so that their faults are told with the rest. */
  private rowFormulas(table: DeclaredTable, cells: RowFile, path: string, unitColumn: string | undefined): void {
    for (const column of table.table.columns) {
      const cell = ownValue(cells, column.name);
      if (typeof cell !== 'object' || column.kind !== 'entry' || !column.perRow) continue;
      const unitCase = unitCaseOf(table.table.columns, unitColumn, (name) => ownValue(cells, name));
      const scope = this.scope(table.layer, { table: table.table.name, unitCase, mayReadAbove: false });
      this.reader.read(cell.formula, scope, this.typeOf(table, column, unitCase), `${path}.${column.name}`);
    }
  }

  private isGathered(named: NamedColumn, layer: Layer, path: string): boolean {
    const { table, column } = named;
    const text = printCellName(named);
    const source = this.declared.tables.get(table);
    const found = source?.table.columns.find((candidate) => candidate.name === column);
    const needed = source === undefined && this.declared.needs.get(text)?.kind === 'product';
    if ((found?.kind === 'product' && source?.layer === layer) || needed) return true;
    if (!this.declared.broken.has(table)) this.report(path, `“${text}” is not a product column of this sheet.`);
    return false;
  }

  private soldByOne(declared: DeclaredTable): void {
    const soldBy = new Set(this.gatheredKinds(declared).map((kind) => this.products.kinds.get(kind)?.soldBy));
    soldBy.delete(undefined);
    if (soldBy.size < 2) return;
    const words = [...soldBy].join(' and by ');
    this.report(`${declared.path}.gather`, `Products sold by ${words} cannot be bought in one table.`);
  }

  private gatheredKinds({ table }: DeclaredTable): string[] {
    const kinds = table.gather.flatMap((named) => {
      const columns = this.declared.tables.get(named.table)?.table.columns;
      const found = columns?.find((candidate) => candidate.name === named.column);
      return found?.kind === 'product' ? found.accepts : (this.declared.needs.get(printCellName(named))?.accepts ?? []);
    });
    return [...new Set(kinds)];
  }
}

function readsAbove(formula: string): boolean {
  if (!formula.includes('above')) return false;
  const parsed = parseFormula(formula);
  return parsed.kind === 'tree' && mentionsAbove(parsed.tree);
}

function mentionsAbove(tree: Expression): boolean {
  switch (tree.kind) {
    case 'member':
      return tree.of === 'above';
    case 'allAbove':
      return true;
    case 'unary':
      return mentionsAbove(tree.operand);
    case 'binary':
      return mentionsAbove(tree.left) || mentionsAbove(tree.right);
    case 'call':
      return tree.args.some(mentionsAbove);
    default:
      return false;
  }
}
