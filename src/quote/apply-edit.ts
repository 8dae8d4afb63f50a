import type { CompiledStack, CompiledTable } from '../template/compiled-stack.ts';
import type { ProductRow } from '../template/entries.ts';
import { withLine, withPass, withProducts, withTable } from './changed-quote.ts';
import type { Edit, SingleEdit } from './edit.ts';
import { passRefusal } from './pass-refusal.ts';
import {
  entriesAt,
  layerOf,
  mostOptions,
  type QuoteDocument,
  type SheetPlace,
  type StoredTable,
} from './quote-document.ts';
import { addRow, enterCell, moveRow, removeRow, replaceRows, rowIds } from './stored-table.ts';
import { valueRefusal } from './value-refusal.ts';

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
    case 'replaceRows':
      return editTable(quote, edit, stacks);
    case 'several':
      return applySeveral(quote, edit, stacks);
    case 'addOption':
      return addOption(quote, edit);
    case 'removeOption':
      return removeOption(quote, edit);
    case 'retitle':
      return applied({ ...quote, title: edit.title }, { kind: 'retitle', title: quote.title });
    case 'passStop':
      return passStop(quote, edit, stacks);
    case 'restoreTable': {
      const changed = withTable(quote, edit.sheet, edit.table, edit.content);
      return tableChanged(quote, edit, ofProducts(changed, edit.products));
    }
    case 'restoreLine': {
      const changed = withLine(quote, edit.sheet, edit.line, edit.content);
      return lineChanged(quote, edit, ofProducts(changed, edit.products));
    }
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

/** With these products only, where an edit says which. */
function ofProducts(quote: QuoteDocument, products: readonly ProductRow[] | undefined): QuoteDocument {
  return products === undefined ? quote : { ...quote, products };
}

type TablePlace = Pick<Extract<SingleEdit, { kind: 'restoreTable' }>, 'sheet' | 'table'>;
type LinePlace = Pick<Extract<SingleEdit, { kind: 'restoreLine' }>, 'sheet' | 'line'>;

/** A table is another: its way back is the table, and the products where others came, as they stood in `quote`. */
function tableChanged(quote: QuoteDocument, { sheet, table }: TablePlace, after: QuoteDocument): EditResult {
  const content = entriesAt(quote, sheet)?.tables[table];
  const before = { ...productsBefore(quote, after), ...(content !== undefined && { content }) };
  return applied(after, { kind: 'restoreTable', sheet, table, ...before });
}

function lineChanged(quote: QuoteDocument, { sheet, line }: LinePlace, after: QuoteDocument): EditResult {
  const content = entriesAt(quote, sheet)?.lines[line];
  const before = { ...productsBefore(quote, after), ...(content !== undefined && { content }) };
  return applied(after, { kind: 'restoreLine', sheet, line, ...before });
}

function productsBefore(
  { products }: QuoteDocument,
  after: QuoteDocument,
): { readonly products?: readonly ProductRow[] } {
  return products === after.products ? {} : { products };
}

/** The products an edit brings into the quote. */
function broughtBy(edit: SingleEdit): readonly ProductRow[] {
  if (edit.kind === 'enterLine' || edit.kind === 'enterCell') return edit.product === undefined ? [] : [edit.product];
  return edit.kind === 'addOption' || edit.kind === 'addRow' ? (edit.products ?? []) : [];
}

/** Any option's stack tells of the sheets that all options share. */
function stackAt(quote: QuoteDocument, sheet: SheetPlace, stacks: StackOfOption): CompiledStack | undefined {
  const option = sheet.kind === 'option' ? sheet.option : quote.options[0]?.id;
  return option === undefined ? undefined : stacks(option);
}

function enterLine(
  quote: QuoteDocument,
  edit: Extract<Edit, { kind: 'enterLine' }>,
  stacks: StackOfOption,
): EditResult {
  const line = stackAt(quote, edit.sheet, stacks)?.lines.get(edit.line);
  if (line === undefined || line.layer !== layerOf(edit.sheet))
    return refused(`There is no line “${edit.line}” in this sheet.`);
  const supplied = withProducts(quote, broughtBy(edit));
  const refusal = edit.value === undefined ? undefined : valueRefusal(line.definition, edit.value, supplied.products);
  if (refusal !== undefined) return refused(refusal);
  return lineChanged(quote, edit, withLine(supplied, edit.sheet, edit.line, edit.value));
}

type TableEdit = Extract<Edit, { kind: 'enterCell' | 'addRow' | 'removeRow' | 'moveRow' | 'replaceRows' }>;

