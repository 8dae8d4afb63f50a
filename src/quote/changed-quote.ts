import type { ProductRow } from '../template/entries.ts';
import type {
  PassedStop,
  QuoteDocument,
  SheetEntries,
  SheetPlace,
  StoredTable,
  StoredValue,
} from './quote-document.ts';

export function withProduct(quote: QuoteDocument, product: ProductRow | undefined): QuoteDocument {
  if (product === undefined || quote.products.some((known) => known.product === product.product)) return quote;
  return { ...quote, products: [...quote.products, product] };
}

export function withLine(
  quote: QuoteDocument,
  sheet: SheetPlace,
  line: string,
  value: StoredValue | undefined,
): QuoteDocument {
  return withEntries(quote, sheet, (entries) => ({ ...entries, lines: withKey(entries.lines, line, value) }));
}

export function withTable(
  quote: QuoteDocument,
  sheet: SheetPlace,
  table: string,
  stored: StoredTable | undefined,
): QuoteDocument {
  return withEntries(quote, sheet, (entries) => ({ ...entries, tables: withKey(entries.tables, table, stored) }));
}

/** With a stop gone past, or without `pass` no longer. */
export function withPass(
  quote: QuoteDocument,
  sheet: SheetPlace,
  check: string,
  pass: PassedStop | undefined,
): QuoteDocument {
  return withEntries(quote, sheet, ({ passed = {}, ...entries }) => {
    const left = withKey(passed, check, pass);
    return Object.keys(left).length === 0 ? entries : { ...entries, passed: left };
  });
}

function withEntries(
  quote: QuoteDocument,
  sheet: SheetPlace,
  change: (entries: SheetEntries) => SheetEntries,
): QuoteDocument {
  if (sheet.kind === 'shop') return { ...quote, shop: change(quote.shop) };
  if (sheet.kind === 'floor') return { ...quote, floor: change(quote.floor) };
  const options = quote.options.map((option) =>
    option.id === sheet.option ? { ...option, entries: change(option.entries) } : option,
  );
  return { ...quote, options };
}

function withKey<T>(
  record: Readonly<Record<string, T>>,
  key: string,
  value: T | undefined,
): Readonly<Record<string, T>> {
  if (value !== undefined) return { ...record, [key]: value };
  const { [key]: _, ...rest } = record;
  return rest;
}
