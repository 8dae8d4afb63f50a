import type { ProductRow } from '../template/entries.ts';
import type {
  PassedStop,
  QuoteDocument,
  SheetEntries,
  SheetPlace,
  StoredTable,
  StoredValue,
} from './quote-document.ts';

/** With the products that an edit brings; the same list where it has them all. */
export function withProducts(quote: QuoteDocument, brought: readonly ProductRow[]): QuoteDocument {
  const others = brought.filter(({ product }) => !quote.products.some((known) => known.product === product));
  return others.length === 0 ? quote : { ...quote, products: [...quote.products, ...others] };
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

/** Keys stand in code-unit order: what an undo puts back stands where it stood, and a stored quote is the same to the byte. */
function withKey<T>(
  record: Readonly<Record<string, T>>,
  key: string,
  value: T | undefined,
): Readonly<Record<string, T>> {
  const { [key]: before, ...rest } = record;
  if (value === undefined) return rest;
  if (before !== undefined) return { ...record, [key]: value };
  const members = Object.entries(rest);
  const next = members.findIndex(([other]) => other > key);
  return Object.fromEntries(members.toSpliced(next === -1 ? members.length : next, 0, [key, value]));
}
