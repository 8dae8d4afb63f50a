import type { CellPlace } from '../../formula/cells.ts';
import { type ExplainedStep, explainFormula, valueText } from '../../formula/explain.ts';
import { failureText } from '../../formula/failure-text.ts';
import { definitionAt, explainedPlan, type OptionResults } from '../../quote/option-results.ts';

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

/** Explains a cell of an option. */
export function whyView(results: OptionResults, cell: number): WhyView | undefined {
  const planned = results.option.plan.cells[cell];
  if (planned === undefined) return undefined;
  const { place, content, type } = planned;
  const over = explainedPlan(results);
  const explained = content.kind === 'formula' ? explainFormula(content.tree, place, over) : undefined;
  const value = results.read(cell);
  const definition = definitionAt(results, place);
  const graph = results.option.graph;
  const near = (cells: readonly number[] = []): Neighbour[] =>
    [...new Set(cells)].slice(0, mostNeighbours).map((other) => neighbour(results, other));
  return {
    title: placeName(results, place),
    value: valueText(value, type),
    trouble: typeof value === 'object' ? failureText(value, over, (where) => placeName(results, where)) : '',
    names: explained?.names ?? '',
    numbers: explained?.numbers ?? '',
    steps: explained?.steps ?? [],
    readsFrom: graph.kind === 'graph' ? near(graph.reads[cell]) : [],
    feeds: graph.kind === 'graph' ? near(graph.readBy[cell]) : [],
    note: [definition?.help, definition?.note].filter((text) => text !== undefined).join(' '),
    source: definition?.source ?? '',
  };
}

/** A cell's name in the trade's words: “Price”, or “Base coat › Need”. */
function placeName(results: OptionResults, place: CellPlace): string {
  const label = definitionAt(results, place)?.label;
  if (place.kind === 'line') return label ?? place.name;
  const row = results.option.rows.get(place.table)?.[place.row]?.label ?? `row ${place.row + 1}`;
  const column = label ?? results.stack.products.fields.get(place.column)?.label ?? place.column;
  return `${row} › ${column}`;
}

function neighbour(results: OptionResults, cell: number): Neighbour {
  const planned = results.option.plan.cells[cell];
  if (planned === undefined) return { cell, name: '', value: '' };
  return { cell, name: placeName(results, planned.place), value: valueText(results.read(cell), planned.type) };
}
