import type { Checked, ValueType } from '../formula/checked-tree.ts';
import type { Scope } from '../formula/scope.ts';
import { truth } from '../formula/value-type.ts';
import { askFaults } from './ask-faults.ts';
import { ColumnCompiler, deepestCodes } from './compile-column.ts';
import { FormulaReader, type ReadFormulas } from './compile-formula.ts';
import type { CompiledLine, CompiledStack, CompiledTable, ProductFields, SayPiece } from './compiled-stack.ts';
import type { ComposedSheet } from './composed-sheet.ts';
import { type DeclaredLine, type DeclaredNames, declareNames } from './declared-names.ts';
import { noFormerNames } from './former-names.ts';
import { tellNamesShown } from './kept-names.ts';
import { tellFaultyNeeds } from './needs.ts';
import { tellOperator } from './operators.ts';
import { tellOutline } from './outline-columns.ts';
import { productFieldsOf } from './product-fields.ts';
import { resultLineFaults } from './result-lines.ts';
import { readSay } from './say.ts';
import { type SheetFault, tellOnce } from './sheet-fault.ts';
import { sheetLimits } from './sheet-limits.ts';
import type { Layer } from './sheet-schema.ts';
import { StackNames } from './stack-names.ts';

export interface CompiledResult {
  readonly stack: CompiledStack;
  /** Empty when the stack may price a floor. */
  readonly faults: readonly SheetFault[];
}

/** What was compiled before and stands in another stack as well. */
export interface CompiledBefore {
  readonly formulas: ReadFormulas;
  /** The lowest sheets by themselves, without a fault: a formula reads nothing above its own sheet, so they stay as they are. */
  readonly below?: CompiledStack | undefined;
}

/**
 * Checks every name, type and unit of sheets lying on each other, lowest first: price list, shop, floor, system (any of
 * the upper ones may be left out). A part compiles alone, against what it needs.
 */
export function compileStack(sheets: readonly ComposedSheet[], before?: CompiledBefore): CompiledResult {
  const faults: SheetFault[] = [];
  const compiler = new StackCompiler(sheets, faults, before);
  const stack = compiler.compile();
  return { stack, faults };
}

class StackCompiler {
  private readonly sheets: readonly ComposedSheet[];
  private readonly faults: SheetFault[];
  private readonly declared: DeclaredNames;
  private readonly products: ProductFields;
  private readonly names: StackNames;
  private readonly reader: FormulaReader;
  private readonly compiled: Map<string, CompiledLine>;
  private readonly tablesBelow: CompiledStack['tables'];
  private readonly underWay = new Set<string>();

  constructor(sheets: readonly ComposedSheet[], faults: SheetFault[], before: CompiledBefore | undefined) {
    this.sheets = sheets;
    this.faults = faults;
    this.compiled = new Map(before?.below?.lines);
    this.tablesBelow = before?.below?.tables ?? new Map();
    const report = tellOnce(faults);
    this.declared = declareNames(sheets, faults);
    this.products = productFieldsOf(
      sheets.find((sheet) => sheet.layer === 'pricelist'),
      report,
    );
    for (const sheet of sheets) tellFaultyNeeds(sheet, new Set(this.products.kinds.keys()), report);
    for (const table of this.declared.tables.values()) tellOutline(table, this.declared, report);
    this.reader = new FormulaReader(report, before?.formulas);
    const columns = new ColumnCompiler(this.declared, this.products, this.reader, report, (layer, row) =>
      this.names.scope(layer, row),
    );
    this.names = new StackNames(this.declared, this.products, (name) => this.lineType(name), columns);
  }

