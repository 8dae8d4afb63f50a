import { columnName } from './cell-name.ts';
import { type CellPlace, type CellPlan, type PlannedCell, productKey, productTable } from './cells.ts';
import type { Checked } from './checked-tree.ts';

/** Indices of the cells from which a cell is worked out; none for a number or code. */
export function cellsFeeding({ content, place }: PlannedCell, plan: CellPlan): readonly number[] {
  switch (content.kind) {
    case 'number':
    case 'code':
      return [];
    case 'formula':
      return cellsRead(content.tree, place, plan);
    case 'operator':
      return [...new Set(plan.operators.get(content.table)?.inputs.flat())];
    case 'result': {
      const operator = place.kind === 'cell' ? plan.operators.get(place.table) : undefined;
      return operator === undefined ? [] : [operator.cell];
    }
    default:
      return content satisfies never;
  }
}

/** Whether a cell is worked out from others. */
export function isWorkedOut({ content }: PlannedCell): boolean {
  return content.kind !== 'number' && content.kind !== 'code';
}

/**
 * Indices of the cells a formula reads, standing at `place`. All arms of IF and SWITCH count, and of `above.x` only the one cell
 * above, so that a column may grow from its own row above without a cycle.
 */
export function cellsRead(tree: Checked, place: CellPlace, plan: CellPlan): readonly number[] {
  const nodes = nodesReading(tree);
  const [only] = nodes;
  if (only === undefined) return [];
  if (nodes.length === 1) return cellsOf(only, place, plan);
  const read = new Set<number>();
  for (const node of nodes) for (const cell of cellsOf(node, place, plan)) read.add(cell);
  return [...read];
}

/** How many cells a formula reads at most, each as often as it is named: quick to tell, before the cells are listed. */
export function countReads(tree: Checked, plan: CellPlan): number {
  let reads = 0;
  for (const node of nodesReading(tree)) {
    if (node.kind === 'range') reads += plan.tables.get(node.table)?.rows ?? 0;
    else if (node.kind === 'productField') reads += 2 * (plan.tables.get(productTable)?.rows ?? 0);
    else reads += 1;
  }
  return reads;
}

/** The nodes of a tree that read cells. Every row of a column has the same tree: it is walked once. */
function nodesReading(tree: Checked): readonly ReadingNode[] {
  const known = readingNodes.get(tree);
  if (known !== undefined) return known;
  const found: ReadingNode[] = [];
  collectReading(tree, found);
  readingNodes.set(tree, found);
  return found;
}

type ReadingNode = Extract<Checked, { kind: 'line' | 'cell' | 'range' | 'productField' }>;
const readingNodes = new WeakMap<Checked, readonly ReadingNode[]>();

function isReading(node: Checked): node is ReadingNode {
  return node.kind === 'line' || node.kind === 'cell' || node.kind === 'range' || node.kind === 'productField';
}

/** Parents first. */
function collectReading(node: Checked, found: ReadingNode[]): void {
  if (isReading(node)) found.push(node);
  for (const child of childrenOf(node)) collectReading(child, found);
}

export function childrenOf(tree: Checked): readonly Checked[] {
  switch (tree.kind) {
    case 'number':
    case 'code':
    case 'line':
    case 'cell':
    case 'range':
      return [];
    case 'productField':
      return [tree.product];
    case 'unary':
      return [tree.operand];
    case 'binary':
      return [tree.left, tree.right];
    case 'call':
      return tree.args;
    default:
      return tree satisfies never;
  }
}

/** The cells one node reads by itself, its children aside. */
function cellsOf(node: ReadingNode, place: CellPlace, plan: CellPlan): readonly number[] {
  switch (node.kind) {
    case 'line':
      return [lineCell(node.name, plan)];
    case 'cell':
      return [cellIn(node, place, plan)];
    case 'range':
      return cellsInRange(node, place, plan);
    case 'productField':
      return columnCells(productTable, node.field, plan).concat(columnCells(productTable, productKey, plan));
    default:
      return node satisfies never;
  }
}

/** Index of a line's cell. Throws for a name the plan lacks: checking has passed it, so that is a bug. */
export function lineCell(name: string, plan: CellPlan): number {
  const cell = plan.lines.get(name);
  if (cell === undefined) throw new Error(`The plan has no line ${name}`);
  return cell;
}

/** Index of the cell that `column` or `above.column` means at `place`. */
export function cellIn(node: Extract<Checked, { kind: 'cell' }>, place: CellPlace, plan: CellPlan): number {
  const row = rowOf(place) - (node.row === 'above' ? 1 : 0);
  const cell = columnCells(node.table, node.column, plan)[row];
  if (cell === undefined) throw new Error(`The table ${node.table} has no row ${row} of ${node.column}`);
  return cell;
}

/** Indices of the cells of a whole column, or of the rows above `place`. */
export function cellsInRange(
  node: Extract<Checked, { kind: 'range' }>,
  place: CellPlace,
  plan: CellPlan,
): readonly number[] {
  const column = columnCells(node.table, node.column, plan);
  return node.rows === 'all' ? column : column.slice(0, rowOf(place));
}

export function columnCells(table: string, column: string, plan: CellPlan): readonly number[] {
  const cells = plan.tables.get(table)?.columns.get(column);
  if (cells === undefined) throw new Error(`The plan has no column ${columnName(table, column)}`);
  return cells;
}

function rowOf(place: CellPlace): number {
  if (place.kind === 'cell') return place.row;
  throw new Error(`The line ${place.name} has no row`);
}
