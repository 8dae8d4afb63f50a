import type { CellValue } from '../formula/cells.ts';
import type { OptionPlan } from '../template/plan.ts';
import type { OptionResults } from './option-results.ts';

interface KeptText<Told> {
  readonly reads: readonly number[];
  readonly values: readonly CellValue[];
  /** What else it was told from. */
  readonly also: unknown;
  readonly told: Told;
}

/**
 * What options have said, to be said again as it was while every cell it was told from reads the same. Rows, columns and
 * words that a person writes make a new plan, of which nothing has been said.
 */
export class KeptTexts<Told> {
  private readonly known = new WeakMap<OptionPlan, Map<string, KeptText<Told>>>();

  /** `reads` gives the cells that what `tell` makes under `name` is told from; `also` is compared by identity. */
  told(
    { option, read }: OptionResults,
    name: string,
    reads: () => readonly number[],
    also: unknown,
    tell: () => Told,
  ): Told {
    const texts = this.known.get(option) ?? new Map<string, KeptText<Told>>();
    const kept = texts.get(name);
    if (kept !== undefined && kept.also === also && kept.reads.every((cell, at) => read(cell) === kept.values[at]))
      return kept.told;
    const cells = kept?.reads ?? reads();
    const told = tell();
    this.known.set(option, texts.set(name, { reads: cells, values: cells.map(read), also, told }));
    return told;
  }
}
