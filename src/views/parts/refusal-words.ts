import type { ValueType } from '../../formula/checked-tree.ts';
import type { Edit, SingleEdit } from '../../quote/edit.ts';
import { cellOfColumn, type OptionResults } from '../../quote/option-results.ts';
import { entryRefusal } from '../../template/cell-contents.ts';
import { caseOf } from '../../template/compiled-stack.ts';
import type { ColumnFile, LineFile } from '../../template/line-schema.ts';
import { formatQuantity, isShare } from '../../units/format.ts';
import type { Measures } from '../../units/measures.ts';
import { labelIn } from '../../units/said-units.ts';

const shareDecimals = 6;

/**
 * Why an edit was refused, in the measures that the field has: a refusal tells limits in the unit stored, which in metric
 * is another, and shares as fractions, which a field shows as percent. Any other reason stays.
 */
export function refusalWords(
  edit: Edit,
  reason: string,
  results: OptionResults | undefined,
  measures: Measures,
): string {
  if (results === undefined) return reason;
  const edits = edit.kind === 'several' ? edit.edits : [edit];
  return edits.flatMap((one) => limitsWords(one, results, measures) ?? [])[0] ?? reason;
}

function limitsWords(edit: SingleEdit, results: OptionResults, measures: Measures): string | undefined {
  if (edit.kind !== 'enterLine' && edit.kind !== 'enterCell') return undefined;
  const { definition, type } = enteredAt(edit, results) ?? {};
  const value = typeof edit.value === 'object' && 'value' in edit.value ? edit.value.value : edit.value;
  if (definition?.kind !== 'entry' || type?.kind !== 'number' || typeof value !== 'number') return undefined;
  const { unit } = type;
  const share = isShare(unit);
  if (measures === 'us' && !share) return undefined;
  // A share just beyond its limit must not read as the limit.
  const say = (number: number): string =>
    formatQuantity(number, unit, { measures, ...(share && { digits: shareDecimals }) });
  return entryRefusal(definition, labelIn(definition.label, unit, measures), value, say);
}

function enteredAt(
  edit: Extract<SingleEdit, { kind: 'enterLine' | 'enterCell' }>,
  results: OptionResults,
): { readonly definition: LineFile | ColumnFile; readonly type: ValueType | undefined } | undefined {
  if (edit.kind === 'enterLine') return results.stack.lines.get(edit.line);
  const column = results.stack.tables.get(edit.table)?.columns.get(edit.column);
  const row = results.option.rows.get(edit.table)?.findIndex(({ id }) => id === edit.row) ?? -1;
  const cell = cellOfColumn(results, edit.table, edit.column, row);
  // A row that the edit itself brings has no cell yet.
  const type = cell === undefined ? column && caseOf(column, '')?.type : results.option.plan.cells[cell]?.type;
  return column && { definition: column.definition, type };
}
