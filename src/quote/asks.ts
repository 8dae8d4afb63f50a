import { parseCellName } from '../formula/cell-name.ts';
import type { CellValue } from '../formula/cells.ts';
import { answerSets } from '../template/answer-sets.ts';
import type { Ask, Layer, SetValue } from '../template/sheet-schema.ts';
import { serialDay } from '../units/serial-day.ts';
import { clearedBy } from './answer-clears.ts';
import type { SeveralEdits, SingleEdit } from './edit.ts';
import { cellNamed } from './named-cell.ts';
import { cellOfColumn, evaluatorOf, type OptionResults } from './option-results.ts';
import type { SheetPlace } from './quote-document.ts';

/** The questions of a sheet that are asked as its numbers stand; one whose condition cannot be told is asked. */
export function asksOf(results: OptionResults, layer: Layer): readonly Ask[] {
  const asks = results.stack.sheets.find((sheet) => sheet.layer === layer)?.asks ?? [];
  const conditions = results.stack.askedWhen.get(layer);
  const evaluate = evaluatorOf(results);
  return asks.filter(({ id }) => {
    const when = conditions?.get(id);
    return when === undefined || evaluate(when, { kind: 'line', name: id }) !== false;
  });
}

/** How many answers a question has: for a toggle 0 is no and 1 is yes. */
export function answersOf(ask: Ask): readonly string[] {
  switch (ask.kind) {
    case 'sizes':
    case 'oneOf':
      return ask.choices.map((choice) => choice.label);
    case 'toggle':
      return ['no', 'yes'];
    case 'fields':
      return [];
    default:
      return ask satisfies never;
  }
}

/** The answer in force: the first whose every value stands; undefined when none does. */
export function standingAnswer(ask: Ask, results: OptionResults): number | undefined {
  const at = answerSets(ask).findIndex(
    (set, answer) =>
      Object.entries(set).every(([name, value]) => sameValue(valueAt(name, results), value)) &&
      (ask.kind !== 'sizes' || rowsStand(ask, answer, results)),
  );
  return at < 0 ? undefined : at;
}

/**
 * The edit that gives an answer, as one step to be undone; its words say what the answer takes out, as in “Size, without
 * door openings”. Undefined for an answer the question lacks.
 */
export function answerEdit(
  ask: Ask,
  answer: number,
  sheet: SheetPlace,
  results: OptionResults,
): SeveralEdits | undefined {
  const set = answerSets(ask)[answer];
  if (set === undefined) return undefined;
  const edits = Object.entries(set).map(([name, value]) => setEdit(name, value, sheet));
  if (ask.kind === 'sizes') {
    const rows = (ask.choices[answer]?.rows ?? []).map((cells, at) => ({ row: `${ask.id}_${at + 1}`, cells }));
    edits.unshift({ kind: 'replaceRows', sheet, table: ask.table, rows });
  }
  const cleared = clearedBy(ask, answer, results);
  edits.push(...cleared.map(({ name }) => clearEdit(name, sheet, results)));
  const without = cleared.map(({ label }) => label.toLowerCase()).join(', ');
  return { kind: 'several', words: without === '' ? ask.label : `${ask.label}, without ${without}`, edits };
}

function clearEdit(name: string, sheet: SheetPlace, { stack }: OptionResults): SingleEdit {
  return stack.tables.has(name)
    ? { kind: 'replaceRows', sheet, table: name, rows: [] }
    : { kind: 'enterLine', sheet, line: name };
}

function setEdit(name: string, value: SetValue, sheet: SheetPlace): SingleEdit {
  const named = parseCellName(name);
  if (named?.kind !== 'cell') return { kind: 'enterLine', sheet, line: name, value };
  const { table, row, column } = named;
  return { kind: 'enterCell', sheet, table, row, column, value };
}

function valueAt(name: string, results: OptionResults): CellValue | undefined {
  const cell = cellNamed(results.option, name);
  return cell === undefined ? undefined : results.read(cell);
}

function rowsStand(ask: Extract<Ask, { kind: 'sizes' }>, answer: number, results: OptionResults): boolean {
  const rows = ask.choices[answer]?.rows ?? [];
  if ((results.option.rows.get(ask.table) ?? []).length !== rows.length) return false;
  return rows.every((cells, row) =>
    Object.entries(cells).every(([column, wanted]) => {
      const cell = cellOfColumn(results, ask.table, column, row);
      const isKey = results.stack.tables.get(ask.table)?.key === column;
      return isKey || (cell !== undefined && typeof wanted !== 'object' && sameValue(results.read(cell), wanted));
    }),
  );
}

function sameValue(value: CellValue | undefined, wanted: SetValue): boolean {
  if (value === wanted) return true;
  return typeof wanted === 'string' && typeof value === 'number' && serialDay(wanted) === value;
}
