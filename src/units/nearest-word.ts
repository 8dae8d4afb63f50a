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

/** Levenshtein's distance: insertions, deletions and exchanges of single letters. */
function lettersApart(a: string, b: string): number {
  let above = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const exchange = (above[column - 1] ?? 0) + (a[row - 1] === b[column - 1] ? 0 : 1);
      current.push(Math.min(exchange, (above[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1));
    }
    above = current;
  }
  return above[b.length] ?? 0;
}
