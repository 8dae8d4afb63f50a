import { isCode } from '../formula/code-text.ts';
import { entryRefusal } from '../template/cell-contents.ts';
import { isConstant } from '../template/constant.ts';
import type { ProductRow } from '../template/entries.ts';
import type { ColumnFile, LineFile } from '../template/line-schema.ts';
import { rowNameRefusal } from '../template/row-names.ts';
import { writtenRefusal } from '../template/written-text.ts';
import { serialDay } from '../units/serial-day.ts';
import type { StoredValue } from './quote-document.ts';

/** Why a line or cell cannot hold a value, or undefined when it can. */
export function valueRefusal(
  definition: LineFile | ColumnFile,
  stored: StoredValue,
  products: readonly ProductRow[],
): string | undefined {
  // People know the line by its label; the code is for formulas.
  const name = definition.label;
  if (isConstant(definition)) return `“${name}” is a constant: nothing is entered over it.`;
  if (typeof stored === 'object' && 'instead' in stored) {
    if (definition.kind !== 'formula') return `“${name}” is not worked out; enter it instead.`;
    return Number.isFinite(stored.instead) ? undefined : `“${name}” must be a number.`;
  }
  if (typeof stored === 'object' && 'written' in stored && definition.kind === 'key')
    return rowNameRefusal(stored.written);
  if (typeof stored === 'object' && 'written' in stored)
    return definition.kind === 'words' ? writtenRefusal(stored.written) : `“${name}” takes no words.`;
  const value = typeof stored === 'object' ? stored.value : stored;
  switch (definition.kind) {
    case 'operated':
    case 'formula':
    case 'check':
      return `“${name}” is worked out, not entered.`;
    case 'text':
      return `“${name}” is free text of the sheet.`;
    case 'words':
      return `“${name}” takes words that a person writes.`;
    case 'key':
      return typeof value === 'string' && isCode(value)
        ? undefined
        : 'A row’s code is lower-case letters, digits and underscores.';
    case 'choice': {
      const codes = definition.options.map((option) => option.code);
      return typeof value === 'string' && codes.includes(value)
        ? undefined
        : `“${name}” is one of ${codes.join(', ')}.`;
    }
    case 'product': {
      const product = products.find((candidate) => candidate.product === value);
      if (product === undefined) return `The price list has no product “${value}”.`;
      return definition.accepts.includes(product.kind)
        ? undefined
        : `“${name}” takes a product of the kind ${definition.accepts.join(' or ')}.`;
    }
    case 'entry': {
      const number = typeof value === 'number' ? value : serialDay(value);
      return number === undefined ? `“${name}” must be a number.` : entryRefusal(definition, name, number);
    }
    default:
      return definition satisfies never;
  }
}
