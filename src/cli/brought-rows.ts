import type { CompiledStack, CompiledTable } from '../template/compiled-stack.ts';
import type { PlacedRow } from '../template/composed-sheet.ts';
import { followRows } from '../template/follow-rows.ts';
import { standingRows } from '../template/table-rows.ts';

/**
 * A stack whose tables in `given` have other rows than the templates', with the rows of other tables that come and go with
 * those. A table whose own rows are given as well is left as it is given.
 */
export function withBroughtRows(
  templates: CompiledStack,
  stack: CompiledStack,
  given: ReadonlySet<string>,
): CompiledStack {
  const tables = new Map(stack.tables);
  for (const name of given) {
    const [before, after] = [templates.tables.get(name), stack.tables.get(name)];
    if (before === undefined || after === undefined) continue;
    for (const brings of after.definition.brings) {
      const target = tables.get(brings.table);
      if (target === undefined || given.has(brings.table)) continue;
      const change = { before: standingRows(before, undefined), after: standingRows(after, undefined) };
      const followed = followRows(after, brings, target, change, standingRows(target, undefined));
      tables.set(brings.table, { ...target, rows: rowsAfter(target, followed) });
    }
  }
  return { ...stack, tables };
}

function rowsAfter(
  { definition, rows }: CompiledTable,
  { order, brought, changed }: ReturnType<typeof followRows>,
): PlacedRow[] {
  const own = new Map(rows.map((row) => [row.id, row]));
  for (const [id, cells] of brought)
    own.set(id, { id, cells: { ...definition.newRow, ...cells }, path: `${definition.name}.${id}` });
  for (const { row, column, value } of changed) {
    const said = own.get(row);
    if (said !== undefined) own.set(row, { ...said, cells: { ...said.cells, [column]: value } });
  }
  return order.flatMap((id) => own.get(id) ?? []);
}
