import type { GivenValue, ProductRow, StackEntries } from '../../src/template/entries.ts';
import type { RowFile } from '../../src/template/line-schema.ts';

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

interface TableInMaking {
  order?: string[];
  readonly added: Map<string, RowFile>;
  readonly cells: Map<string, ReadonlyMap<string, GivenValue>>;
}

/** The id of the row at a place from 0 among those that a test gives. */
export function givenRow(at: number): string {
  return `row-${at + 1}`;
}

/** As a quote would hold them. */
export function entriesOf({ set = {}, instead = {}, rows = {} }: Given): StackEntries {
  const lines = new Map<string, GivenValue>();
  const tables = new Map<string, TableInMaking>();
  const table = (name: string): TableInMaking => {
    const given = tables.get(name) ?? { added: new Map(), cells: new Map() };
    tables.set(name, given);
    return given;
  };
  for (const [name, own] of Object.entries(rows)) {
    // The label is the name by which a test finds the row again.
    const added = own.map((cells, at): [string, RowFile] => [givenRow(at), { label: `${at + 1}`, ...cells }]);
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

/** The price list with these fields in place of its own, each named `product.field`. */
export function withFields(
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
