import { formatQuantity } from '../units/format.ts';
import type { Measures } from '../units/measures.ts';
import { one } from '../units/unit.ts';
import type { CellPlace, CellPlan, CellValue } from './cells.ts';
import type { Checked, ValueType } from './checked-tree.ts';
import { cellIn, cellsInRange, childrenOf, lineCell } from './dependencies.ts';
import type { PartEvaluator } from './evaluate-part.ts';
import { type TakenArm, takenArm } from './taken-arm.ts';
import { writeChecked } from './write-checked.ts';

/** Why a number is what it is. */
export interface Explanation {
  /** The formula in names. */
  readonly names: string;
  /** The same with today's values and their units in place of names. */
  readonly numbers: string;
  /** Each operation in the order it is worked out, with what it gives. */
  readonly steps: readonly ExplainedStep[];
}

export interface ExplainedStep {
  readonly text: string;
  readonly gives: string;
}

/** What an explanation is made over: a plan, its values, and a way to work out pieces. */
export interface ExplainedPlan {
  readonly plan: CellPlan;
  readonly read: (cell: number) => CellValue;
  readonly evaluate: PartEvaluator;
  /** What numbers are told in; the formula in names is the same in both. */
  readonly measures: Measures;
}

const mostListed = 8;

/** Explains a formula standing at `place`. Of IF and SWITCH only the taken arm is followed. */
export function explainFormula(tree: Checked, place: CellPlace, over: ExplainedPlan): Explanation {
  const leaf = (node: Checked): string | undefined => leafInNumbers(node, place, over);
  const steps: ExplainedStep[] = [];
  followSteps(tree, place, over, steps);
  return { names: writeChecked(tree, () => undefined), numbers: writeChecked(tree, leaf), steps };
}

/** A value in words: a number with its unit, a code, yes or no, or that it failed. */
export function valueText(value: CellValue, type: ValueType, measures: Measures = 'us'): string {
  if (typeof value === 'number') return formatQuantity(value, type.kind === 'number' ? type.unit : one, { measures });
  if (typeof value === 'string') return value;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return 'cannot be worked out';
}

function leafInNumbers(node: Checked, place: CellPlace, over: ExplainedPlan): string | undefined {
  switch (node.kind) {
    case 'line':
      return cellText(lineCell(node.name, over.plan), over);
    case 'cell':
      return cellText(cellIn(node, place, over.plan), over);
    case 'range': {
      const cells = cellsInRange(node, place, over.plan);
      const listed = cells.slice(0, mostListed).map((cell) => cellText(cell, over));
      return `[${listed.join('; ')}${cells.length > mostListed ? `; … ${cells.length} rows` : ''}]`;
    }
    case 'productField':
      return valueText(over.evaluate(node, place), node.type, over.measures);
    default:
      return undefined;
  }
}

function cellText(cell: number, { plan, read, measures }: ExplainedPlan): string {
  const planned = plan.cells[cell];
  const value = read(cell);
  if (planned === undefined) return '';
  return typeof value === 'string' ? `"${value}"` : valueText(value, planned.type, measures);
}

/** Adds the steps of a tree, innermost first; gives the text by which an outer step names it. */
function followSteps(tree: Checked, place: CellPlace, over: ExplainedPlan, steps: ExplainedStep[]): string {
  const leaf =
    leafInNumbers(tree, place, over) ??
    (childrenOf(tree).length === 0 ? writeChecked(tree, () => undefined) : undefined);
  if (leaf !== undefined) return leaf;
  if (tree.kind === 'unary') return tree.operator + followSteps(tree.operand, place, over, steps);
  const taken = takenArm(tree, place, over.evaluate);
  if (taken !== undefined) return followTaken(tree, taken, place, over, steps);
  const parts = new Map(childrenOf(tree).map((child) => [child, followSteps(child, place, over, steps)]));
  const gives = valueText(over.evaluate(tree, place), tree.type, over.measures);
  steps.push({ text: writeChecked(tree, (node) => (node === tree ? undefined : parts.get(node))), gives });
  return gives;
}

function followTaken(
  tree: Checked,
  { by, arm, words }: TakenArm,
  place: CellPlace,
  over: ExplainedPlan,
  steps: ExplainedStep[],
): string {
  followSteps(by, place, over, steps);
  if (arm === undefined) return valueText(over.evaluate(tree, place), tree.type, over.measures);
  const gives = followSteps(arm, place, over, steps);
  steps.push({ text: words, gives });
  return gives;
}
