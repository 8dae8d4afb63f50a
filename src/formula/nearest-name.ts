import { nearestWord } from '../units/nearest-word.ts';

/** No name is longer; comparing longer words would only cost time. */
const longestName = 60;

/** The candidate that `word` may have meant. What could not be a name is like none; nor is what is much longer or shorter. */
export function nearestName(word: string, candidates: Iterable<string>): string | undefined {
  if (word.length > longestName) return undefined;
  const mayDiffer = Math.max(1, Math.floor(word.length / 3));
  const likely = [...candidates].filter((candidate) => Math.abs(candidate.length - word.length) <= mayDiffer);
  return nearestWord(word, likely);
}
