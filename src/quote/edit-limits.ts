import { namePatterns } from '../formula/cell-name.ts';
import { isCode } from '../formula/code-text.ts';
import type { RowCell, RowFile } from '../template/line-schema.ts';
import { sheetLimits } from '../template/sheet-limits.ts';
import type { SingleEdit } from './edit.ts';
import { type PassedStop, passLimits, type StoredValue } from './quote-document.ts';

/** As many as a full table pasted at once. */
export const mostTogether = 5000;

/** A row or option: words joined by underscores or hyphens, longer than a template's by the number a new one gets. */
export const rowIdPattern = /^[a-z][a-z0-9_-]*$/;
export const longestRowId = 100;

/** A line, or `table.row.column`. */
export const checkNamePattern = namePatterns.lineOrCell;
export const longestCheckName = 300;

/**
 * Why an edit could not be read back from the log, or undefined when it can. Its shape is sure by its type; what is looked at
 * is what people and templates put into it: texts, ids of rows, places.
 */
export function overLimits(edit: SingleEdit): string | undefined {
  switch (edit.kind) {
    case 'enterLine':
      return ofValue(edit.value);
    case 'enterCell':
      return ofId(edit.row) ?? ofValue(edit.value);
    case 'addRow':
      return ofRow(edit.row, edit.cells) ?? ofPlace(edit.at);
    case 'moveRow':
      return ofPlace(edit.to);
    case 'replaceRows':
      return firstOf(edit.rows, ({ row, cells }) => ofRow(row, cells));
    case 'addOption':
      return ofId(edit.option.id) ?? ofText(edit.option.title) ?? ofPlace(edit.at);
    case 'retitle':
      return ofText(edit.title);
    case 'passStop':
      return ofCheck(edit.check) ?? (edit.pass && ofPass(edit.pass));
    // They name what stands in the quote, or put back what stood there.
    case 'removeRow':
    case 'removeOption':
    case 'restoreTable':
    case 'restoreLine':
      return undefined;
    default:
      return edit satisfies never;
  }
}

/** A text that people read, of any kind. */
export function ofText(text: string, most: number = sheetLimits.text): string | undefined {
  return text.length <= most ? undefined : `At most ${most} characters may stand here; these are ${text.length}.`;
}

function ofValue(value: StoredValue | undefined): string | undefined {
  if (typeof value !== 'object' || 'written' in value) return undefined;
  if ('instead' in value) return ofText(value.why ?? '');
  return ofText(value.typed ?? '') ?? ofText(value.from ?? '');
}

function ofId(id: string): string | undefined {
  const isId = id.length <= longestRowId && rowIdPattern.test(id);
  return isId ? undefined : `“${id.slice(0, longestRowId)}” is no id of a row or an option.`;
}

function ofCheck(name: string): string | undefined {
  const isName = name.length <= longestCheckName && checkNamePattern.test(name);
  return isName ? undefined : `“${name.slice(0, longestCheckName)}” is no name of a check.`;
}

function ofRow(id: string, cells: RowFile): string | undefined {
  const strange = Object.keys(cells).find((column) => !isCode(column));
  if (strange !== undefined) return `“${strange.slice(0, longestRowId)}” is no name of a column.`;
  return ofId(id) ?? firstOf(Object.values(cells), ofCell);
}

function ofCell(cell: RowCell): string | undefined {
  if (typeof cell === 'number') return Number.isFinite(cell) ? undefined : 'A cell holds a number or a text.';
  if (typeof cell === 'string') return ofText(cell);
  return cell.formula === '' ? 'A formula says something.' : ofText(cell.formula);
}

function ofPlace(at: number): string | undefined {
  const isPlace = Number.isInteger(at) && at >= 0 && at <= sheetLimits.rowsPerTable;
  return isPlace ? undefined : `${at} is no place in a table or among options.`;
}

function ofPass({ by, why, said }: PassedStop): string | undefined {
  return ofText(by, passLimits.by) ?? ofText(why, passLimits.why) ?? ofText(said);
}

function firstOf<T>(items: readonly T[], fault: (item: T) => string | undefined): string | undefined {
  for (const item of items) {
    const found = fault(item);
    if (found !== undefined) return found;
  }
  return undefined;
}
