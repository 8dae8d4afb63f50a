import type { ProductRow } from '../template/entries.ts';
import type { RowFile } from '../template/line-schema.ts';
import type { PassedStop, QuoteOption, SheetPlace, StoredTable, StoredValue } from './quote-document.ts';

/** A change to a quote: a small value, and the only way a quote changes. */
export type Edit = SingleEdit | SeveralEdits;

/** Edits done and undone as one; `words` say what they are together. */
export interface SeveralEdits {
  readonly kind: 'several';
  readonly words: string;
  readonly edits: readonly SingleEdit[];
}

/**
 * One change. `product` and `products` of an edit that names some are those it brings into the quote; of one that takes
 * back (`restoreTable`, `restoreLine`, `removeOption`) all the quote had before any were brought.
 */
export type SingleEdit =
  /** A line's entry, choice, product or departure; without `value` it goes back to our standard. */
  | {
      readonly kind: 'enterLine';
      readonly sheet: SheetPlace;
      readonly line: string;
      readonly value?: StoredValue;
      readonly product?: ProductRow;
    }
  | {
      readonly kind: 'enterCell';
      readonly sheet: SheetPlace;
      readonly table: string;
      readonly row: string;
      readonly column: string;
      readonly value?: StoredValue;
      readonly product?: ProductRow;
    }
  | {
      readonly kind: 'addRow';
      readonly sheet: SheetPlace;
      readonly table: string;
      readonly row: string;
      readonly at: number;
      readonly cells: RowFile;
      readonly products?: readonly ProductRow[];
    }
  | { readonly kind: 'removeRow'; readonly sheet: SheetPlace; readonly table: string; readonly row: string }
  | {
      readonly kind: 'moveRow';
      readonly sheet: SheetPlace;
      readonly table: string;
      readonly row: string;
      readonly to: number;
    }
  /** Rows in place of all a table had. */
  | {
      readonly kind: 'replaceRows';
      readonly sheet: SheetPlace;
      readonly table: string;
      readonly rows: readonly { readonly row: string; readonly cells: RowFile }[];
    }
  | {
      readonly kind: 'addOption';
      readonly option: QuoteOption;
      readonly at: number;
      readonly products: readonly ProductRow[];
    }
  | { readonly kind: 'removeOption'; readonly option: string; readonly products?: readonly ProductRow[] }
  | { readonly kind: 'retitle'; readonly title: string }
  /** Goes ahead past a stop; without `pass` it stops again. */
  | { readonly kind: 'passStop'; readonly sheet: SheetPlace; readonly check: string; readonly pass?: PassedStop }
  /** Puts a table's entries back as they were: the inverse of an edit of rows or cells. */
  | {
      readonly kind: 'restoreTable';
      readonly sheet: SheetPlace;
      readonly table: string;
      readonly content?: StoredTable;
      readonly products?: readonly ProductRow[];
    }
  | {
      readonly kind: 'restoreLine';
      readonly sheet: SheetPlace;
      readonly line: string;
      readonly content?: StoredValue;
      readonly products?: readonly ProductRow[];
    };
