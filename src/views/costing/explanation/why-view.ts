import type { CellPlace, PlannedCell } from '../../../formula/cells.ts';
import type { ValueType } from '../../../formula/checked-tree.ts';
import { type ExplainedStep, explainFormula, valueText } from '../../../formula/explain.ts';
import { failureText } from '../../../formula/failure-text.ts';
import { neighboursOf } from '../../../formula/neighbours.ts';
import { unitOf } from '../../../formula/value-type.ts';
import { KeptByCells } from '../../../quote/kept-by-cells.ts';
import {
  cellOfColumn,
  cellOfLine,
  definitionAt,
  explainedPlan,
  type OptionResults,
} from '../../../quote/option-results.ts';
import type { Measures } from '../../../units/measures.ts';
import { labelIn } from '../../../units/said-units.ts';

/** A number that another is made from or goes into. */
export interface Neighbour {
  readonly cell: number;
  readonly name: string;
  readonly value: string;
}

/** Why one value is what it is, in words. */
export interface WhyView {
  readonly title: string;
  readonly value: string;
  /** Why it could not be worked out; empty when it could. */
  readonly trouble: string;
  readonly names: string;
  readonly numbers: string;
  readonly steps: readonly ExplainedStep[];
  readonly readsFrom: readonly Neighbour[];
  readonly feeds: readonly Neighbour[];
  readonly note: string;
  readonly source: string;
}

const mostNeighbours = 24;
const keptWhys = new KeptByCells<WhyView | undefined>();

/** Explains a cell of an option; the formula in names is the same in both measures. */
export function whyView(results: OptionResults, cell: number, measures: Measures): WhyView | undefined {
  return keptWhys.of(results, `${cell}`, [measures], () => explained(results, cell, measures));
}

function explained(results: OptionResults, cell: number, measures: Measures): WhyView | undefined {
  const planned = results.option.plan.cells[cell];
  if (planned === undefined) return undefined;
  const { place, content, type } = planned;
  const over = explainedPlan(results, measures);
  const formula = content.kind === 'formula' ? explainFormula(content.tree, place, over) : undefined;
  const value = results.read(cell);
  const definition = definitionAt(results, place);
  const { from, into } = neighboursOf(cell, results.option.plan, results.option.graph);
  const near = (cells: readonly number[]): Neighbour[] =>
    [...new Set(cells)].slice(0, mostNeighbours).map((other) => neighbour(results, other, measures));
  return {
    title: placeName(results, place, measures),
    value: valueText(value, type, measures),
    trouble: typeof value === 'object' ? failureText(value, over, (where) => placeName(results, where, measures)) : '',
    names: formula?.names ?? '',
    numbers: formula?.numbers ?? '',
    steps: formula?.steps ?? [],
    readsFrom: near(from),
    feeds: near(into),
    note: [fromTheDay(results, planned), definition?.help, definition?.note]
      .filter((text) => text !== undefined)
      .join(' '),
    source: definition?.source ?? '',
  };
}

/** Of what the crew's day gives there is no formula to read: why the task begins when it does stands in its place. */
function fromTheDay(results: OptionResults, { content, place }: PlannedCell): string | undefined {
  if (content.kind !== 'result' || place.kind !== 'cell') return undefined;
  const column = results.stack.tables.get(place.table)?.columns.get('because')?.definition;
  const cell = cellOfColumn(results, place.table, 'because', place.row);
  const code = cell === undefined ? undefined : results.read(cell);
  const options = column?.kind === 'operated' ? (column.options ?? []) : [];
  const reason = options.find((option) => option.code === code)?.label;
  const told = reason === undefined ? '' : ` This one begins when it does because ${reason}.`;
  return `From the crew’s day, one pass over all tasks in their order.${told}`;
}

/** A cell's name in the trade's words: “Price”, or “Base coat › Need”. */
function placeName(results: OptionResults, place: CellPlace, measures: Measures): string {
  const own = definitionAt(results, place)?.label;
  const label = own === undefined ? undefined : labelIn(own, unitOf(typeAt(results, place)), measures);
  if (place.kind === 'line') return label ?? place.name;
  const row = results.option.rows.get(place.table)?.[place.row]?.label ?? `row ${place.row + 1}`;
  const column = label ?? results.stack.products.fields.get(place.column)?.label ?? place.column;
  return `${row} › ${column}`;
}

function typeAt({ stack, option: { plan } }: OptionResults, place: CellPlace): ValueType {
  if (place.kind === 'line') return stack.lines.get(place.name)?.type ?? { kind: 'truth' };
  const cell = plan.tables.get(place.table)?.columns.get(place.column)?.[place.row];
  return (cell === undefined ? undefined : plan.cells[cell]?.type) ?? { kind: 'truth' };
}

function neighbour(results: OptionResults, cell: number, measures: Measures): Neighbour {
  const planned = results.option.plan.cells[cell];
  if (planned === undefined) return { cell, name: '', value: '' };
  const { place, type } = planned;
  return {
    cell,
    name: placeName(results, place, measures),
    value: valueText(results.read(cell), type, measures),
  };
}

/** A value that somebody asked why of. Its cell has another number once rows come, go or move; its place stays. */
export interface AskedWhy {
  readonly option: string;
  readonly place: CellPlace;
  /** The id of the row of a table's cell; empty for a line. */
  readonly row: string;
}

export function askedAt(option: string, results: OptionResults, cell: number): AskedWhy | undefined {
  const place = results.option.plan.cells[cell]?.place;
  if (place === undefined) return undefined;
  const row = place.kind === 'cell' ? results.option.rows.get(place.table)?.[place.row]?.id : '';
  return row === undefined ? undefined : { option, place, row };
}

/** Where it stands now; undefined when it is gone with its row. */
export function askedCell({ place, row }: AskedWhy, results: OptionResults): number | undefined {
  if (place.kind === 'line') return cellOfLine(results, place.name);
  const at = results.option.rows.get(place.table)?.findIndex(({ id }) => id === row) ?? -1;
  return cellOfColumn(results, place.table, place.column, at);
}
