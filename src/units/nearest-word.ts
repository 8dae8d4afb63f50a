/**
 * The candidate that differs from `word` by the fewest typed letters, or undefined when none is near: at most
 * one letter in three (and at least one) may differ. Letter case does not count.
 * Example: `nearestWord('galon', ['gal', 'ft'])` → `'gal'`.
 */
export function nearestWord(word: string, candidates: Iterable<string>): string | undefined {
  const wanted = word.toLowerCase();
  let best: string | undefined;
  let bestDistance = Math.max(1, Math.floor(word.length / 3)) + 1;
  for (const candidate of candidates) {
    const distance = lettersApart(wanted, candidate.toLowerCase());
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/** The question that follows a message: ` Did you mean “gal”?`, or nothing where no word is near. */
export function didYouMean(near: string | undefined): string {
  return near === undefined ? '' : ` Did you mean “${near}”?`;
}

/** Damerau and Levenshtein's distance: insertions, deletions, exchanges and swaps of neighbouring letters. */
function lettersApart(a: string, b: string): number {
  let twoAbove: readonly number[] = [];
  let above: readonly number[] = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const exchange = (above[column - 1] ?? 0) + (a[row - 1] === b[column - 1] ? 0 : 1);
      const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      const swap = swapped ? (twoAbove[column - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY;
      current.push(Math.min(exchange, swap, (above[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1));
    }
    twoAbove = above;
    above = current;
  }
  return above[b.length] ?? 0;
}
