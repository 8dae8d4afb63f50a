import type { GivenTable, GivenValue, StackEntries } from '../template/entries.ts';
import { serialDay } from '../units/serial-day.ts';
import type { QuoteDocument, QuoteOption, SheetEntries, StoredTable, StoredValue } from './quote-document.ts';

/** What a quote gives the sheets of one option: shop and floor shared, the option's own over them. */
export function stackEntriesOf(quote: QuoteDocument, option: QuoteOption): StackEntries {
  const sheets: readonly SheetEntries[] = [quote.shop, quote.floor, option.entries];
  return {
    lines: new Map(
      sheets.flatMap(({ lines }) => Object.entries(lines).map(([name, value]) => [name, givenValue(value)] as const)),
    ),
    tables: new Map(
      sheets.flatMap(({ tables }) => Object.entries(tables).map(([name, table]) => [name, givenTable(table)] as const)),
    ),
  };
}

/** A stored value as a cell takes it; a date becomes its serial day. */
export function givenValue(stored: StoredValue): GivenValue {
  if (typeof stored === 'object' && 'instead' in stored) return { kind: 'instead', value: stored.instead };
  if (typeof stored === 'object' && 'written' in stored) return { kind: 'written', value: stored.written };
  const value = typeof stored === 'object' ? stored.value : stored;
  if (typeof value === 'number') return { kind: 'value', value };
  return { kind: 'value', value: serialDay(value) ?? value };
}

export function givenTable(stored: StoredTable): GivenTable {
  const cells = Object.entries(stored.cells ?? {}).map(
    ([row, columns]) =>
      [row, new Map(Object.entries(columns).map(([column, value]) => [column, givenValue(value)] as const))] as const,
  );
  return {
    ...(stored.order && { order: stored.order }),
    added: new Map(Object.entries(stored.added ?? {})),
    cells: new Map(cells),
  };
}
