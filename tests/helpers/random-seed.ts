import fc from 'fast-check';

// Once a random test has failed, fast-check looks for the smallest case that fails too; with a quote of forty entries that
// can take many minutes. After the longest that a test may last it tells the smallest found. A test cut off without having
// failed is failed, too.
const limits = { interruptAfterTimeLimit: 120_000, markInterruptAsFailure: true };

/** Of every random test, so that a change is judged by the change; `TEST_SEED=new` looks for what it does not find. */
const usualSeed = 20261125;
const wanted = process.env['TEST_SEED'];
const seed = wanted === 'new' ? Math.floor(Math.random() * 2 ** 31) : Number(wanted ?? usualSeed);
if (!Number.isInteger(seed)) throw new Error('TEST_SEED is a whole number, or new.');
fc.configureGlobal({ ...limits, seed });

/** The seed of random tests, printed where it is another than usual: given as TEST_SEED it repeats the run. */
export function printedSeed(test: string): number {
  if (wanted !== undefined) console.info(`${test} seed ${seed}`);
  return seed;
}
