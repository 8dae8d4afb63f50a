import { parseFormula } from '../../src/formula/parser.ts';
import type { Expression } from '../../src/formula/tree.ts';

const allowed: ReadonlySet<number> = new Set([0, 1, 2]);

/** Arguments, counted from 0, that say how a function works and are no quantity: digits, kind of match, column, numbering. */
const settings: ReadonlyMap<string, number> = new Map([
  ['ROUND', 1],
  ['ROUNDUP', 1],
  ['ROUNDDOWN', 1],
  ['MATCH', 2],
  ['INDEX', 2],
  ['WEEKDAY', 1],
]);

/**
 * The numbers in a formula that ought to be lines with a unit and a source. A formula of literals only is such a line
 * itself.
 */
export function bareNumbers(formula: string): number[] {
  const parsed = parseFormula(formula);
  if (parsed.kind === 'fault') throw new Error(`${formula}: ${parsed.fault.reason}`);
  return readsNothing(parsed.tree) ? [] : numbersIn(parsed.tree);
}

function numbersIn(tree: Expression): number[] {
  if (tree.kind === 'number') return allowed.has(tree.value) ? [] : [tree.value];
  if (tree.kind !== 'call') return partsOf(tree).flatMap(numbersIn);
  return tree.args.flatMap((argument, place) => (settings.get(tree.name) === place ? [] : numbersIn(argument)));
}

function readsNothing(tree: Expression): boolean {
  if (tree.kind === 'number' || tree.kind === 'text') return true;
  const parts = partsOf(tree);
  return tree.kind !== 'name' && tree.kind !== 'member' && tree.kind !== 'allAbove' && parts.every(readsNothing);
}

function partsOf(tree: Expression): readonly Expression[] {
  switch (tree.kind) {
    case 'number':
    case 'text':
    case 'name':
    case 'member':
    case 'allAbove':
      return [];
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
