import { columnName, placeText } from '../formula/cell-name.ts';
import type { CellPlace, PlainPlan } from '../formula/cells.ts';
import { productKey, productTable } from '../formula/cells.ts';
import type { Checked } from '../formula/checked-tree.ts';
import { isCode } from '../formula/code-text.ts';
import { type BinaryOperator, precedence } from '../formula/tree.ts';
import type { CellAddresses } from './cell-addresses.ts';

type Node<Kind extends Checked['kind']> = Extract<Checked, { kind: Kind }>;

interface Context {
  readonly plan: PlainPlan;
  readonly addresses: CellAddresses;
  readonly place: CellPlace;
}

/**
 * The HyperFormula formula of one cell, every operation in its own parentheses, so that no engine's precedence matters.
 * The outermost pair is needed: HyperFormula notes in which cell an overflow began only at a node around it.
 * Example: `depth * 2 + 1` → `=((('_lines'!$A$1*2)+1))`.
 */
export function formulaText(tree: Checked, place: CellPlace, plan: PlainPlan, addresses: CellAddresses): string {
  return `=(${emit(tree, { plan, addresses, place })})`;
}

/**
 * The formula of a table's operator: a function of its name, over the columns and lines it reads, and the places of its results,
 * where failures of its own begin. What it gives lies in a sheet of its own, a column a result.
 * Example: `=SCHEDULE('tasks'!$A$1:$A$3,'_lines'!$A$7,"2:17,18")`.
 */
export function operatorText(table: string, plan: PlainPlan, addresses: CellAddresses): string {
  const operator = plan.operators.get(table);
  if (operator === undefined) throw new Error(`The table ${table} has no operator`);
  const inputs = operator.inputs.map((cells) => (cells.length === 0 ? '""' : addresses.rangeText(cells)));
  const results = operator.results.map((column) => {
    const [first] = plan.tables.get(table)?.columns.get(column) ?? [];
    if (first === undefined) throw new Error(`The table ${table} has no result ${column}`);
    return addresses.of(first);
  });
  const places = `"${results[0]?.sheet}:${results.map(({ col }) => col).join(',')}"`;
  return `=${operator.name.toUpperCase()}(${[...inputs, places].join(',')})`;
}

/** The cell in which the operator of its table leaves a result. */
export function resultText(place: CellPlace, plan: PlainPlan, addresses: CellAddresses): string {
  const operator = place.kind === 'cell' ? plan.operators.get(place.table) : undefined;
  if (place.kind !== 'cell' || operator === undefined) throw new Error(`${placeText(place)} has no operator`);
  return `=${addresses.outputText(operator.cell, operator.results.indexOf(place.column), place.row)}`;
}

/** A code as a cell's content: the apostrophe keeps it a text. */
export function codeContent(code: string): string {
  return `'${checkedCode(code)}`;
}

function emit(node: Checked, context: Context): string {
  switch (node.kind) {
    case 'number':
      return numberText(node.value);
    case 'code':
      return `"${checkedCode(node.value)}"`;
    case 'line':
    case 'cell':
      return context.addresses.cellText(cellOf(node, context));
    case 'range':
      return context.addresses.columnText(node.table, node.column, rowsOf(node, context));
    case 'productField':
      return productFieldText(node, context);
    case 'unary':
      return node.operator === '-' ? `(-${emit(node.operand, context)})` : emit(node.operand, context);
    case 'binary':
      return `(${binaryText(node, context)})`;
    case 'call':
      return callText(node, context);
    default:
      return never(node);
  }
}

/** JavaScript writes exponents in lower case, the only case HyperFormula reads. */
function numberText(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`formula holds the number ${value}`);
  return value < 0 ? `(${value})` : String(value);
}

function checkedCode(code: string): string {
  if (!isCode(code)) throw new Error(`"${code}" cannot be a code`);
  return code;
}

/** A long sum stays flat: its left operand needs no parentheses, and 400 nested pairs would exhaust the stack. */
function binaryText(node: Node<'binary'>, context: Context): string {
  const { left, operator, right } = node;
  const chained = left.kind === 'binary' && chains(left.operator, operator);
  return `${chained ? binaryText(left, context) : emit(left, context)}${operator}${emit(right, context)}`;
}

function chains(inner: BinaryOperator, outer: BinaryOperator): boolean {
  return precedence[inner] === precedence[outer] && precedence[outer] > precedence['='];
}

function productFieldText(node: Node<'productField'>, context: Context): string {
  const rows = context.plan.tables.get(productTable)?.rows ?? 0;
  const field = context.addresses.columnText(productTable, node.field, rows);
  const keys = context.addresses.columnText(productTable, productKey, rows);
  return `INDEX(${field},MATCH(${emit(node.product, context)},${keys},0))`;
}

function callText(node: Node<'call'>, context: Context): string {
  // HyperFormula's PI() has 14 decimals.
  if (node.name === 'PI') return String(Math.PI);
  // An average over nothing but empty columns is a thing not found; HyperFormula would call it a division by zero.
  if (node.name === 'AVERAGE' && node.args.every((arg) => arg.kind === 'range' && rowsOf(arg, context) === 0)) {
    return 'NA()';
  }
  return `${node.name}(${node.args.map((arg) => emit(arg, context)).join(',')})`;
}

function cellOf(node: Node<'line' | 'cell'>, { plan, place }: Context): number {
  const cell =
    node.kind === 'line'
      ? plan.lines.get(node.name)
      : plan.tables.get(node.table)?.columns.get(node.column)?.[
          rowOf(node.table, place) - (node.row === 'above' ? 1 : 0)
        ];
  if (cell === undefined) {
    throw new Error(
      `${placeText(place)} reads ${node.kind === 'line' ? node.name : columnName(node.table, node.column)}, which is not in the plan`,
    );
  }
  return cell;
}

function rowsOf(node: Node<'range'>, { plan, place }: Context): number {
  if (node.rows === 'all') return plan.tables.get(node.table)?.rows ?? 0;
  const rows = rowOf(node.table, place);
  if (rows === 0) throw new Error(`${placeText(place)} reads the rows above the first`);
  return rows;
}

function rowOf(table: string, place: CellPlace): number {
  if (place.kind === 'cell' && place.table === table) return place.row;
  throw new Error(`${placeText(place)} reads a row of ${table}, in which it does not stand`);
}

function never(node: never): never {
  throw new Error(`unknown node ${JSON.stringify(node)}`);
}
