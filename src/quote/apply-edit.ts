import { entryRefusal } from '../template/cell-contents.ts';
import type { CompiledStack } from '../template/compiled-stack.ts';
import type { ProductRow } from '../template/entries.ts';
import type { ColumnFile, LineFile } from '../template/line-schema.ts';
import { readIsoDate } from '../units/serial-day.ts';
import type { Edit } from './edit.ts';
import {
  entriesAt,
  mostOptions,
  type QuoteDocument,
  type SheetPlace,
  type StoredTable,
  type StoredValue,
} from './quote-document.ts';
import { addRow, enterCell, moveRow, removeRow, rowIds } from './stored-table.ts';

export type EditResult =
  | { readonly kind: 'applied'; readonly quote: QuoteDocument; readonly inverse: Edit }
  | { readonly kind: 'refused'; readonly reason: string };

/** Finds the compiled stack of an option; undefined for an option the quote lacks. */
export type StackOfOption = (option: string) => CompiledStack | undefined;

/**
 * The one door: gives the changed quote with the edit that undoes it, or says why not. Undoing gives back the same
 * document, value for value.
 */
export function applyEdit(quote: QuoteDocument, edit: Edit, stacks: StackOfOption): EditResult {
  switch (edit.kind) {
    case 'enterLine':
      return enterLine(quote, edit, stacks);
    case 'enterCell':
    case 'addRow':
    case 'removeRow':
    case 'moveRow':
      return editTable(quote, edit, stacks);
    case 'addOption':
      return addOption(quote, edit);
    case 'removeOption':
      return removeOption(quote, edit);
    case 'retitle':
      return applied({ ...quote, title: edit.title }, { kind: 'retitle', title: quote.title });
    case 'restoreTable': {
      const before = entriesAt(quote, edit.sheet)?.tables[edit.table];
      const inverse: Edit = { ...edit, kind: 'restoreTable', products: quote.products, ...content(before) };
      return applied({ ...withTable(quote, edit.sheet, edit.table, edit.content), products: edit.products }, inverse);
    }
    case 'restoreLine': {
      const before = entriesAt(quote, edit.sheet)?.lines[edit.line];
      const inverse: Edit = { ...edit, kind: 'restoreLine', products: quote.products, ...content(before) };
      return applied({ ...withLine(quote, edit.sheet, edit.line, edit.content), products: edit.products }, inverse);
    }
    case 'restoreProducts':
      return applied({ ...quote, products: edit.products }, { kind: 'restoreProducts', products: quote.products });
    default:
      return edit satisfies never;
  }
}

function applied(quote: QuoteDocument, inverse: Edit): EditResult {
  return { kind: 'applied', quote, inverse };
}

function refused(reason: string): EditResult {
  return { kind: 'refused', reason };
}

function content<T>(before: T | undefined): { content?: T } {
  return before === undefined ? {} : { content: before };
}

/** Any option's stack tells of the sheets that all options share. */
function stackAt(quote: QuoteDocument, sheet: SheetPlace, stacks: StackOfOption): CompiledStack | undefined {
  const option = sheet.kind === 'option' ? sheet.option : quote.options[0]?.id;
  return option === undefined ? undefined : stacks(option);
}

function layerOf(sheet: SheetPlace): 'shop' | 'floor' | 'system' {
  return sheet.kind === 'option' ? 'system' : sheet.kind;
}

function enterLine(
  quote: QuoteDocument,
  edit: Extract<Edit, { kind: 'enterLine' }>,
  stacks: StackOfOption,
): EditResult {
  const line = stackAt(quote, edit.sheet, stacks)?.lines.get(edit.line);
  if (line === undefined || line.layer !== layerOf(edit.sheet))
    return refused(`There is no line “${edit.line}” in this sheet.`);
  const refusal =
    edit.value === undefined
      ? undefined
      : valueRefusal(line.definition, edit.value, edit.product ? [...quote.products, edit.product] : quote.products);
  if (refusal !== undefined) return refused(refusal);
  const before = entriesAt(quote, edit.sheet)?.lines[edit.line];
  const inverse: Edit = {
    kind: 'restoreLine',
    sheet: edit.sheet,
    line: edit.line,
    products: quote.products,
    ...content(before),
  };
  return applied(withProduct(withLine(quote, edit.sheet, edit.line, edit.value), edit.product), inverse);
}

type TableEdit = Extract<Edit, { kind: 'enterCell' | 'addRow' | 'removeRow' | 'moveRow' }>;

