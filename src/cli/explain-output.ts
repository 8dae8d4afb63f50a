import { type NamedCell, parseCellName, printCellName } from '../formula/cell-name.ts';
import type { CellContent } from '../formula/cells.ts';
import { explainFormula, valueText } from '../formula/explain.ts';
import { neighboursOf } from '../formula/neighbours.ts';
import { unitOf } from '../formula/value-type.ts';
import { cellNamed, nameOfCell, rowPlace } from '../quote/named-cell.ts';
import { definitionAt, explainedPlan, type OptionResults } from '../quote/option-results.ts';
import { isConstant } from '../template/constant.ts';
import type { ColumnFile, LineFile } from '../template/line-schema.ts';
import type { Measures } from '../units/measures.ts';
import { nearestWord } from '../units/nearest-word.ts';
import { labelIn } from '../units/said-units.ts';
import { failureWords } from './failure-words.ts';
import { messages } from './messages.ts';
import type { PricedSystem } from './price-systems.ts';
import { wrap } from './text-layout.ts';

export type Explained =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'faults'; readonly faults: readonly string[] };

const mostListed = 40;
const headWidth = 14;

/** Why a line or a cell is what it is, in each system that has it. */
export function explainOutput(systems: readonly PricedSystem[], name: string, measures: Measures = 'us'): Explained {
  const blocks = systems.flatMap(({ sheet, results }) => {
    const cell = cellNamed(results.option, name);
    return cell === undefined
      ? []
      : [[...wrap(`${sheet.title} · ${sheet.id}`, ''), ...cellLines(results, cell, measures)].join('\n')];
  });
  if (blocks.length > 0) return { kind: 'text', text: `${blocks.join('\n\n')}\n` };
  const reasons = systems.map(({ results }) => whyMissing(results, name));
  const told = reasons.find((reason) => reason.includes('Did you mean')) ?? reasons[0] ?? '';
  return { kind: 'faults', faults: [`--explain ${name}: ${told}`] };
}

function howGiven({ kind }: CellContent, definition: LineFile | ColumnFile | undefined): string {
  if (kind === 'result') return 'none: it comes from the crew’s day, a pass over all tasks';
  return definition !== undefined && isConstant(definition) ? 'none: it is a constant' : 'none: it is entered';
}

function cellLines(results: OptionResults, cell: number, measures: Measures): string[] {
  const { plan, graph } = results.option;
  const planned = plan.cells[cell];
  if (planned === undefined) throw new Error(`The plan has no cell ${cell}`);
  const { place, type, content } = planned;
  const definition = definitionAt(results, place);
  const value = results.read(cell);
  const over = explainedPlan(results, measures);
  const formula = content.kind === 'formula' ? explainFormula(content.tree, place, over) : undefined;
  const { from, into } = neighboursOf(cell, plan, graph);
  return [
    ...headed(nameOfCell(results.option, place), labelIn(definition?.label ?? '', unitOf(type), measures)),
    ...headed('value', valueText(value, type, measures)),
    ...(typeof value === 'object' ? headed('', failureWords(results, value)) : []),
    ...headed('formula', formula?.names ?? howGiven(content, definition)),
    ...(formula === undefined ? [] : headed('in numbers', formula.numbers)),
    ...(formula?.steps ?? []).flatMap(({ text, gives }, at) =>
      headed(at === 0 ? 'step by step' : '', `${text} = ${gives}`),
    ),
    ...cellsHeaded('reads', results, from, measures),
    ...cellsHeaded('read by', results, into, undefined),
    ...(definition?.source === undefined ? [] : headed('source', definition.source)),
    ...(definition?.note === undefined ? [] : headed('note', definition.note)),
    ...(definition?.help === undefined ? [] : headed('help', definition.help)),
  ];
}

/** Names of cells, with their values where these have measures to be told in. */
function cellsHeaded(
  head: string,
  results: OptionResults,
  cells: readonly number[],
  measures: Measures | undefined,
): string[] {
  const { cells: planned } = results.option.plan;
  const named = cells.slice(0, mostListed).flatMap((cell) => {
    const one = planned[cell];
    if (one === undefined) return [];
    const name = nameOfCell(results.option, one.place);
    return [measures === undefined ? name : `${name} = ${valueText(results.read(cell), one.type, measures)}`];
  });
  const rest = cells.length - named.length;
  const words = [...named, ...(rest > 0 ? [`and ${rest} more`] : [])];
  return headed(head, words.length === 0 ? 'nothing' : words.join(' · '));
}

function headed(head: string, text: string): string[] {
  return wrap(text, head.length < headWidth ? `  ${head.padEnd(headWidth)}` : `  ${head}  `);
}

function whyMissing(results: OptionResults, name: string): string {
  const { option, stack } = results;
  const named = parseCellName(name);
  if (named?.kind === 'line') {
    if (option.plan.tables.has(name)) return messages.isTable(name);
    const kind = stack.lines.get(name)?.definition.kind;
    if (kind === 'text') return messages.isText(name);
    if (kind === 'words') return messages.isWords(name);
    return messages.noLine(name, nearestWord(name, option.plan.lines.keys()));
  }
  return named?.kind === 'cell' ? whyNoCell(results, named) : messages.cellForm(name);
}

function whyNoCell({ option, stack }: OptionResults, named: NamedCell): string {
  const { table: first, row, column } = named;
  const table = option.plan.tables.get(first);
  if (table === undefined) return messages.noTable(first, nearestWord(first, option.plan.tables.keys()));
  if (stack.tables.get(first)?.columns.get(column)?.definition.kind === 'words')
    return messages.isWords(printCellName(named));
  if (!table.columns.has(column)) return messages.noColumn(first, column, nearestWord(column, table.columns.keys()));
  const ids = (option.rows.get(first) ?? []).map(({ id }) => id);
  if (rowPlace(ids, row) === undefined) return messages.noRow(first, row, ids, nearestWord(row, ids));
  return messages.cellForm(printCellName(named));
}
