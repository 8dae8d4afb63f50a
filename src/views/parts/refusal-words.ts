import type { ValueType } from '../../formula/checked-tree.ts';
import type { Edit, SingleEdit } from '../../quote/edit.ts';
import { cellOfColumn, type OptionResults } from '../../quote/option-results.ts';
import { entryRefusal } from '../../template/cell-contents.ts';
import { caseOf } from '../../template/compiled-stack.ts';
import type { ColumnFile, LineFile } from '../../template/line-schema.ts';
import { formatNumber, formatQuantity } from '../../units/format.ts';
import type { Measures } from '../../units/measures.ts';
import { labelIn } from '../../units/said-units.ts';

const closeDecimals = 6;

/**
 * Why an edit was refused, as its field shows numbers: a refusal tells limits as bare numbers in the unit stored, shares as
 * fractions; here they have their unit, in `measures`: “must lie between 0 and 2,000 ft; −5 ft does not”. Any other reason
 * stays.
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
  const [least, most] = definition.limits ?? [];
  const said = (number: number): string => formatQuantity(number, unit, { measures });
  const isAsLimit = [least, most].some((limit) => limit !== undefined && said(limit) === said(value));
  const say = (number: number): string => {
    // The unit stands once behind both limits.
    if (number === least) return formatNumber(number, unit, { measures });
    // What is just beyond a limit must not read as the limit.
    return number === value && isAsLimit
      ? formatQuantity(number, unit, { measures, digits: closeDecimals })
      : said(number);
  };
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
