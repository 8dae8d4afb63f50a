import type { CellPlace, CellValue } from '../../../formula/cells.ts';
import type { Checked } from '../../../formula/checked-tree.ts';
import type { PartEvaluator } from '../../../formula/evaluate-part.ts';
import { evaluatorOf, type OptionResults } from '../../../quote/option-results.ts';
import {
  entriesAt,
  type QuoteDocument,
  type SheetPlace,
  type StoredTable,
  type StoredValue,
} from '../../../quote/quote-document.ts';
import type { Measures } from '../../../units/measures.ts';
import { serialDay } from '../../../units/serial-day.ts';
import { type FieldParts, type ProductNames, type ShownField, shownField } from '../../parts/shown-field.ts';
import { KeptViews } from '../kept-views.ts';
import { type Moved, SeenValues } from './seen-values.ts';

/** The fields that were made of a sheet before, and what it read then. */
export interface KeptFields {
  readonly fields: KeptViews<ShownField>;
  readonly seen: SeenValues;
}

export function noFields(): KeptFields {
  return { fields: new KeptViews(), seen: new SeenValues() };
}

/** What a sheet is shown from. */
export interface ShownFrom {
  readonly quote: QuoteDocument;
  readonly place: SheetPlace;
  readonly results: OptionResults;
  readonly products: ProductNames;
  readonly measures: Measures;
}

/** What stands in place of what a field shows otherwise. */
export type ShownInstead = Partial<Pick<ShownField, 'shown' | 'kind' | 'typed' | 'chosen'>>;

/** Makes the fields of a sheet, and tells which need not be made again. */
export class FieldMaker {
  readonly results: OptionResults;
  readonly measures: Measures;
  readonly lines: Readonly<Record<string, StoredValue>>;
  readonly tables: Readonly<Record<string, StoredTable>>;
  readonly evaluator: PartEvaluator;
  private readonly products: ProductNames;
  private readonly kept: KeptFields;
  /** What is not as it was when the sheet was last shown; undefined when all may be another. */
  private readonly moved: Moved | undefined;

  constructor({ quote, place, results, products, measures }: ShownFrom, kept: KeptFields) {
    const entries = entriesAt(quote, place);
    const where = place.kind === 'option' ? place.option : place.kind;
    this.results = results;
    this.evaluator = evaluatorOf(results);
    this.products = products;
    this.kept = kept;
    this.measures = measures;
    this.lines = entries?.lines ?? {};
    this.tables = entries?.tables ?? {};
    this.moved = kept.seen.moved(results, entries, [results.stack, results.option, products, measures, where]);
  }

  /** Whether a line or table holds what it held when the sheet was last shown. */
  holdsAsBefore(name: string): boolean {
    return this.moved?.held.has(name) === false;
  }

  /** Whether all of a line or table reads as it did then. */
  readsAsBefore(name: string): boolean {
    return this.moved?.names.has(name) === false;
  }

  /** Whether a cell reads as it did then. */
  cellReadsAsBefore(cell: number): boolean {
    return this.moved?.cells.has(cell) === false;
  }

  /** The field last made under a name. */
  last(name: string): ShownField | undefined {
    return this.kept.fields.last(name);
  }

  evaluate(tree: Checked | undefined, place: CellPlace): CellValue | undefined {
    return tree && this.evaluator(tree, place);
  }

  field(
    name: string,
    parts: Omit<FieldParts, 'value' | 'productNames' | 'measures'>,
    instead: ShownInstead,
  ): ShownField {
    const { definition, type, cell, stored, standard, ownFormula, worked } = parts;
    const { products: productNames, measures } = this;
    const value = cell === undefined ? undefined : this.results.read(cell);
    const from = [definition, type, cell, value, stored, standard, ownFormula, worked, productNames, measures];
    return this.kept.fields.view(name, [...from, instead.shown, instead.kind, instead.typed, instead.chosen], () => ({
      ...shownField({ ...parts, value, productNames, measures }),
      ...instead,
    }));
  }
}

/** A template's own value as a field holds it: a date as the number of its day. */
export function plainStandard(value: number | string | undefined): number | string | undefined {
  return typeof value === 'string' ? (serialDay(value) ?? value) : value;
}
