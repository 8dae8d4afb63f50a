import { type CellGraph, graphOf } from '../formula/cell-graph.ts';
import { placeText } from '../formula/cell-name.ts';
import {
  type CellContent,
  type CellPlace,
  type CellPlan,
  type PlannedCell,
  type PlannedTable,
  productKey,
  productTable,
} from '../formula/cells.ts';
import type { ValueType } from '../formula/checked-tree.ts';
import type { PlannedOperator } from '../formula/operator.ts';
import { one } from '../units/unit.ts';
import { CellContents } from './cell-contents.ts';
import { FormulaReader } from './compile-formula.ts';
import { type CompiledColumn, type CompiledStack, type CompiledTable, caseOf, onlyCase } from './compiled-stack.ts';
import { noEntries, type ProductRow, type StackEntries } from './entries.ts';
import { type OperatorRead, readText } from './operator-contract.ts';
import { contractOf, inputCells } from './operators.ts';
import { ownValue } from './own-value.ts';
import { tellTooMuch } from './plan-limits.ts';
import { underPresentNames } from './present-entries.ts';
import { type FaultReporter, type SheetFault, tellOnce } from './sheet-fault.ts';
import { sheetLimits } from './sheet-limits.ts';
import { withStandingChoices } from './standing-choices.ts';
import { type StandingRow, standingRows } from './table-rows.ts';
import { unitCaseOf } from './table-shape.ts';
import { type WrittenWords, writtenWords } from './written-words.ts';

/** One option of a quote laid out as cells, with what a view needs to name its rows. */
export interface OptionPlan {
  /** The stack it was laid out from, its choices among rows those of the rows that stand. */
  readonly stack: CompiledStack;
  readonly plan: CellPlan;
  readonly graph: CellGraph;
  readonly rows: ReadonlyMap<string, readonly OptionRow[]>;
  /** What people wrote, which no cell holds. */
  readonly written: WrittenWords;
  /** Empty when the plan may be worked out. */
  readonly faults: readonly SheetFault[];
}

export interface OptionRow {
  readonly id: string;
  readonly label: string;
  readonly added: boolean;
  /** The code that units follow in this row, `''` where they are fixed. */
  readonly unitCase: string;
}

/**
 * Lays out a compiled stack with a quote's entries and the products it names as cells. A gathered table gets one row a
 * distinct product. Faults are told all at once; a cycle is one.
 * The stack must have compiled without faults.
 */
export function planOption(
  stack: CompiledStack,
  entries: StackEntries,
  priceList: ReadonlyMap<string, ProductRow>,
): OptionPlan {
  return new Planner(withStandingChoices(stack, entries.tables), entries, priceList).plan();
}

/** The products that a stack names by itself, with what is wrong when it is laid out; nothing is put in order for that. */
export function productsNamed(
  stack: CompiledStack,
  priceList: ReadonlyMap<string, ProductRow>,
): { readonly products: readonly string[]; readonly faults: readonly SheetFault[] } {
  return new Planner(withStandingChoices(stack, noEntries.tables), noEntries, priceList).products();
}

class Planner {
  private readonly stack: CompiledStack;
  private readonly entries: StackEntries;
  private readonly priceList: ReadonlyMap<string, ProductRow>;
  private readonly faults: SheetFault[] = [];
  private readonly report: FaultReporter;
  private readonly cells: PlannedCell[] = [];
  private readonly lines = new Map<string, number>();
  private readonly tables = new Map<string, PlannedTable>();
  private readonly rows = new Map<string, readonly OptionRow[]>();
  private readonly contents: CellContents;

  constructor(stack: CompiledStack, entries: StackEntries, priceList: ReadonlyMap<string, ProductRow>) {
    this.stack = stack;
    this.entries = underPresentNames(entries, stack.former);
    this.priceList = priceList;
    this.report = tellOnce(this.faults);
    const { report } = this;
    this.contents = new CellContents(report, new FormulaReader(report), priceList);
  }

