import type { CellPlace, Failure } from './cells.ts';
import type { Checked } from './checked-tree.ts';
import { childrenOf } from './dependencies.ts';
import { type ExplainedPlan, valueText } from './explain.ts';
import { takenArm } from './taken-arm.ts';
import { writeChecked } from './write-checked.ts';

/**
 * What went wrong where a failed number began, with what caused it: “fill ÷ solids: solids is 0”. `nameOf` gives a place
 * its words.
 */
export function failureText(failure: Failure, over: ExplainedPlan, nameOf: (place: CellPlace) => string): string {
  const origin = over.plan.cells[failure.origin];
  if (origin?.content.kind === 'result')
    return `${nameOf(origin.place)} cannot be worked out: ${operatorCauses[failure.kind]}.`;
  if (origin?.content.kind !== 'formula') return 'It cannot be worked out.';
  const cause = causeOf(origin.content.tree, origin.place, failure, over);
  return `${nameOf(origin.place)} cannot be worked out: ${cause}.`;
}

/** A failure that begins in the crew's day itself. */
const operatorCauses: Readonly<Record<Failure['kind'], string>> = {
  division: 'nobody is at it, or the day has no hours on site',
  notFound: 'what it comes after stands nowhere above it',
  outside: 'what it reads is not there',
  undefined: 'it is too large',
};

function causeOf(tree: Checked, place: CellPlace, failure: Failure, over: ExplainedPlan): string {
  const node = innermostFailure(tree, place, over);
  switch (failure.kind) {
    case 'division': {
      const divisor = node.kind === 'binary' && node.operator === '/' ? node.right : undefined;
      return divisor === undefined ? 'it divides by 0' : `${written(divisor)} is 0`;
    }
    case 'notFound': {
      const [sought, column] = node.kind === 'call' && node.name === 'MATCH' ? node.args : [];
      if (sought === undefined || column === undefined) return `${written(node)} looks into an empty table`;
      return `${written(sought)}, which is ${valueText(over.evaluate(sought, place), sought.type, over.measures)}, is not in ${written(column)}`;
    }
    case 'outside':
      return `${written(node)} looks past the end of the table`;
    case 'undefined':
      return `${written(node)} has no answer, or one too large`;
    default:
      return failure.kind satisfies never;
  }
}

/** The deepest part that fails though all its own parts do not: where the failure was made. */
function innermostFailure(tree: Checked, place: CellPlace, over: ExplainedPlan): Checked {
  const taken = takenArm(tree, place, over.evaluate);
  const worked = taken === undefined ? childrenOf(tree) : [taken.by, ...(taken.arm ? [taken.arm] : [])];
  for (const child of worked) {
    if (child.kind !== 'range' && typeof over.evaluate(child, place) === 'object')
      return innermostFailure(child, place, over);
  }
  return tree;
}

function written(tree: Checked): string {
  return writeChecked(tree, () => undefined);
}