  compile(): CompiledStack {
    for (const line of this.declared.lines.values()) this.line(line);
    const tables = new Map<string, CompiledTable>();
    for (const table of this.declared.tables.values()) {
      const { name } = table.table;
      tables.set(name, this.tablesBelow.get(name) ?? this.names.columns.table(table));
    }
    for (const table of this.declared.tables.values()) tellOperator(table, this.names.scope, tellOnce(this.faults));
    const system = this.sheets.find((sheet) => sheet.layer === 'system');
    if (system !== undefined) this.faults.push(...resultLineFaults(system, this.declared));
    for (const sheet of this.sheets) this.faults.push(...askFaults(sheet, this.declared));
    const lines = new Map(
      [...this.declared.lines.keys()].flatMap((name) => {
        const line = this.compiled.get(name);
        return line === undefined ? [] : [[name, line] as const];
      }),
    );
    tellNamesShown(this.sheets, lines, tables, tellOnce(this.faults));
    if (lines.size > sheetLimits.lines)
      this.faults.push({ path: '', reason: `A quote has at most ${sheetLimits.lines} lines.` });
    return {
      sheets: this.sheets,
      lines,
      tables,
      products: this.products,
      askedWhen: this.askedWhen(),
      former: noFormerNames,
      scope: this.names.scope,
    };
  }

  private askedWhen(): ReadonlyMap<Layer, ReadonlyMap<string, Checked>> {
    const conditions = ({ layer, asks }: ComposedSheet): ReadonlyMap<string, Checked> =>
      new Map(
        asks.flatMap(({ id, when }, at) => {
          if (when === undefined) return [];
          const tree = this.reader.read(when, this.names.scope(layer), truth, `asks[${at}] (${id}).when`);
          return tree === undefined ? [] : [[id, tree] as const];
        }),
      );
    return new Map(this.sheets.map((sheet) => [sheet.layer, conditions(sheet)]));
  }

  private lineType(name: string): ValueType | undefined {
    const done = this.compiled.get(name);
    if (done !== undefined) return done.type;
    const declared = this.declared.lines.get(name);
    if (declared === undefined) return undefined;
    // A formula that gives a code has the codes of its arms; one that leads back to itself is told as a cycle later.
    if (declared.line.kind !== 'formula' || !declared.line.code) return this.declaredType(declared);
    if (this.underWay.has(name) || this.underWay.size >= deepestCodes) return { kind: 'code' };
    return this.line(declared).type;
  }

  private line(declared: DeclaredLine): CompiledLine {
    const { line, layer, path } = declared;
    const done = this.compiled.get(line.name);
    if (done !== undefined) return done;
    this.underWay.add(line.name);
    const type = this.declaredType(declared);
    const scope = this.names.scope(layer);
    const compiled: CompiledLine = { definition: line, layer, path, type, ...this.formulaOf(declared, type, scope) };
    this.underWay.delete(line.name);
    this.compiled.set(line.name, compiled);
    return compiled;
  }

  private formulaOf(
    { line, path }: DeclaredLine,
    type: ValueType,
    scope: Scope,
  ): { tree?: Checked; type?: ValueType; say?: readonly SayPiece[] } {
    if (line.kind === 'formula') {
      const tree = this.reader.read(line.formula, scope, type, `${path}.formula`);
      return tree === undefined
        ? { type: { kind: 'faulty' } }
        : { tree, ...(type.kind === 'code' && { type: tree.type }) };
    }
    if (line.kind === 'text') {
      const when =
        line.when === undefined ? undefined : this.reader.read(line.when, scope, { kind: 'truth' }, `${path}.when`);
      return { say: readSay(line.text, scope, this.reader, `${path}.text`), ...(when && { tree: when }) };
    }
    if (line.kind !== 'check') return {};
    const tree = this.reader.read(line.check, scope, { kind: 'truth' }, `${path}.check`);
    const say = readSay(line.say, scope, this.reader, `${path}.say`);
    return { say, ...(tree && { tree }) };
  }

  private declaredType({ line, path }: DeclaredLine): ValueType {
    switch (line.kind) {
      case 'text':
      case 'words':
      case 'check':
        return { kind: 'truth' };
      case 'choice':
        return { kind: 'code', codes: line.options.map((option) => option.code) };
      case 'product':
        return this.names.columns.productType(line.accepts, `${path}.accepts`);
      case 'entry':
        return this.reader.numberType(line.unit, `${path}.unit`);
      case 'formula':
        if (line.code) return { kind: 'code' };
        return this.reader.numberType(line.unit, `${path}.unit`);
      default:
        return line satisfies never;
    }
  }
}
