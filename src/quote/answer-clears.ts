import { unitOf } from '../formula/value-type.ts';
import type { Ask } from '../template/sheet-schema.ts';
import { formatQuantity } from '../units/format.ts';
import type { Measures } from '../units/measures.ts';
import { labelIn } from '../units/said-units.ts';
import { serialDay } from '../units/serial-day.ts';
import { cellOfLine, type OptionResults } from './option-results.ts';

/** A line or a table that an answer takes out. */
export interface Cleared {
  readonly name: string;
  readonly label: string;
}

/** What an answer would take out as things stand: tables that have rows, and lines that are not our standard. */
export function clearedBy(ask: Ask, answer: number, results: OptionResults): Cleared[] {
  if (ask.kind !== 'sizes') return [];
  const { stack, option } = results;
  return (ask.choices[answer]?.clears ?? []).flatMap((name): Cleared[] => {
    const table = stack.tables.get(name)?.definition;
    if (table !== undefined) return (option.rows.get(name) ?? []).length === 0 ? [] : [{ name, label: table.title }];
    const line = stack.lines.get(name)?.definition;
    const cell = cellOfLine(results, name);
    if (cell === undefined || (line?.kind !== 'entry' && line?.kind !== 'choice')) return [];
    const value = results.read(cell);
    const stands = value === line.value || (typeof line.value === 'string' && serialDay(line.value) === value);
    return stands ? [] : [{ name, label: line.label }];
  });
}

/**
 * What is said beside an answer that takes something out: that, and which measures of the slab stay. Empty for one that
 * takes nothing out. Example: 'Taken out: door openings. Kept: cracks to fill 30 ft. Undo puts it back.'
 */
export function clearedWords(ask: Ask, answer: number, results: OptionResults, measures: Measures): string {
  const out = clearedBy(ask, answer, results).map(({ label }) => label.toLowerCase());
  if (out.length === 0 || ask.kind !== 'sizes') return '';
  const kept = (ask.choices[answer]?.keeps ?? []).flatMap((name) => keptWords(name, results, measures));
  return [
    `Taken out: ${out.join(', ')}.`,
    ...(kept.length === 0 ? [] : [`Kept: ${kept.join(', ')}.`]),
    'Undo puts it back.',
  ].join(' ');
}

/** A number that is more than nothing, with its label: 'cracks to fill 30 ft'. */
function keptWords(name: string, results: OptionResults, measures: Measures): string[] {
  const line = results.stack.lines.get(name);
  const cell = cellOfLine(results, name);
  const value = cell === undefined ? undefined : results.read(cell);
  if (line === undefined || typeof value !== 'number' || value === 0) return [];
  const unit = unitOf(line.type);
  return [
    `${labelIn(line.definition.label, unit, measures).toLowerCase()} ${formatQuantity(value, unit, { measures })}`,
  ];
}
