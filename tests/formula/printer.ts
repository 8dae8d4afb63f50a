import { type Expression, precedence, unaryPrecedence } from '../../src/formula/tree.ts';

/**
 * Writes a tree as formula text with as few brackets as keep its meaning. Inverse of `parseFormula`: what it prints
 * reads back to the same tree, spans aside.
 */
export function printFormula(tree: Expression): string {
  switch (tree.kind) {
    case 'number':
      return String(tree.value);
    case 'text':
      return `"${tree.value.replaceAll('"', '""')}"`;
    case 'name':
      return tree.name;
    case 'member':
      return `${tree.of}.${tree.member}`;
    case 'allAbove':
      return `above(${tree.column})`;
    case 'unary':
      return tree.operator + bracketed(tree.operand, unaryPrecedence);
    case 'binary': {
      const own = precedence[tree.operator];
      const operator = tree.operator === '^' ? '^' : ` ${tree.operator} `;
      return bracketed(tree.left, own) + operator + bracketed(tree.right, own + 1);
    }
    case 'call':
      return `${tree.name}(${tree.args.map(printFormula).join(', ')})`;
    default:
      return tree satisfies never;
  }
}

function bracketed(tree: Expression, atLeast: number): string {
  const text = printFormula(tree);
  return tree.kind === 'binary' && precedence[tree.operator] < atLeast ? `(${text})` : text;
}
