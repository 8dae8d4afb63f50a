import { KeptByCells } from '../../../quote/kept-by-cells.ts';
import type { OptionResults } from '../../../quote/option-results.ts';
import { holdsBack, openChecks } from '../../../quote/told-checks.ts';
import type { Measures } from '../../../units/measures.ts';

const keptReasons = new KeptByCells<readonly string[]>();

/**
 * Why a price is not to be given yet, in words a customer may read: a stop on the floor is told as it is; any other may
 * speak of money, so it only says that there is one.
 */
export function heldBack(results: OptionResults, measures: Measures): readonly string[] {
  const open = openChecks(results, measures);
  return keptReasons.of(results, measures, [open], () => {
    const stops = open.filter(holdsBack);
    const spoken = stops
      .filter((check) => (check.layer === 'floor' || check.open) && check.verdict === 'fails')
      .map((check) => check.says);
    const silent = stops.length > spoken.length ? ['This price needs a look from the office before it is given.'] : [];
    return [...new Set([...spoken, ...silent])];
  });
}
