import type { PartEvaluator } from '../../../formula/evaluate-part.ts';
import type { OptionResults } from '../../../quote/option-results.ts';
import type { StoredTable, StoredValue } from '../../../quote/quote-document.ts';
import type { Measures } from '../../../units/measures.ts';
import { serialDay } from '../../../units/serial-day.ts';
import type { ProductNames, ShownField } from '../../parts/shown-field.ts';

/** The sheet that is shown: what stands in it and what is entered. */
export interface SheetInView {
  readonly results: OptionResults;
  readonly evaluate: PartEvaluator;
  readonly products: ProductNames;
  readonly measures: Measures;
  readonly lines: Readonly<Record<string, StoredValue>>;
  readonly tables: Readonly<Record<string, StoredTable>>;
}

/** What stands in place of what a field shows otherwise. */
export type ShownInstead = Partial<Pick<ShownField, 'shown' | 'kind' | 'typed' | 'chosen'>>;

/** A template's own value as a field holds it: a date as the number of its day. */
export function plainStandard(value: number | string | undefined): number | string | undefined {
  return typeof value === 'string' ? (serialDay(value) ?? value) : value;
}
