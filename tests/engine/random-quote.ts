import type { CompiledColumn, CompiledLine, CompiledStack } from '../../src/template/compiled-stack.ts';
import type { GivenTable, GivenValue, ProductRow, StackEntries } from '../../src/template/entries.ts';
import type { RowFile } from '../../src/template/line-schema.ts';

/** One random change to a quote: what is changed, and how, as numbers from 0 to 1. */
export interface Change {
  /** `entry` and `entryCell`: a number or a choice alone, which no cell or formula comes or goes with. */
  readonly kind: 'line' | 'cell' | 'row' | 'product' | 'entry' | 'entryCell';
  readonly which: number;
  readonly part: number;
  readonly to: number;
}

export interface RandomQuote {
  readonly entries: StackEntries;
  readonly products: ReadonlyMap<string, ProductRow>;
}

interface TableInMaking {
  order: string[];
  readonly added: Map<string, RowFile>;
  readonly cells: Map<string, ReadonlyMap<string, GivenValue>>;
}

const divisors: readonly string[] = [
  'solids',
  'cartridge_volume',
  'treats_gallons',
  'pack_gallons',
  'pack_pounds',
  'pack_pieces',
];

/** Applies random changes: entries within their limits, choices, products, flags, departures, rows, broken products. */
export function randomQuote(
  stack: CompiledStack,
  priceList: ReadonlyMap<string, ProductRow>,
  changes: readonly Change[],
): RandomQuote {
  return new QuoteMaker(stack, priceList).make(changes);
}

class QuoteMaker {
  private readonly stack: CompiledStack;
  private readonly products: Map<string, ProductRow>;
  private readonly lines = new Map<string, GivenValue>();
  private readonly tables = new Map<string, TableInMaking>();

  constructor(stack: CompiledStack, priceList: ReadonlyMap<string, ProductRow>) {
    this.stack = stack;
    this.products = new Map(priceList);
  }

  make(changes: readonly Change[]): RandomQuote {
    for (const change of changes) this.apply(change);
    const tables = new Map<string, GivenTable>(this.tables);
    return { entries: { lines: this.lines, tables }, products: this.products };
  }

  private apply(change: Change): void {
    switch (change.kind) {
      case 'line':
      case 'entry':
        this.line(change);
        break;
      case 'cell':
      case 'entryCell':
        this.cell(change);
        break;
      case 'row':
        this.row(change);
        break;
      case 'product':
        this.product(change);
        break;
      default:
        change.kind satisfies never;
    }
  }

  private line({ kind, which, to }: Change): void {
    const lines = [...this.stack.lines.values()];
    const line = picked(kind === 'entry' ? lines.filter(({ definition }) => isEntry(definition)) : lines, which);
    const value = line && this.valueFor(line.definition, to);
    if (line && value) this.lines.set(line.definition.name, value);
  }

  private cell({ kind, which, part, to }: Change): void {
    const table = picked([...this.stack.tables.values()], which);
    if (table === undefined) return;
    const made = this.tableOf(table.definition.name);
    const gathered = table.definition.rows === 'gathered';
    const row = gathered ? picked([...this.products.keys()], part) : picked(made.order, part);
    const columns = [...table.columns.values()];
    const fitting = kind === 'entryCell' ? columns.filter(({ definition }) => isEntry(definition)) : columns;
    const column = picked(fitting, (to * 97) % 1);
    const value = column && this.valueFor(column.definition, (to * 31) % 1);
    if (row === undefined || column === undefined || value === undefined) return;
    // A choice that units follow would change the units of the row's own formulas.
    if (column.definition.name === table.unitColumn) return;
    made.cells.set(row, new Map(made.cells.get(row)).set(column.definition.name, value));
  }

