import fc from 'fast-check';

// Once a random test has failed, fast-check looks for the smallest case that fails too; with a quote of forty entries that
// can take many minutes. After the longest that a test may last it tells the smallest found. A test cut off without having
// failed is failed, too.
fc.configureGlobal({ interruptAfterTimeLimit: 120_000, markInterruptAsFailure: true });

/** A new seed for random tests, printed so that a run can be repeated: put the number in its place. */
export function printedSeed(test: string): number {
  const seed = Math.floor(Math.random() * 2 ** 31);
  console.info(`${test} seed ${seed}`);
  return seed;
}
