import type { OptionPlan } from '../../src/template/plan.ts';

/** The cell of a line, or of `table.row.column`, the row by its id or by its label. Throws for a name the option lacks. */
export function cellNamed(option: OptionPlan, name: string): number {
  const [table = '', row = '', column = ''] = name.split('.');
  return (column === '' ? option.plan.lines.get(name) : cellIn(option, table, row, column)) ?? missing(name);
}

export function cellIn({ plan, rows }: OptionPlan, table: string, row: string, column: string): number | undefined {
  const place = (rows.get(table) ?? []).findIndex(({ id, label }) => id === row || label === row);
  return plan.tables.get(table)?.columns.get(column)?.[place];
}

export function missing(name: string): never {
  throw new Error(`The option has no ${name}`);
}