  /** Drops a row (the first ones are looked up by name elsewhere), doubles one under a new key, or turns the order round. */
  private row({ which, part, to }: Change): void {
    const free = [...this.stack.tables.values()].filter(({ definition }) => definition.rows === 'free');
    const table = picked(free, which);
    if (table === undefined) return;
    const made = this.tableOf(table.definition.name);
    const row = picked(made.order, part);
    if (row === undefined) return;
    const dropped = to < 0.15 ? made.order[0] : row;
    if (to < 0.3 && made.order.length > table.definition.min) made.order = made.order.filter((id) => id !== dropped);
    else if (to < 0.6) made.order.reverse();
    else {
      const id = `extra_${made.order.length}_${made.added.size}`;
      const cells = table.rows.find((each) => each.id === row)?.cells ?? made.added.get(row) ?? {};
      made.added.set(id, { ...cells, ...(table.key !== undefined && { [table.key]: id }) });
      made.order.splice(Math.floor(to * made.order.length), 0, id);
    }
  }

  /** Gives a product a random number, or one that the sheets use a 0: solids, a pack, a cartridge. */
  private product({ which, part, to }: Change): void {
    const hopeless = to < 0.5;
    const product = picked(hopeless ? this.usedProducts() : [...this.products.values()], which);
    const numbers = Object.keys(product?.fields ?? {}).filter((field) => typeof product?.fields[field] === 'number');
    const field = picked(hopeless ? numbers.filter((name) => divisors.includes(name)) : numbers, part);
    if (product === undefined || field === undefined) return;
    const value = hopeless ? 0 : to * 10;
    this.products.set(product.product, { ...product, fields: { ...product.fields, [field]: value } });
  }

  private usedProducts(): ProductRow[] {
    const codes = [...this.stack.tables.values()].flatMap(({ rows }) =>
      rows.flatMap(({ cells }) => Object.values(cells)),
    );
    return [...this.products.values()].filter(({ product }) => codes.includes(product));
  }

  private tableOf(name: string): TableInMaking {
    const rows = this.stack.tables.get(name)?.rows ?? [];
    const made = this.tables.get(name) ?? { order: rows.map(({ id }) => id), added: new Map(), cells: new Map() };
    this.tables.set(name, made);
    return made;
  }

  private valueFor(
    definition: CompiledColumn['definition'] | CompiledLine['definition'],
    to: number,
  ): GivenValue | undefined {
    switch (definition.kind) {
      case 'choice':
        return given(picked(definition.options, to)?.code);
      case 'product': {
        const fitting = [...this.products.values()].filter(({ kind }) => definition.accepts.includes(kind));
        return given(picked(fitting, to)?.product);
      }
      case 'entry':
        return given(entryValue(definition, to));
      case 'formula':
        // A departure, now and then, of numbers only.
        return definition.code === true || to > 0.15 ? undefined : { kind: 'instead', value: Math.round(to * 1e4) };
      default:
        return undefined;
    }
  }
}

/** A number or a choice; not one whose rows may have formulas of their own. */
function isEntry(definition: CompiledColumn['definition'] | CompiledLine['definition']): boolean {
  return (
    definition.kind === 'choice' || (definition.kind === 'entry' && !('perRow' in definition && definition.perRow))
  );
}

interface EntryLike {
  readonly limits?: readonly [number, number] | undefined;
  readonly whole?: boolean | undefined;
  readonly yesNo?: boolean | undefined;
}

/** A number within the limits: often an end of them, or 0 where there are none. */
function entryValue({ limits = [0, 100], whole, yesNo }: EntryLike, to: number): number {
  if (yesNo) return to < 0.5 ? 0 : 1;
  const [least, most] = limits;
  if (to < 0.2) return least;
  if (to > 0.95) return most;
  // Most draws near the small end, where the numbers of a job lie.
  const value = least + (most - least) * ((to - 0.2) / 0.75) ** 4;
  return whole ? Math.round(value) : Number(value.toPrecision(6));
}

function given(value: number | string | undefined): GivenValue | undefined {
  return value === undefined ? undefined : { kind: 'value', value };
}

function picked<T>(all: readonly T[], which: number): T | undefined {
  return all[Math.min(all.length - 1, Math.floor(which * all.length))];
}
