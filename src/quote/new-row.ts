import type { CompiledTable } from '../template/compiled-stack.ts';
import type { ProductRow } from '../template/entries.ts';
import { ownValue } from '../template/own-value.ts';
import type { SingleEdit } from './edit.ts';
import type { OptionResults } from './option-results.ts';
import type { SheetPlace } from './quote-document.ts';

/**
 * The edit that adds a row at the end of a table, under a code nobody has yet, with the products of `priceList` that such a
 * row names: the quote may not have them.
 */
export function newRowEdit(
  results: OptionResults,
  sheet: SheetPlace,
  table: string,
  priceList: ReadonlyMap<string, ProductRow> = new Map(),
): Extract<SingleEdit, { kind: 'addRow' }> {
  const rows = results.option.rows.get(table) ?? [];
  const compiled = results.stack.tables.get(table);
  const key = compiled?.key;
  const row = freeCode(key ?? table, new Set(rows.map(({ id }) => id)));
  const products = productsNamed(compiled).flatMap((code) => priceList.get(code) ?? []);
  return {
    kind: 'addRow',
    sheet,
    table,
    row,
    at: rows.length,
    cells: key === undefined ? {} : { [key]: row },
    ...(products.length > 0 && { products }),
  };
}

/** Codes of the products that a new row names before anybody chooses another. */
function productsNamed(table: CompiledTable | undefined): string[] {
  const columns = table?.definition.columns ?? [];
  return columns.flatMap((column) => {
    const code =
      column.kind === 'product' ? (ownValue(table?.definition.newRow ?? {}, column.name) ?? column.default) : 0;
    return typeof code === 'string' ? [code] : [];
  });
}

function freeCode(stem: string, taken: ReadonlySet<string>): string {
  let number = taken.size + 1;
  while (taken.has(`${stem}_${number}`)) number += 1;
  return `${stem}_${number}`;
}
