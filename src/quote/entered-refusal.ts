import { isConstant } from '../template/constant.ts';
import type { ProductRow } from '../template/entries.ts';
import type { ColumnFile, LineFile } from '../template/line-schema.ts';
import { valueRefusal, whyNotEntered } from '../template/value-refusal.ts';
import type { StoredValue } from './quote-document.ts';
import { givenValue } from './stack-entries.ts';

/** Why an edit cannot enter a value, or undefined when it can. People know a line by its label; its name is for formulas. */
export function enteredRefusal(
  definition: LineFile | ColumnFile,
  value: StoredValue | undefined,
  products: readonly ProductRow[],
): string | undefined {
  if (value === undefined) return undefined;
  // A departure of a quote made before the line was known as a constant is still laid out.
  if (isConstant(definition)) return whyNotEntered(definition, definition.label);
  const byCode = new Map(products.map((product) => [product.product, product]));
  return valueRefusal(definition, givenValue(value), { name: definition.label, products: byCode });
}
