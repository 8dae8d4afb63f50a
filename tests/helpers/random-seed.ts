/** A new seed for random tests, printed so that a run can be repeated: put the number in its place. */
export function printedSeed(test: string): number {
  const seed = Math.floor(Math.random() * 2 ** 31);
  console.info(`${test} seed ${seed}`);
  return seed;
}
