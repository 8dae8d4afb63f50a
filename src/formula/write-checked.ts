import { columnName } from './cell-name.ts';
import type { Checked } from './checked-tree.ts';
import { precedence, unaryPrecedence } from './tree.ts';

/** How a node is written; undefined writes it out from its parts. */
export type WriteNode = (node: Checked) => string | undefined;

/** Writes a checked formula, each node as `write` has it or as formula text with as few brackets as keep its meaning. */
export function writeChecked(tree: Checked, write: WriteNode): string {
  const own = write(tree);
  if (own !== undefined) return own;
  switch (tree.kind) {
    case 'number':
      return String(tree.value);
    case 'code':
      return `"${tree.value}"`;
    case 'line':
      return tree.name;
    case 'cell':
      return tree.row === 'above' ? `above.${tree.column}` : tree.column;
    case 'range':
      return tree.rows === 'above' ? `above(${tree.column})` : columnName(tree.table, tree.column);
    case 'productField':
      return `${writeChecked(tree.product, write)}.${tree.field}`;
    case 'unary':
      return tree.operator + bracketed(tree.operand, unaryPrecedence, write);
    case 'binary': {
      const tightness = precedence[tree.operator];
      const operator = tree.operator === '^' ? '^' : ` ${tree.operator} `;
      return bracketed(tree.left, tightness, write) + operator + bracketed(tree.right, tightness + 1, write);
    }
    case 'call':
      return `${tree.name}(${tree.args.map((argument) => writeChecked(argument, write)).join(', ')})`;
    default:
      return tree satisfies never;
  }
}

function bracketed(tree: Checked, atLeast: number, write: WriteNode): string {
  const text = writeChecked(tree, write);
  const written = write(tree) !== undefined;
  return !written && tree.kind === 'binary' && precedence[tree.operator] < atLeast ? `(${text})` : text;
}
