import type { ProductRow } from '../template/entries.ts';
import type { RowFile } from '../template/line-schema.ts';

/**
 * A quote: plain immutable JSON and the only truth. It pins its sheets by the SHA-256 of their canonical JSON and holds
 * what was entered over them; everything it does not name stands as its sheets have it.
 */
export interface QuoteDocument {
  readonly format: 'spreadrate.quote';
  readonly version: 1;
  readonly id: string;
  readonly title: string;
  readonly sheets: PinnedSheets;
  /** The price-list rows the quote names, as they were when it was made. */
  readonly products: readonly ProductRow[];
  readonly shop: SheetEntries;
  readonly floor: SheetEntries;
  /** One to four. */
  readonly options: readonly QuoteOption[];
}

export interface PinnedSheets {
  readonly priceList: SheetHash;
  readonly shop: SheetHash;
  readonly floor: SheetHash;
  /** Part id → hash. */
  readonly parts: Readonly<Record<string, SheetHash>>;
}

export type SheetHash = string;

export interface QuoteOption {
  readonly id: string;
  readonly title: string;
  readonly system: SheetHash;
  readonly entries: SheetEntries;
}

export interface SheetEntries {
  readonly lines: Readonly<Record<string, StoredValue>>;
  readonly tables: Readonly<Record<string, StoredTable>>;
  /** Stops of this sheet that somebody went ahead past, by the check’s name: a line, or `table.row.column`. */
  readonly passed?: PassedStops;
}

export type PassedStops = Readonly<Record<string, PassedStop>>;

/** Who went ahead past a stop, when and why, and what the stop said to them: said anew of other numbers, it stops again. */
export interface PassedStop {
  readonly by: string;
  readonly why: string;
  /** ISO 8601 time, given by the caller. */
  readonly at: string;
  /** In US measures. */
  readonly said: string;
}

export interface StoredTable {
  /** Ids of the rows in order, once rows were added, removed or moved. */
  readonly order?: readonly string[];
  readonly added?: Readonly<Record<string, RowFile>>;
  /** Row id → column → value. */
  readonly cells?: Readonly<Record<string, Readonly<Record<string, StoredValue>>>>;
}

/** A number or a code as entered, or with what was typed; words that a person wrote; or a departure from a formula. */
export type StoredValue =
  | number
  | string
  | { readonly value: number | string; readonly typed?: string; readonly confirmed?: boolean; readonly from?: string }
  | { readonly written: string }
  | { readonly instead: number; readonly why?: string };

export const mostOptions = 4;

/** Characters of a name and of a reason. */
export const passLimits = { by: 80, why: 300 };

export const nothingEntered: SheetEntries = { lines: {}, tables: {} };

/** Which of a quote's sheets is meant: options share one shop and one floor. */
export type SheetPlace =
  | { readonly kind: 'shop' }
  | { readonly kind: 'floor' }
  | { readonly kind: 'option'; readonly option: string };

/** The layer of the sheet that is meant: an option's own is a system's. */
export function layerOf(place: SheetPlace): 'shop' | 'floor' | 'system' {
  return place.kind === 'option' ? 'system' : place.kind;
}

/** The entries of one sheet, or undefined when the quote has no such option. */
export function entriesAt(quote: QuoteDocument, place: SheetPlace): SheetEntries | undefined {
  switch (place.kind) {
    case 'shop':
      return quote.shop;
    case 'floor':
      return quote.floor;
    case 'option':
      return quote.options.find((option) => option.id === place.option)?.entries;
    default:
      return place satisfies never;
  }
}
