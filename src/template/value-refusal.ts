import { codeRefusal } from '../formula/code-text.ts';
import { nearestName } from '../formula/nearest-name.ts';
import { type Limits, limitsRefusal } from '../units/limits.ts';
import type { Measures } from '../units/measures.ts';
import { didYouMean } from '../units/nearest-word.ts';
import { serialDay } from '../units/serial-day.ts';
import { one, parseUnit, type Unit } from '../units/unit.ts';
import { isConstant } from './constant.ts';
import type { GivenValue, ProductRow } from './entries.ts';
import type { ColumnFile, LineFile } from './line-schema.ts';
import { rowNameRefusal } from './row-names.ts';
import { writtenRefusal } from './written-text.ts';

type Definition = LineFile | ColumnFile;
type EntryLike = Extract<Definition, { kind: 'entry' }>;

/** What a refusal is told with. */
export interface RefusalContext {
  /** What its reader calls the line or column: the name in files and commands, the label in the app. */
  readonly name: string;
  /** The unit of an entry whose column has another in other rows; left out where the row is not known. */
  readonly unit?: Unit | undefined;
  /** What limits are told in; `us` unless given. */
  readonly measures?: Measures;
  /** Left out where no price list is at hand: then any code may be a product's. */
  readonly products?: ReadonlyMap<string, ProductRow> | undefined;
}

/**
 * Why a line or a cell cannot hold a value, or undefined when it can: the one place that decides it, for sheets, quotes,
 * edits and what is typed. Example: 2 for a share of 0 to 0.95 → “target_margin” must lie between 0 and 95 %; 200 % does not.
 */
export function valueRefusal(definition: Definition, given: GivenValue, context: RefusalContext): string | undefined {
  const { name } = context;
  switch (given.kind) {
    case 'instead':
      return departureRefusal(definition, given.value, name);
    case 'written':
      return writtenWordsRefusal(definition, given.value, name);
    case 'value':
      return enteredRefusal(definition, given.value, context);
    default:
      return given satisfies never;
  }
}

/** Why nothing is entered in a line or column of this kind; undefined when something is. */
export function whyNotEntered(definition: Definition, name: string): string | undefined {
  if (isConstant(definition)) return `“${name}” is a constant: nothing is entered over it.`;
  const { kind } = definition;
  switch (kind) {
    case 'operated':
    case 'formula':
      return workedOut(name);
    case 'check':
      return `“${name}” is a check: it is told, not entered.`;
    case 'text':
      return `“${name}” is free text of the sheet, and no price reads it.`;
    case 'key':
    case 'entry':
    case 'choice':
    case 'product':
    case 'words':
      return undefined;
    default:
      return kind satisfies never;
  }
}

/** Of a formula, and of a cell whose row gives one. */
export function workedOut(name: string): string {
  return `“${name}” is worked out, not entered.`;
}

/** Of the key of a row that stands already: only who adds a row says what it is called. */
export function namesItsRow(name: string): string {
  return `“${name}” is the name of its row, and is given with the row.`;
}

/** Why the rows of a column give no formulas of their own; undefined when they may. */
export function rowFormulaRefusal(definition: ColumnFile): string | undefined {
  const may = definition.kind === 'entry' && definition.perRow === true;
  return may ? undefined : `A row gives no formula for “${definition.name}”.`;
}

/** What a file gives a line or cell, as it would be entered: words as written, a date as its serial day. */
export function givenInFile(definition: Definition, value: number | string): GivenValue {
  if (definition.kind === 'words' && typeof value === 'string') return { kind: 'written', value };
  const isDate = definition.kind === 'entry' && definition.unit === 'date';
  // A day's number is for cells; in a file it says nothing to people.
  return { kind: 'value', value: isDate ? (serialDay(String(value)) ?? String(value)) : value };
}

