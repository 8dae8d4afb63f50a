import type { ValueType } from '../formula/checked-tree.ts';
import { unitOf } from '../formula/value-type.ts';
import type { GivenValue, ProductRow } from '../template/entries.ts';
import type { ColumnFile, LineFile } from '../template/line-schema.ts';
import { namesItsRow, type RefusalContext, valueRefusal, whyNotEntered } from '../template/value-refusal.ts';
import { asWritten } from '../template/written-text.ts';
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
      return read.kind === 'fault' ? refused(read.reason) : readEntryNumber(read.value, definition, type);
    }
    case 'words':
      return judged(definition, { kind: 'written', value: asWritten(text) }, {});
    case 'choice':
    case 'product':
      return judged(definition, { kind: 'value', value: text.trim() }, { products: context.products });
    default:
      return refused(whyNotTyped(definition) ?? '');
  }
}

/** The same for a number that is in the entry's unit already. */
export function readEntryNumber(value: number, definition: LineFile | ColumnFile, type: ValueType): EntryReading {
  const refusal = whyNotTyped(definition);
  if (refusal !== undefined) return refused(refusal);
  // Adding 0 makes −0 a plain 0, as cells hold it.
  return judged(definition, { kind: 'value', value: value + 0 }, { unit: unitOf(type) });
}

/** Why nothing is typed into a line or column of this kind; undefined when something is. */
export function whyNotTyped(definition: LineFile | ColumnFile): string | undefined {
  const { kind, name } = definition;
  return kind === 'key' ? namesItsRow(name) : whyNotEntered(definition, name);
}

function judged(
  definition: LineFile | ColumnFile,
  given: Exclude<GivenValue, { kind: 'instead' }>,
  context: Omit<RefusalContext, 'name'>,
): EntryReading {
  const refusal = valueRefusal(definition, given, { ...context, name: definition.name });
  return refusal === undefined ? given : refused(refusal);
}

function refused(reason: string): EntryReading {
  return { kind: 'refused', reason };
}
