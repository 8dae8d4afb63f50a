import type { CellValue } from '../../src/formula/cells.ts';
import { closuresOf } from '../../src/formula/closures.ts';
import { saidTexts } from '../../src/quote/said-texts.ts';
import { type ToldCheck, toldChecks } from '../../src/quote/told-checks.ts';
import type { CompiledStack } from '../../src/template/compiled-stack.ts';
import type { GivenValue, ProductRow, StackEntries } from '../../src/template/entries.ts';
import type { RowFile } from '../../src/template/line-schema.ts';
import { type OptionPlan, planOption } from '../../src/template/plan.ts';
import { stackOf } from '../../src/template/stack-of.ts';
import { engineValues } from './engine-values.ts';
import { shippedLibrary, shippedProducts } from './shipped-templates.ts';

/** What a test gives the shipped sheets. Names are lines, or cells as `table.row key.column`. */
export interface Given {
  readonly set?: Readonly<Record<string, number | string>>;
  /** Departures: a value in place of a formula's. */
  readonly instead?: Readonly<Record<string, number>>;
  /** Rows in place of a table's own. */
  readonly rows?: Readonly<Record<string, readonly RowFile[]>>;
  /** Fields of products in place of the price list's, as `product.field`. */
  readonly products?: Readonly<Record<string, number>>;
}

export interface ShippedStack {
  readonly stack: CompiledStack;
  readonly products: ReadonlyMap<string, ProductRow>;
}

/** A floor worked out: what its lines and cells read. */
export interface PricedFloor {
  value(name: string): CellValue;
  /** A number; throws for a failed one. */
  number(name: string): number;
  check(name: string): ToldCheck;
  /** What the customer, or on the day the crew, is told in a line; undefined while it is not told. */
  said(name: string): string | undefined;
  readonly option: OptionPlan;
}

const shipped = readShipped();
export const shippedSystems: readonly string[] = [...shipped.library.systems.keys()];
const compiled = new Map<string, ShippedStack>();

/** A system that is shipped, over the shipped shop, floor and price list; compiled when first asked for. */
export function shippedStack(system: string): ShippedStack {
  const stack = compiled.get(system) ?? compiledStack(system);
  compiled.set(system, stack);
  return stack;
}

/** The newest are kept, as many tests ask for the same floor. */
const mostKept = 64;
const keptFloors = new Map<string, PricedFloor>();

/** Prices by both evaluators, which must agree in every cell. */
export function priced(system: string, given: Given = {}): PricedFloor {
  const asked = JSON.stringify([system, given]);
  const floor = keptFloors.get(asked) ?? pricedByBoth(system, given);
  keptFloors.set(asked, floor);
  for (const oldest of keptFloors.keys()) {
    if (keptFloors.size <= mostKept) break;
    keptFloors.delete(oldest);
  }
  return floor;
}

function pricedByBoth(system: string, given: Given): PricedFloor {
  const option = plannedOption(system, given);
  const values = closuresOf(option.plan, option.graph).values();
  const engine = engineValues(option.plan);
  const different = values.findIndex((value, cell) => !same(value, engine[cell]));
  if (different !== -1) throw new Error(`The evaluators disagree on ${JSON.stringify(option.plan.cells[different])}`);
  return reading(system, option, values);
}

/** Prices by the closures alone, for thousands of floors. */
export function quicklyPriced(system: string, given: Given = {}): PricedFloor {
  const option = plannedOption(system, given);
  const closures = closuresOf(option.plan, option.graph);
  return reading(system, option, closures.values());
}

/** Lays the cells out; throws with what was refused. */
function plannedOption(system: string, given: Given): OptionPlan {
  const { stack, products } = shippedStack(system);
  const option = planOption(stack, entriesOf(given), withFields(products, given.products ?? {}));
  if (option.faults.length > 0)
    throw new Error(option.faults.map(({ path, reason }) => `${path}: ${reason}`).join('\n'));
  for (const [name, value] of Object.entries({ ...given.set, ...given.instead })) mustHold(option, name, value);
  return option;
}

/** A name that reaches nothing would leave a test asserting the template's own value. */
function mustHold(option: OptionPlan, name: string, value: number | string): void {
  const content = option.plan.cells[cellNamed(option, name)]?.content;
  if (content?.kind === 'formula' || content?.value !== value) throw new Error(`${name} does not take ${value}`);
}