function editTable(quote: QuoteDocument, edit: TableEdit, stacks: StackOfOption): EditResult {
  const table = stackAt(quote, edit.sheet, stacks)?.tables.get(edit.table);
  if (table === undefined || table.layer !== layerOf(edit.sheet))
    return refused(`There is no table “${edit.table}” in this sheet.`);
  const before = entriesAt(quote, edit.sheet)?.tables[edit.table];
  const supplied = withProducts(quote, broughtBy(edit));
  if (edit.kind === 'enterCell') {
    const definition = table.columns.get(edit.column)?.definition;
    if (definition === undefined) return refused(`The table “${edit.table}” has no column “${edit.column}”.`);
    if (definition.kind === 'key' && table.definition.rows !== 'free')
      return refused(`The rows of “${table.definition.title}” have their names from the sheet.`);
    const gathered = table.definition.rows === 'gathered';
    if (!gathered && !rowIds(table, before).includes(edit.row))
      return refused(`The table “${edit.table}” has no row “${edit.row}”.`);
    const refusal = edit.value === undefined ? undefined : valueRefusal(definition, edit.value, supplied.products);
    if (refusal !== undefined) return refused(refusal);
  } else if (table.definition.rows !== 'free') return refused(`The rows of “${table.definition.title}” are fixed.`);
  const after = tableAfter(edit, table, before);
  if (typeof after === 'string') return refused(after);
  return tableChanged(quote, edit, withTable(supplied, edit.sheet, edit.table, after));
}

function tableAfter(edit: TableEdit, table: CompiledTable, before: StoredTable | undefined): StoredTable | string {
  switch (edit.kind) {
    case 'enterCell':
      return enterCell(before, edit.row, edit.column, edit.value);
    case 'addRow':
      return addRow(table, before, edit.row, edit.at, edit.cells);
    case 'removeRow':
      return removeRow(table, before, edit.row);
    case 'moveRow':
      return moveRow(table, before, edit.row, edit.to);
    case 'replaceRows':
      return replaceRows(table, edit.rows);
    default:
      return edit satisfies never;
  }
}

/** All or none: what one of them refuses leaves the quote as it was. */
function applySeveral(
  quote: QuoteDocument,
  edit: Extract<Edit, { kind: 'several' }>,
  stacks: StackOfOption,
): EditResult {
  let current = quote;
  const inverses: SingleEdit[] = [];
  for (const one of edit.edits) {
    const result = applyEdit(current, one, stacks);
    if (result.kind === 'refused') return result;
    current = result.quote;
    if (result.inverse.kind !== 'several') inverses.unshift(result.inverse);
  }
  return applied(current, { kind: 'several', words: edit.words, edits: inverses });
}

/** Taking a pass back is refused of no check: what it was of may be gone. */
function passStop(quote: QuoteDocument, edit: Extract<Edit, { kind: 'passStop' }>, stacks: StackOfOption): EditResult {
  const { kind, sheet, check, pass } = edit;
  const entries = entriesAt(quote, sheet);
  const stack = stackAt(quote, sheet, stacks);
  if (entries === undefined || stack === undefined) return refused('The quote has no such option.');
  const refusal = pass && passRefusal(stack, layerOf(sheet), check, pass);
  if (refusal !== undefined) return refused(refusal);
  const before = entries.passed?.[check];
  const inverse: Edit = { kind, sheet, check, ...(before !== undefined && { pass: before }) };
  return applied(withPass(quote, sheet, check, pass), inverse);
}

function addOption(quote: QuoteDocument, edit: Extract<Edit, { kind: 'addOption' }>): EditResult {
  if (quote.options.length >= mostOptions) return refused(`A quote has at most ${mostOptions} options.`);
  if (quote.options.some((option) => option.id === edit.option.id))
    return refused('This option is in the quote already.');
  const supplied = withProducts(quote, broughtBy(edit));
  const after = { ...supplied, options: quote.options.toSpliced(edit.at, 0, edit.option) };
  return applied(after, { kind: 'removeOption', option: edit.option.id, ...productsBefore(quote, after) });
}

function removeOption(quote: QuoteDocument, edit: Extract<Edit, { kind: 'removeOption' }>): EditResult {
  const at = quote.options.findIndex((option) => option.id === edit.option);
  const option = quote.options[at];
  if (option === undefined) return refused('The quote has no such option.');
  if (quote.options.length === 1) return refused('A quote keeps at least one option.');
  const after = ofProducts({ ...quote, options: quote.options.toSpliced(at, 1) }, edit.products);
  const gone = quote.products.filter(({ product }) => !after.products.some((left) => left.product === product));
  return applied(after, { kind: 'addOption', option, at, products: gone });
}