  plan(): OptionPlan {
    this.layOutAll();
    const operators = new Map([...this.stack.tables.values()].flatMap((table) => this.operator(table)));
    const plan: CellPlan = { cells: this.cells, lines: this.lines, tables: this.tables, operators };
    const written = writtenWords(this.stack, this.entries, this.rows, this.report);
    return { stack: this.stack, plan, rows: this.rows, written, ...this.ordered(plan), faults: this.faults };
  }

  products(): ReturnType<typeof productsNamed> {
    this.layOutAll();
    return { products: (this.rows.get(productTable) ?? []).map(({ id }) => id), faults: this.faults };
  }

  private layOutAll(): void {
    for (const [name, line] of this.stack.lines) {
      const content = this.contents.ofLine(line, this.entries.lines.get(name));
      const type = line.definition.kind === 'check' ? ({ kind: 'truth' } as const) : line.type;
      if (content !== undefined) this.lines.set(name, this.add({ kind: 'line', name }, type, content));
    }
    const gathered = [...this.stack.tables.values()].filter((table) => table.definition.rows === 'gathered');
    for (const table of this.stack.tables.values()) if (!gathered.includes(table)) this.table(table);
    for (const table of gathered) this.gatheredTable(table);
    this.productRows();
  }

  private ordered(plan: CellPlan): { graph: CellGraph } {
    tellTooMuch(plan, this.report);
    if (this.faults.length > 0) return { graph: { kind: 'graph', order: [], reads: [], readBy: [] } };
    const graph = graphOf(plan);
    if (graph.kind === 'cycle') {
      const path = graph.path.map((cell) => placeText(plan.cells[cell]?.place)).join(' → ');
      this.report(placeText(plan.cells[graph.path[0] ?? 0]?.place), `It leads back to itself: ${path}.`);
    }
    return { graph };
  }

  private table(table: CompiledTable): void {
    const rows = standingRows(table, this.entries.tables.get(table.definition.name));
    const { name, min } = table.definition;
    if (rows.length > sheetLimits.rowsPerTable)
      this.report(name, `A table has at most ${sheetLimits.rowsPerTable} rows.`);
    if (rows.length < min) this.report(name, `“${name}” has at least ${min} row${min === 1 ? '' : 's'}.`);
    this.uniqueKeys(table, rows);
    this.layOut(table, rows);
  }

  private gatheredTable(table: CompiledTable): void {
    const products = new Set(table.gather.flatMap(({ table: from, column }) => this.codesIn(from, column)));
    const rows = [...products].map(
      (product): StandingRow => ({
        id: product,
        label: this.priceList.get(product)?.name ?? product,
        path: `${table.path}.${product}`,
        cells: { [table.key ?? productKey]: product },
        given: this.givenTo(table, product),
        added: false,
      }),
    );
    this.layOut(table, rows);
  }

  private layOut(table: CompiledTable, rows: readonly StandingRow[]): void {
    const { name } = table.definition;
    const cases = rows.map((row) =>
      unitCaseOf(
        table.definition.columns,
        table.unitColumn,
        (column) => row.given.get(column)?.value ?? ownValue(row.cells, column),
      ),
    );
    const columns = new Map<string, number[]>();
    for (const column of table.columns.values()) {
      if (column.definition.kind === 'text' || column.definition.kind === 'words') continue;
      const cells = rows.flatMap((row, at) => this.cell(table, column, row, at, cases[at] ?? onlyCase) ?? []);
      columns.set(column.definition.name, cells);
    }
    this.tables.set(name, { rows: rows.length, columns });
    this.rows.set(
      name,
      rows.map(({ id, label, added }, at) => ({ id, label, added, unitCase: cases[at] ?? onlyCase })),
    );
  }

