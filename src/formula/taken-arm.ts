import type { CellPlace } from './cells.ts';
import type { Checked } from './checked-tree.ts';
import type { PartEvaluator } from './evaluate-part.ts';

/** What an IF or SWITCH is decided by, and which of its arms that takes: none where it cannot be worked out. */
export interface TakenArm {
  readonly by: Checked;
  readonly arm?: Checked | undefined;
  /** As in “SWITCH takes its arm for "circle"”. */
  readonly words: string;
}

/** Of an IF or SWITCH standing at `place`, the arm that is worked out; undefined for what has no arms. */
export function takenArm(tree: Checked, place: CellPlace, evaluate: PartEvaluator): TakenArm | undefined {
  if (tree.kind !== 'call' || (tree.name !== 'IF' && tree.name !== 'SWITCH')) return undefined;
  const [by, ...rest] = tree.args;
  if (by === undefined) return undefined;
  const value = evaluate(by, place);
  if (tree.name === 'IF') {
    const arm = typeof value === 'boolean' ? rest[value ? 0 : 1] : undefined;
    return { by, arm, words: `IF takes its ${value === true ? 'first' : 'second'} arm` };
  }
  const at = rest.findIndex((code, index) => index % 2 === 0 && code.kind === 'code' && code.value === value);
  return { by, arm: at < 0 ? undefined : rest[at + 1], words: `SWITCH takes its arm for "${String(value)}"` };
}