function editTable(quote: QuoteDocument, edit: TableEdit, stacks: StackOfOption): EditResult {
  const table = stackAt(quote, edit.sheet, stacks)?.tables.get(edit.table);
  if (table === undefined || table.layer !== layerOf(edit.sheet))
    return refused(`There is no table “${edit.table}” in this sheet.`);
  const before = entriesAt(quote, edit.sheet)?.tables[edit.table];
  if (edit.kind === 'enterCell') {
    const definition = table.columns.get(edit.column)?.definition;
    if (definition === undefined) return refused(`The table “${edit.table}” has no column “${edit.column}”.`);
    const gathered = table.definition.rows === 'gathered';
    if (!gathered && !rowIds(table, before).includes(edit.row))
      return refused(`The table “${edit.table}” has no row “${edit.row}”.`);
    const products = edit.product ? [...quote.products, edit.product] : quote.products;
    const refusal = edit.value === undefined ? undefined : valueRefusal(definition, edit.value, products);
    if (refusal !== undefined) return refused(refusal);
  } else if (table.definition.rows !== 'free') return refused(`The rows of “${table.definition.title}” are fixed.`);
  const after = tableAfter(edit, table, before);
  if (typeof after === 'string') return refused(after);
  const inverse: Edit = {
    kind: 'restoreTable',
    sheet: edit.sheet,
    table: edit.table,
    products: quote.products,
    ...content(before),
  };
  const changed = withTable(quote, edit.sheet, edit.table, after);
  return applied(edit.kind === 'enterCell' ? withProduct(changed, edit.product) : changed, inverse);
}

function tableAfter(
  edit: TableEdit,
  table: Parameters<typeof rowIds>[0],
  before: StoredTable | undefined,
): StoredTable | string {
  switch (edit.kind) {
    case 'enterCell':
      return enterCell(before, edit.row, edit.column, edit.value);
    case 'addRow':
      return addRow(table, before, edit.row, edit.at, edit.cells);
    case 'removeRow':
      return removeRow(table, before, edit.row);
    case 'moveRow':
      return moveRow(table, before, edit.row, edit.to);
    default:
      return edit satisfies never;
  }
}

/** Why a line or cell cannot hold a value, or undefined when it can. */
function valueRefusal(
  definition: LineFile | ColumnFile,
  stored: StoredValue,
  products: readonly ProductRow[],
): string | undefined {
  const { name } = definition;
  if (typeof stored === 'object' && 'instead' in stored) {
    if (definition.kind !== 'formula') return `“${name}” is not worked out; enter it instead.`;
    return Number.isFinite(stored.instead) ? undefined : `“${name}” must be a number.`;
  }
  const value = typeof stored === 'object' ? stored.value : stored;
  switch (definition.kind) {
    case 'formula':
    case 'check':
      return `“${name}” is worked out, not entered.`;
    case 'text':
      return `“${name}” is free text of the sheet.`;
    case 'key':
      return typeof value === 'string' && /^[a-z][a-z0-9_]*$/.test(value)
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
      const number = typeof value === 'number' ? value : dayOf(value);
      return number === undefined ? `“${name}” must be a number.` : entryRefusal(definition, name, number);
    }
    default:
      return definition satisfies never;
  }
}

function dayOf(text: string): number | undefined {
  const read = readIsoDate(text);
  return read.kind === 'day' ? read.day : undefined;
}

function addOption(quote: QuoteDocument, edit: Extract<Edit, { kind: 'addOption' }>): EditResult {
  if (quote.options.length >= mostOptions) return refused(`A quote has at most ${mostOptions} options.`);
  if (quote.options.some((option) => option.id === edit.option.id))
    return refused('This option is in the quote already.');
  const options = quote.options.toSpliced(edit.at, 0, edit.option);
  const products = edit.products.reduce<QuoteDocument>(withProduct, quote).products;
  return applied({ ...quote, options, products }, { kind: 'removeOption', option: edit.option.id });
}

function removeOption(quote: QuoteDocument, edit: Extract<Edit, { kind: 'removeOption' }>): EditResult {
  const at = quote.options.findIndex((option) => option.id === edit.option);
  const option = quote.options[at];
  if (option === undefined) return refused('The quote has no such option.');
  if (quote.options.length === 1) return refused('A quote keeps at least one option.');
  return applied(
    { ...quote, options: quote.options.toSpliced(at, 1) },
    { kind: 'addOption', option, at, products: [] },
  );
}

function withProduct(quote: QuoteDocument, product: ProductRow | undefined): QuoteDocument {
  if (product === undefined || quote.products.some((known) => known.product === product.product)) return quote;
  return { ...quote, products: [...quote.products, product] };
}

function withLine(
  quote: QuoteDocument,
  sheet: SheetPlace,
  line: string,
  value: StoredValue | undefined,
): QuoteDocument {
  return withEntries(quote, sheet, (entries) => ({ ...entries, lines: withKey(entries.lines, line, value) }));
}

function withTable(
  quote: QuoteDocument,
  sheet: SheetPlace,
  table: string,
  stored: StoredTable | undefined,
): QuoteDocument {
  return withEntries(quote, sheet, (entries) => ({ ...entries, tables: withKey(entries.tables, table, stored) }));
}

function withEntries(
  quote: QuoteDocument,
  sheet: SheetPlace,
  change: (entries: QuoteDocument['shop']) => QuoteDocument['shop'],
): QuoteDocument {
  if (sheet.kind === 'shop') return { ...quote, shop: change(quote.shop) };
  if (sheet.kind === 'floor') return { ...quote, floor: change(quote.floor) };
  const options = quote.options.map((option) =>
    option.id === sheet.option ? { ...option, entries: change(option.entries) } : option,
  );
  return { ...quote, options };
}

function withKey<T>(
  record: Readonly<Record<string, T>>,
  key: string,
  value: T | undefined,
): Readonly<Record<string, T>> {
  if (value !== undefined) return { ...record, [key]: value };
  const { [key]: _, ...rest } = record;
  return rest;
}