/** Words stand in a line for them, and name a row. */
function writtenWordsRefusal(definition: Definition, words: string, name: string): string | undefined {
  if (definition.kind === 'key') return rowNameRefusal(words);
  return definition.kind === 'words' ? writtenRefusal(words) : `“${name}” takes no words.`;
}

function departureRefusal(definition: Definition, value: number, name: string): string | undefined {
  if (definition.kind === 'check') return `“${name}” is a check; no value stands in its place.`;
  if (definition.kind === 'operated')
    return `“${name}” is worked out with its whole table; no number stands in its place.`;
  if (definition.kind !== 'formula') return `“${name}” is not worked out; enter it instead.`;
  if (definition.code) return `“${name}” is a code; no number stands in its place.`;
  return Number.isFinite(value) ? undefined : notANumber(name);
}

function enteredRefusal(definition: Definition, value: number | string, context: RefusalContext): string | undefined {
  const { name } = context;
  switch (definition.kind) {
    case 'operated':
    case 'formula':
    case 'check':
    case 'text':
      return whyNotEntered(definition, name);
    case 'words':
      return `“${name}” takes words${typeof value === 'number' ? ', not a number' : ' that a person writes'}.`;
    case 'key':
      return codeRefusal(String(value));
    case 'choice':
    case 'product':
      if (typeof value === 'number') return `“${name}” takes a code, not a number.`;
      return definition.kind === 'choice'
        ? choiceRefusal(definition, value, name)
        : productRefusal(definition, value, context);
    case 'entry':
      return entryRefusal(definition, value, context);
    default:
      return definition satisfies never;
  }
}

function choiceRefusal(
  { options }: Extract<Definition, { kind: 'choice' }>,
  value: string,
  name: string,
): string | undefined {
  const codes = options.map(({ code }) => code);
  if (codes.includes(value)) return undefined;
  const near = nearestName(value, codes);
  const hint = near === undefined ? `: ${codes.join(', ')}.` : `. Did you mean “${near}”?`;
  return `“${value}” is not among the choices of “${name}”${hint}`;
}

function productRefusal(
  { accepts }: Extract<Definition, { kind: 'product' }>,
  value: string,
  { name, products }: RefusalContext,
): string | undefined {
  if (products === undefined) return codeRefusal(value);
  const found = products.get(value);
  if (found !== undefined)
    return accepts.includes(found.kind)
      ? undefined
      : `“${value}” is of the kind ${found.kind}; “${name}” takes ${accepts.join(' or ')}.`;
  const fitting = [...products.values()].filter(({ kind }) => accepts.includes(kind));
  const near = nearestName(
    value,
    fitting.map(({ product }) => product),
  );
  return `The price list has no product “${value}”.${didYouMean(near)}`;
}

function entryRefusal(definition: EntryLike, value: number | string, context: RefusalContext): string | undefined {
  const { name } = context;
  if (typeof value === 'string')
    return definition.unit === 'date'
      ? `“${value}” is no date; write it as 2026-05-31.`
      : `“${name}” is a number in ${definition.unit ?? 'its unit'}, not “${value}”.`;
  if (!Number.isFinite(value)) return notANumber(name);
  const beyond = definition.limits && beyondLimits(value, definition.limits, definition, context);
  if (beyond !== undefined) return beyond;
  if (definition.whole && !Number.isInteger(value)) return `“${name}” must be a whole number.`;
  if (definition.yesNo && value !== 0 && value !== 1) return `“${name}” is 1 for yes or 0 for no.`;
  return undefined;
}

function beyondLimits(
  value: number,
  limits: Limits,
  definition: EntryLike,
  { name, unit, measures }: RefusalContext,
): string | undefined {
  const declared = definition.unit === undefined ? undefined : parseUnit(definition.unit);
  return limitsRefusal(name, value, limits, declared?.kind === 'unit' ? declared.unit : (unit ?? one), measures);
}

function notANumber(name: string): string {
  return `“${name}” must be a number.`;
}
