import { cellName } from '../../formula/cell-name.ts';
import type { Edit, SingleEdit } from '../../quote/edit.ts';
import { newRowEdit } from '../../quote/new-row.ts';
import { lineValue, type OptionResults } from '../../quote/option-results.ts';
import type { SheetPlace, StoredValue } from '../../quote/quote-document.ts';
import type { ProductRow } from '../../template/entries.ts';
import type { SheetEvents } from '../parts/sheet-events.ts';
import type { EntryDetail } from '../parts/typed-entry.ts';

/** What an edit is made from: where it was made, and the products it may bring in. */
export interface EditPlace {
  readonly sheet: SheetPlace;
  readonly results: OptionResults;
  readonly priceList: ReadonlyMap<string, ProductRow>;
}

/** An edit with the name of the line, cell or table at which a refusal is shown. */
export interface PlacedEdit {
  readonly edit: Edit;
  readonly at: string;
}

export const sheetEventTypes = [
  'line-entered',
  'line-reset',
  'lines-checked',
  'cell-entered',
  'cell-reset',
  'row-added',
  'row-removed',
  'row-moved',
] as const;

export type SheetEventType = (typeof sheetEventTypes)[number];

/** The edit that a sheet's event asks for. */
export function editOf<K extends SheetEventType>(
  type: K,
  detail: SheetEvents[K]['detail'],
  place: EditPlace,
): PlacedEdit;
export function editOf(
  type: SheetEventType,
  detail: SheetEvents[SheetEventType]['detail'],
  place: EditPlace,
): PlacedEdit {
  const { sheet, results } = place;
  if ('checked' in detail) return { at: detail.checked[0] ?? '', edit: checkedEdit(detail.checked, place) };
  if ('line' in detail) {
    const { line } = detail;
    const entered = 'value' in detail ? enteredParts(detail, place) : {};
    return { at: line, edit: { kind: 'enterLine', sheet, line, ...entered } };
  }
  const { table } = detail;
  if ('column' in detail) {
    const { row, column } = detail;
    const entered = 'value' in detail ? enteredParts(detail, place) : {};
    return { at: cellName(table, row, column), edit: { kind: 'enterCell', sheet, table, row, column, ...entered } };
  }
  if ('to' in detail) return { at: table, edit: { kind: 'moveRow', sheet, table, row: detail.row, to: detail.to } };
  if ('row' in detail) return { at: table, edit: { kind: 'removeRow', sheet, table, row: detail.row } };
  if (type !== 'row-added') throw new Error(`${type} names no row`);
  return { at: table, edit: newRowEdit(results, sheet, table, place.priceList) };
}

/** Says of lines that what stands there is right, all at once. */
function checkedEdit(lines: readonly string[], { sheet, results }: EditPlace): Edit {
  const edits = lines.flatMap((line): SingleEdit[] => {
    const value = lineValue(results, line);
    const isEntered = typeof value === 'number' || typeof value === 'string';
    return isEntered ? [{ kind: 'enterLine', sheet, line, value: { value, confirmed: true } }] : [];
  });
  return { kind: 'several', words: edits.length === 1 ? 'a line checked' : `${edits.length} lines checked`, edits };
}

function enteredParts(detail: EntryDetail, { priceList }: EditPlace): { value: StoredValue; product?: ProductRow } {
  const { value, typed, written, instead } = detail;
  if (written === true && typeof value === 'string') return { value: { written: value } };
  if (instead === true && typeof value === 'number') return { value: { instead: value } };
  const product = typeof value === 'string' ? priceList.get(value) : undefined;
  return { value: typed === undefined ? value : { value, typed }, ...(product && { product }) };
}
