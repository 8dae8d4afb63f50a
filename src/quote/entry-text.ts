import type { ValueType } from '../formula/checked-tree.ts';
import { entryRefusal } from '../template/cell-contents.ts';
import { isConstant } from '../template/constant.ts';
import type { ProductRow } from '../template/entries.ts';
import type { ColumnFile, LineFile } from '../template/line-schema.ts';
import { asWritten, writtenRefusal } from '../template/written-text.ts';
import { didYouMean, nearestWord } from '../units/nearest-word.ts';
import { readTypedIn } from '../units/typed-measure.ts';
import type { TypedOptions } from '../units/typed-number.ts';

export type EntryReading =
  | { readonly kind: 'value'; readonly value: number | string }
  /** Words as they are kept. */
  | { readonly kind: 'written'; readonly value: string }
  | { readonly kind: 'refused'; readonly reason: string };

/** What entries are read against. */
export interface EntryContext {
  readonly products: ReadonlyMap<string, ProductRow>;
  /** How shares are meant: 8 is 8 % for people in a field, 0.08 is 8 % on a command line. */
  readonly typed: TypedOptions;
}

/**
 * Reads what is typed into a line or a cell: a number in its own unit, or with its metric unit behind it (a date as its
 * serial day), the code of a choice, that of a product, or words. Refused with the reason: what is worked out, what lies outside the limits, an unknown code.
 * Example: `22' 6"` into an entry in ft → 22.5.
 */
export function readEntryText(
  text: string,
  definition: LineFile | ColumnFile,
  type: ValueType,
  context: EntryContext,
): EntryReading {
  switch (definition.kind) {
    case 'entry': {
      if (type.kind !== 'number') throw new Error(`The entry ${definition.name} has no unit`);
      const read = readTypedIn(text, type.unit, 'us', context.typed);
      return read.kind === 'fault' ? refused(read.reason) : readEntryNumber(read.value, definition);
    }
    case 'words':
      return readWords(text, definition.name);
    case 'choice':
    case 'product':
      return readCode(text, definition, context.products);
    default:
      return refused(whyNotEntered(definition) ?? '');
  }
}

/** The same for a number that is in the entry's unit already. */
export function readEntryNumber(value: number, definition: LineFile | ColumnFile): EntryReading {
  const { name } = definition;
  if (definition.kind !== 'entry')
    return refused(
      whyNotEntered(definition) ?? `“${name}” takes ${definition.kind === 'words' ? 'words' : 'a code'}, not a number.`,
    );
  const refusal = entryRefusal(definition, name, value);
  // Adding 0 makes −0 a plain 0, as cells hold it.
  return refusal === undefined ? { kind: 'value', value: value + 0 } : refused(refusal);
}

/** Why nothing is entered in a line or column of this kind; undefined when something is. */
export function whyNotEntered(definition: LineFile | ColumnFile): string | undefined {
  const { kind, name } = definition;
  if (isConstant(definition)) return `“${name}” is a constant: nothing is entered over it.`;
  switch (kind) {
    case 'operated':
    case 'formula':
      return `“${name}” is worked out, not entered.`;
    case 'check':
      return `“${name}” is a check: it is told, not entered.`;
    case 'text':
      return `“${name}” is free text of the sheet, and no price reads it.`;
    case 'key':
      return `“${name}” is the name of its row, and is given with the row.`;
    case 'entry':
    case 'choice':
    case 'product':
    case 'words':
      return undefined;
    default:
      return kind satisfies never;
  }
}

/** The code of a choice or of a product. */
function readCode(
  text: string,
  definition: Extract<LineFile | ColumnFile, { kind: 'choice' | 'product' }>,
  products: ReadonlyMap<string, ProductRow>,
): EntryReading {
  const code = text.trim();
  const { name } = definition;
  if (definition.kind === 'choice') {
    const codes = definition.options.map((option) => option.code);
    if (codes.includes(code)) return { kind: 'value', value: code };
    const near = nearestWord(code, codes);
    const hint = near === undefined ? `: ${codes.join(', ')}.` : `. Did you mean “${near}”?`;
    return refused(`“${code}” is not among the choices of “${name}”${hint}`);
  }
  const accepted = [...products.values()].filter(({ kind }) => definition.accepts.includes(kind));
  if (accepted.some(({ product }) => product === code)) return { kind: 'value', value: code };
  const found = products.get(code);
  if (found !== undefined)
    return refused(`“${code}” is of the kind ${found.kind}; “${name}” takes ${definition.accepts.join(' or ')}.`);
  const near = nearestWord(
    code,
    accepted.map(({ product }) => product),
  );
  return refused(`The price list has no product “${code}”.${didYouMean(near)}`);
}

function readWords(text: string, name: string): EntryReading {
  const value = asWritten(text);
  const refusal = writtenRefusal(value);
  return refusal === undefined ? { kind: 'written', value } : refused(`“${name}”: ${refusal}`);
}

function refused(reason: string): EntryReading {
  return { kind: 'refused', reason };
}
