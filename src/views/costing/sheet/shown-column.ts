import { unitOf } from '../../../formula/value-type.ts';
import type { CompiledColumn } from '../../../template/compiled-stack.ts';
import type { Measures } from '../../../units/measures.ts';
import { labelIn } from '../../../units/said-units.ts';
import { one } from '../../../units/unit.ts';

/** A column of a table as a screen heads it. */
export interface ShownColumn {
  readonly name: string;
  readonly label: string;
  readonly group: string;
  readonly detail: boolean;
  /** Words stand left, numbers right. */
  readonly words: boolean;
}

const wordKinds: readonly string[] = ['choice', 'product', 'key', 'words'];

export function shownColumn({ definition, cases }: CompiledColumn, detail: boolean, measures: Measures): ShownColumn {
  const [first] = cases.values();
  return {
    name: definition.name,
    label: labelIn(definition.label, first === undefined ? one : unitOf(first.type), measures),
    group: definition.group ?? '',
    detail,
    words: wordKinds.includes(definition.kind),
  };
}
