import type { CompiledStack } from '../template/compiled-stack.ts';
import type { ProductRow } from '../template/entries.ts';
import { withLine, withPass, withProducts, withTable } from './changed-quote.ts';
import type { Edit, SingleEdit } from './edit.ts';
import { mostTogether, ofText, overLimits } from './edit-limits.ts';
import { enteredRefusal } from './entered-refusal.ts';
import { passRefusal } from './pass-refusal.ts';
import { entriesAt, layerOf, mostOptions, type QuoteDocument, type SheetPlace } from './quote-document.ts';
import { editedTables, type TableEdit } from './table-edit.ts';

export type EditResult =
  | { readonly kind: 'applied'; readonly quote: QuoteDocument; readonly inverse: Edit }
  | { readonly kind: 'refused'; readonly reason: string };

/** Finds the compiled stack of an option; undefined for an option the quote lacks. */
export type StackOfOption = (option: string) => CompiledStack | undefined;

/**
 * The one door: gives the changed quote with the edit that undoes it, or says why not. Undoing gives back the same
 * document, value for value. What it takes, and its inverse, the log can read back.
 */
export function applyEdit(quote: QuoteDocument, edit: Edit, stacks: StackOfOption): EditResult {
  const over = edit.kind === 'several' ? undefined : overLimits(edit);
  if (over !== undefined) return refused(over);
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
      return tablesChanged(quote, edit.sheet, [edit.table], ofProducts(changed, edit.products));
    }
    case 'restoreLine': {
      const changed = withLine(quote, edit.sheet, edit.line, edit.content);
      return lineChanged(quote, edit, ofProducts(changed, edit.products));
    }
    default:
      return edit satisfies never;
  }
}

function singleEdits(edit: Edit): readonly SingleEdit[] {
  return edit.kind === 'several' ? edit.edits : [edit];
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

/**
 * Tables are others: the way back is what they were, and the products of before where others came, as they stood in
 * `quote`.
 */
function tablesChanged(
  quote: QuoteDocument,
  sheet: SheetPlace,
  tables: Iterable<string>,
  after: QuoteDocument,
): EditResult {
  const before = entriesAt(quote, sheet)?.tables;
  const edits = [...tables].map((table): SingleEdit => {
    const content = before?.[table];
    const products = productsBefore(quote, after);
    return { kind: 'restoreTable', sheet, table, ...products, ...(content !== undefined && { content }) };
  });
  const [first, ...others] = edits;
  return applied(after, others.length === 0 && first ? first : { kind: 'several', words: '', edits });
}

function lineChanged(
  quote: QuoteDocument,
  { sheet, line }: { readonly sheet: SheetPlace; readonly line: string },
  after: QuoteDocument,
): EditResult {
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
  const refusal = enteredRefusal(line.definition, edit.value, supplied.products);
  if (refusal !== undefined) return refused(refusal);
  return lineChanged(quote, edit, withLine(supplied, edit.sheet, edit.line, edit.value));
}

/** The rows or a cell of a table, with the rows of other tables that come and go with its own. */
function editTable(quote: QuoteDocument, edit: TableEdit, stacks: StackOfOption): EditResult {
  const stack = stackAt(quote, edit.sheet, stacks);
  const supplied = withProducts(quote, broughtBy(edit));
  const edited = editedTables(edit, stack, entriesAt(quote, edit.sheet)?.tables ?? {}, supplied.products);
  if (edited.kind === 'refused') return edited;
  let after = supplied;
  for (const [name, stored] of edited.tables) after = withTable(after, edit.sheet, name, stored);
  return tablesChanged(quote, edit.sheet, edited.tables.keys(), after);
}

/** All or none: what one of them refuses leaves the quote as it was. */
function applySeveral(
  quote: QuoteDocument,
  edit: Extract<Edit, { kind: 'several' }>,
  stacks: StackOfOption,
): EditResult {
  const over =
    ofText(edit.words) ?? (edit.edits.length > mostTogether ? 'These are too many edits for one.' : undefined);
  if (over !== undefined) return refused(over);
  let current = quote;
  const inverses: SingleEdit[] = [];
  for (const one of edit.edits) {
    const result = applyEdit(current, one, stacks);
    if (result.kind === 'refused') return result;
    current = result.quote;
    inverses.unshift(...singleEdits(result.inverse));
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
