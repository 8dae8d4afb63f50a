import type { PartEvaluator } from '../../../formula/evaluate-part.ts';
import type { OptionResults } from '../../../quote/option-results.ts';
import type { SheetEntries } from '../../../quote/quote-document.ts';
import type { ComposedSection } from '../../../template/composed-sheet.ts';
import type { Layer } from '../../../template/sheet-schema.ts';
import type { Measures } from '../../../units/measures.ts';
import { serialDay } from '../../../units/serial-day.ts';
import type { ProductNames, ShownField } from '../../parts/shown-field.ts';

/** The sheet that is shown: what is in it, what its cells read and what is entered. */
export interface SheetInView {
  readonly layer: Layer;
  readonly title: string;
  readonly sections: readonly ComposedSection[];
  readonly results: OptionResults;
  readonly evaluate: PartEvaluator;
  readonly products: ProductNames;
  readonly measures: Measures;
  readonly entries: SheetEntries;
}

/** What stands in place of what a field shows otherwise. */
export type ShownInstead = Partial<Pick<ShownField, 'shown' | 'kind' | 'typed' | 'chosen'>>;

/** A template's own value as a field holds it: a date as the number of its day. */
export function plainStandard(value: number | string | undefined): number | string | undefined {
  return typeof value === 'string' ? (serialDay(value) ?? value) : value;
}
