import type { ValueType } from '../../formula/checked-tree.ts';
import type { Edit, SingleEdit } from '../../quote/edit.ts';
import { cellOfColumn, type OptionResults } from '../../quote/option-results.ts';
import { givenValue } from '../../quote/stack-entries.ts';
import { caseOf } from '../../template/compiled-stack.ts';
import type { ColumnFile, LineFile } from '../../template/line-schema.ts';
import { valueRefusal } from '../../template/value-refusal.ts';
import type { Measures } from '../../units/measures.ts';
import { labelIn } from '../../units/said-units.ts';

/**
 * Why an edit was refused, as its field shows numbers: a refusal tells limits in US units; here they stand in `measures`:
 * “must lie between 0 and 609.6 m; −1.52 m does not”. Any other reason stays.
 */
export function refusalWords(
  edit: Edit,
  reason: string,
  results: OptionResults | undefined,
  measures: Measures,
): string {
  if (results === undefined) return reason;
  const edits = edit.kind === 'several' ? edit.edits : [edit];
  return edits.flatMap((one) => entryWords(one, results, measures) ?? [])[0] ?? reason;
}

function entryWords(edit: SingleEdit, results: OptionResults, measures: Measures): string | undefined {
  if ((edit.kind !== 'enterLine' && edit.kind !== 'enterCell') || edit.value === undefined) return undefined;
  const { definition, type } = enteredAt(edit, results) ?? {};
  if (definition?.kind !== 'entry' || type?.kind !== 'number') return undefined;
  const name = labelIn(definition.label, type.unit, measures);
  return valueRefusal(definition, givenValue(edit.value), { name, unit: type.unit, measures });
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
