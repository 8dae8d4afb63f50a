import { parseFormula } from '../formula/parser.ts';
import type { Expression } from '../formula/tree.ts';
import type { ColumnFile, LineFile } from './line-schema.ts';

const known = new WeakMap<LineFile | ColumnFile, boolean>();

/**
 * Whether a line is a constant: a formula made only of literals, as `231 / 144 * 1000`. It is the same on every floor and in
 * every shop, so nobody types over it.
 */
export function isConstant(definition: LineFile | ColumnFile): boolean {
  const before = known.get(definition);
  if (before !== undefined) return before;
  const parsed = definition.kind === 'formula' ? parseFormula(definition.formula) : undefined;
  const is = parsed?.kind === 'tree' && readsNothing(parsed.tree);
  known.set(definition, is);
  return is;
}

function readsNothing(tree: Expression): boolean {
  switch (tree.kind) {
    case 'number':
      return true;
    case 'unary':
      return readsNothing(tree.operand);
    case 'binary':
      return readsNothing(tree.left) && readsNothing(tree.right);
    case 'call':
      return tree.args.every(readsNothing);
    default:
      return false;
  }
}
