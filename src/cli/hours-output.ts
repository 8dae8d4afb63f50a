import type { OptionResults } from '../quote/option-results.ts';
import { formatNumber } from '../units/format.ts';
import type { Measures } from '../units/measures.ts';
import { cellIn, lineIn, wordsOf } from './option-cells.ts';
import { layTable, type TextColumn } from './text-layout.ts';

const taskColumns = ['visit_used', 'people', 'task_hours', 'clock_added'];
const tripColumns = ['site_hours', 'days', 'worked', 'paid', 'days_charged'];
/** Columns whose heading says what they count. */
const bare: readonly string[] = ['visit_used', 'people'];

/** Hours by task and by visit, those that are not zero. A system may lack either table. */
export function hoursLines(results: OptionResults, measures: Measures): string[] {
  const tasks = rowsOf(results, 'tasks', 'task_hours', taskColumns, measures, (label) => label);
  const trips = rowsOf(results, 'trips', 'used', tripColumns, measures, (_, row) => `Visit ${row + 1}`);
  const totals = ['person_hours', 'paid_hours', 'crew_days', 'work_days', 'visits'].flatMap((name): string[][] => {
    const label = results.stack.lines.get(name)?.definition.label ?? name;
    const value = wordsOf(lineIn(results, name), measures);
    return value === '' ? [] : [[label, value]];
  });
  return [
    'HOURS',
    ...(tasks.length > 0 ? layTable(headed('task', results, 'tasks', taskColumns), tasks) : []),
    ...(trips.length > 0 ? ['', ...layTable(headed('visit', results, 'trips', tripColumns), trips)] : []),
    '',
    ...layTable(
      [
        { heading: '', align: 'left' },
        { heading: '', align: 'right' },
      ],
      totals,
    ),
  ];
}

/** The rows in which `telling` is not 0, each with its words and the columns wanted. */
function rowsOf(
  results: OptionResults,
  table: string,
  telling: string,
  columns: readonly string[],
  measures: Measures,
  nameOf: (label: string, row: number) => string,
): string[][] {
  return (results.option.rows.get(table) ?? []).flatMap(({ label }, row): string[][] => {
    const told = cellIn(results, table, telling, row);
    if (told === undefined || told.value === 0) return [];
    const cells = columns.map((column) => {
      const typed = cellIn(results, table, column, row);
      return bare.includes(column) && typeof typed?.value === 'number'
        ? formatNumber(typed.value)
        : wordsOf(typed, measures);
    });
    return [[nameOf(label, row), ...cells]];
  });
}

function headed(first: string, { stack }: OptionResults, table: string, columns: readonly string[]): TextColumn[] {
  const headings = columns.map((column): TextColumn => {
    const label = stack.tables.get(table)?.columns.get(column)?.definition.label ?? column;
    return { heading: label.toLowerCase(), align: 'right' };
  });
  return [{ heading: first, align: 'left' }, ...headings];
}