function withFields(
  products: ReadonlyMap<string, ProductRow>,
  fields: Readonly<Record<string, number>>,
): ReadonlyMap<string, ProductRow> {
  const changed = new Map(products);
  for (const [name, value] of Object.entries(fields)) {
    const [product = '', field = ''] = name.split('.');
    const row = changed.get(product);
    if (row?.fields[field] === undefined) throw new Error(`The price list has no ${name}`);
    changed.set(product, { ...row, fields: { ...row.fields, [field]: value } });
  }
  return changed;
}

function reading(system: string, option: OptionPlan, values: readonly CellValue[]): PricedFloor {
  const value = (name: string): CellValue => values[cellNamed(option, name)] ?? missing(name);
  const number = (name: string): number => {
    const found = value(name);
    if (typeof found !== 'number') throw new Error(`${name} is ${JSON.stringify(found)}, not a number`);
    return found;
  };
  const { stack } = shippedStack(system);
  const check = (name: string): ToldCheck =>
    toldChecks({ stack, option, read: (cell) => values[cell] ?? missing(name) }).find((told) => told.name === name) ??
    missing(name);
  const said = (name: string): string | undefined => {
    const results = { stack, option, read: (cell: number) => values[cell] ?? missing(name) };
    const texts = (['allowances', 'terms', 'comparison', 'day'] as const).flatMap((use) => saidTexts(results, use));
    return texts.find((text) => text.name === name)?.text;
  };
  return { value, number, check, said, option };
}

function cellNamed({ plan, rows }: OptionPlan, name: string): number {
  const [table = '', row = '', column = ''] = name.split('.');
  if (column === '') return plan.lines.get(name) ?? missing(name);
  const place = (rows.get(table) ?? []).findIndex(({ id, label }) => id === row || label === row);
  return plan.tables.get(table)?.columns.get(column)?.[place] ?? missing(name);
}

interface TableInMaking {
  order?: string[];
  readonly added: Map<string, RowFile>;
  readonly cells: Map<string, ReadonlyMap<string, GivenValue>>;
}

function entriesOf({ set = {}, instead = {}, rows = {} }: Given): StackEntries {
  const lines = new Map<string, GivenValue>();
  const tables = new Map<string, TableInMaking>();
  const table = (name: string): TableInMaking => {
    const given = tables.get(name) ?? { added: new Map(), cells: new Map() };
    tables.set(name, given);
    return given;
  };
  for (const [name, own] of Object.entries(rows)) {
    // The label is the name by which a test finds the row again.
    const added = own.map((cells, at): [string, RowFile] => [`row-${at + 1}`, { label: `${at + 1}`, ...cells }]);
    const given = table(name);
    given.order = added.map(([id]) => id);
    for (const [id, cells] of added) given.added.set(id, cells);
  }
  const give = (name: string, value: GivenValue): void => {
    const [first = '', row = '', column = ''] = name.split('.');
    if (column === '') return void lines.set(name, value);
    const { cells } = table(first);
    cells.set(row, new Map(cells.get(row)).set(column, value));
  };
  for (const [name, value] of Object.entries(set)) give(name, { kind: 'value', value });
  for (const [name, value] of Object.entries(instead)) give(name, { kind: 'instead', value });
  return { lines, tables };
}

function readShipped() {
  const { library, faults } = shippedLibrary();
  if (faults.length > 0) throw new Error(JSON.stringify(faults));
  const layers = [library.priceLists, library.shops, library.floors];
  const [priceList, shop, floor] = layers.map((sheets) => [...sheets.values()][0]);
  if (!priceList || !shop || !floor) throw new Error('A layer has no sheet');
  const { products, faults: productFaults } = shippedProducts(priceList);
  if (productFaults.length > 0) throw new Error(JSON.stringify(productFaults));
  return { library, sheets: { priceList, shop, floor }, products };
}

function compiledStack(id: string): ShippedStack {
  const { library, sheets, products } = shipped;
  const system = library.systems.get(id);
  if (system === undefined) throw new Error(`No system ${id} is shipped`);
  const { stack, faults } = stackOf({ ...sheets, system }, library.parts);
  if (faults.length > 0) throw new Error(JSON.stringify(faults));
  return { stack, products };
}

function same(left: CellValue, right: CellValue | undefined): boolean {
  if (typeof left !== 'object' || typeof right !== 'object') return Object.is(left, right);
  return left.kind === right.kind && left.origin === right.origin;
}

function missing(name: string): never {
  throw new Error(`The option has no ${name}`);
}
