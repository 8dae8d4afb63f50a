import { columnName, parseCellName } from '../formula/cell-name.ts';
import { didYouMean, nearestWord } from '../units/nearest-word.ts';
import { answerSets } from './answer-sets.ts';
import { setRefusal } from './apply-set.ts';
import type { ComposedSheet } from './composed-sheet.ts';
import type { DeclaredNames } from './declared-names.ts';
import type { SheetFault } from './sheet-fault.ts';
import type { Ask, SetValue, SizeChoice } from './sheet-schema.ts';
import { unknownCells } from './table-shape.ts';

/** What is wrong with the questions of a sheet: names it lacks, and values that may not stand there. */
export function askFaults(sheet: ComposedSheet, declared: DeclaredNames): SheetFault[] {
  const ids = sheet.asks.map(({ id }) => id);
  return sheet.asks.flatMap((ask, at) => {
    const path = `asks[${at}]`;
    if (ids.indexOf(ask.id) < at) return [{ path, reason: `There is a question “${ask.id}” already.` }];
    const own = answerSets(ask).flatMap((set) => Object.entries(set));
    const faults = own.flatMap(([name, value]) => {
      const reason = answerRefusal(name, value, sheet, declared);
      return reason === undefined ? [] : [{ path: `${path} (${ask.id}): ${name}`, reason }];
    });
    return [...faults, ...namedFaults(ask, path, sheet, declared)];
  });
}

function namedFaults(ask: Ask, path: string, sheet: ComposedSheet, declared: DeclaredNames): SheetFault[] {
  const at = `${path} (${ask.id})`;
  if (ask.kind === 'sizes') {
    const found = declared.tables.get(ask.table);
    if (found?.layer !== sheet.layer || found.table.rows !== 'free')
      return [{ path: at, reason: `“${ask.table}” is no table of this sheet whose rows may be replaced.` }];
    const unknown = ask.choices.flatMap(({ rows }) => rows.flatMap((cells) => unknownCells(found.table, cells)));
    const faults = unknown.map(({ name, reason }) => ({ path: `${at}: ${columnName(ask.table, name)}`, reason }));
    return [...faults, ...ask.choices.flatMap((choice) => clearFaults(choice, at, sheet, declared))];
  }
  if (ask.kind !== 'fields') return [];
  const isOwnEntry = (name: string): boolean => {
    const found = declared.lines.get(name);
    return found?.layer === sheet.layer && found.line.kind === 'entry';
  };
  return ask.lines
    .filter((name) => !isOwnEntry(name))
    .map((name) => ({ path: `${at}: ${name}`, reason: `There is no entry “${name}” in this sheet.` }));
}

/** What an answer clears are entries of its sheet, or tables whose rows may all go; what it keeps are entries. */
function clearFaults(
  { clears = [], keeps = [] }: SizeChoice,
  at: string,
  sheet: ComposedSheet,
  declared: DeclaredNames,
): SheetFault[] {
  const isGiven = (name: string): boolean => {
    const found = declared.lines.get(name);
    return found?.layer === sheet.layer && (found.line.kind === 'entry' || found.line.kind === 'choice');
  };
  const canBeEmpty = (name: string): boolean => {
    const found = declared.tables.get(name);
    return found?.layer === sheet.layer && found.table.rows === 'free' && found.table.min === 0;
  };
  const told = (name: string, reason: string): SheetFault => ({ path: `${at}: ${name}`, reason });
  return [
    ...clears
      .filter((name) => !isGiven(name) && !canBeEmpty(name))
      .map((name) => told(name, `“${name}” is no entry of this sheet, and no table of it that may be empty.`)),
    ...keeps.filter((name) => !isGiven(name)).map((name) => told(name, `There is no entry “${name}” in this sheet.`)),
  ];
}

function answerRefusal(
  name: string,
  value: SetValue,
  sheet: ComposedSheet,
  declared: DeclaredNames,
): string | undefined {
  const line = declared.lines.get(name);
  if (line !== undefined) {
    if (line.layer !== sheet.layer)
      return `“${name}” stands in the ${line.layer} sheet; a question sets its own sheet.`;
    if (line.line.kind === 'words') return noWords;
    return setRefusal(line.line, value);
  }
  const named = parseCellName(name);
  const cell = named?.kind === 'cell' ? named : undefined;
  const table = declared.tables.get(cell?.table ?? '');
  const row = table?.rows.find((candidate) => candidate.id === cell?.row);
  const column = table?.table.columns.find((candidate) => candidate.name === cell?.column);
  if (table?.layer !== sheet.layer || row === undefined || column === undefined) {
    const near = nearestWord(name, declared.lines.keys());
    return `There is nothing called “${name}” to set.${didYouMean(near)}`;
  }
  return column.kind === 'words' ? noWords : setRefusal(column, value);
}

const noWords = 'A question sets no words: a person writes them.';
