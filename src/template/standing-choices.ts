import type { CompiledColumn, CompiledStack, CompiledTable } from './compiled-stack.ts';
import type { GivenTable } from './entries.ts';
import { standing } from './filled-rows.ts';
import type { ColumnFile } from './line-schema.ts';
import { type StandingRow, standingRows } from './table-rows.ts';

type ChoiceColumn = Extract<ColumnFile, { kind: 'choice' }>;
type Option = ChoiceColumn['options'][number];

/**
 * A stack in which columns that choose among the rows of a table offer the rows that stand in a quote: those it added too.
 * A row that was taken out may still be named, and says so. The same stack where no such row came or went.
 */
export function withStandingChoices(stack: CompiledStack, given: ReadonlyMap<string, GivenTable>): CompiledStack {
  const changed = [...stack.tables].flatMap(([name, table]) => {
    const other = tableOffering(table, stack, given);
    return other === table ? [] : [[name, other] as const];
  });
  return changed.length === 0 ? stack : { ...stack, tables: new Map([...stack.tables, ...changed]) };
}

function tableOffering(
  table: CompiledTable,
  stack: CompiledStack,
  given: ReadonlyMap<string, GivenTable>,
): CompiledTable {
  const columns = new Map<string, CompiledColumn>();
  for (const [name, column] of table.columns) {
    const { definition } = column;
    const named = definition.kind === 'choice' ? stack.tables.get(definition.rowOf ?? '') : undefined;
    if (definition.kind !== 'choice' || named === undefined) continue;
    const options = optionsOf(definition, named, standingRows(named, given.get(named.definition.name)));
    if (!sameOptions(options, definition.options))
      columns.set(name, { ...column, definition: { ...definition, options } });
  }
  if (columns.size === 0) return table;
  const definitions = table.definition.columns.map((own) => columns.get(own.name)?.definition ?? own);
  return {
    ...table,
    definition: { ...table.definition, columns: definitions },
    columns: new Map([...table.columns, ...columns]),
  };
}

/** The first option is the row above or none; then the rows that stand, and those of the sheet that no longer do. */
function optionsOf(
  { options: [first, ...own] }: ChoiceColumn,
  { key }: CompiledTable,
  rows: readonly StandingRow[],
): Option[] {
  const stand = rows.flatMap((row): Option[] => {
    const code = standing(row, key ?? '');
    return typeof code === 'string' ? [{ code, label: row.label }] : [];
  });
  const gone = own.filter(({ code }) => !stand.some((row) => row.code === code));
  return [
    ...(first ? [first] : []),
    ...stand,
    ...gone.map(({ code, label }) => ({ code, label: `${label}, taken out` })),
  ];
}

function sameOptions(left: readonly Option[], right: readonly Option[]): boolean {
  return (
    left.length === right.length &&
    left.every(({ code, label }, at) => code === right[at]?.code && label === right[at].label)
  );
}