  private cell(
    table: CompiledTable,
    column: CompiledColumn,
    row: StandingRow,
    at: number,
    unitCase: string,
  ): number | undefined {
    const { name } = table.definition;
    const one = caseOf(column, unitCase);
    if (one === undefined) return undefined;
    const scope = this.stack.scope(table.layer, { table: name, unitCase, mayReadAbove: false });
    const content = this.contents.ofCell(column, one, row, at, scope);
    if (content === undefined) return undefined;
    const type: ValueType = column.definition.kind === 'check' ? { kind: 'truth' } : one.type;
    return this.add({ kind: 'cell', table: name, column: column.definition.name, row: at }, type, content);
  }

  private givenTo(table: CompiledTable, row: string): StandingRow['given'] {
    return this.entries.tables.get(table.definition.name)?.cells.get(row) ?? new Map();
  }

  /** The price-list rows that lines and columns name, as a table of constants. */
  private productRows(): void {
    const named = new Set<string>();
    for (const cell of this.cells) {
      if (cell.type.kind === 'code' && cell.type.products && cell.content.kind === 'code')
        named.add(cell.content.value);
    }
    const products = [...named].flatMap((code) => this.priceList.get(code) ?? []);
    const columns = new Map<string, number[]>();
    columns.set(
      productKey,
      products.map(({ product }, row) =>
        this.add(productPlace(productKey, row), { kind: 'code' }, { kind: 'code', value: product }),
      ),
    );
    for (const field of this.stack.products.fields.values()) {
      // A field that a product's kind lacks is read by no formula; 0 or a code keeps its cell from being empty.
      const absent = field.type.kind === 'number' ? 0 : (field.codes?.[0] ?? 'none');
      columns.set(
        field.name,
        products.map((product, row) => {
          const value = ownValue(product.fields, field.name) ?? absent;
          const content: CellContent = typeof value === 'number' ? { kind: 'number', value } : { kind: 'code', value };
          return this.add(productPlace(field.name, row), field.type, content);
        }),
      );
    }
    this.tables.set(productTable, { rows: products.length, columns });
    this.rows.set(
      productTable,
      products.map(({ product, name }) => ({ id: product, label: name, added: false, unitCase: onlyCase })),
    );
  }

  /** The operator of a table, over cells that all stand by now; a table without rows needs none. */
  private operator({ definition: { name, by }, path }: CompiledTable): [string, PlannedOperator][] {
    if (by === undefined || this.tables.get(name)?.rows === 0) return [];
    const { reads, gives, work } = contractOf(by);
    const cell = this.add(
      { kind: 'cell', table: name, column: by, row: 0 },
      { kind: 'number', unit: one },
      { kind: 'operator', table: name },
    );
    const inputs = reads.map((read) => inputCells(read, name, this.lines, this.tables) ?? this.lacking(read, path));
    return [[name, { name: by, cell, work, inputs, results: gives.map(({ column }) => column) }]];
  }

  private lacking(read: OperatorRead, path: string): number[] {
    this.report(path, `The operator reads ${readText(read)}, and there is none.`);
    return [];
  }

  private codesIn(table: string, column: string): string[] {
    return (this.tables.get(table)?.columns.get(column) ?? []).flatMap((cell) => {
      const content = this.cells[cell]?.content;
      return content?.kind === 'code' ? [content.value] : [];
    });
  }

  private uniqueKeys(table: CompiledTable, rows: readonly StandingRow[]): void {
    const { key } = table;
    if (key === undefined) return;
    const seen = new Set<unknown>();
    for (const row of rows) {
      const code = row.given.get(key)?.value ?? ownValue(row.cells, key);
      if (code !== undefined && seen.has(code))
        this.report(row.path, `Two rows of “${table.definition.name}” are called “${String(code)}”.`);
      seen.add(code);
    }
  }

  private add(place: CellPlace, type: ValueType, content: CellContent): number {
    this.cells.push({ place, type, content });
    return this.cells.length - 1;
  }
}

function productPlace(column: string, row: number): CellPlace {
  return { kind: 'cell', table: productTable, column, row };
}
