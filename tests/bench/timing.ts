/** How long something took over many runs, in milliseconds. */
export interface Timing {
  readonly median: number;
  readonly p99: number;
  readonly runs: number;
}

/** The middle of the times, and the least that 99 of 100 do not exceed. */
export function timingOf(times: readonly number[]): Timing {
  return { median: shareOf(times, 0.5), p99: shareOf(times, 0.99), runs: times.length };
}

/** The least that so large a share of the times does not exceed; 0.5 is the median. */
export function shareOf(times: readonly number[], share: number): number {
  const sorted = times.toSorted((a, b) => a - b);
  const found = sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)];
  if (found === undefined) throw new Error('Nothing was timed');
  return found;
}

export function millisecondsOf(run: () => void): number {
  const begun = performance.now();
  run();
  return performance.now() - begun;
}

/** Times what is too short for the clock: each time is the mean of a block of runs. `run` is told its number. */
export function timingOfBlocks(run: (at: number) => void, blocks = 60, runsInBlock = 20, warmUp = 10): Timing {
  const times: number[] = [];
  for (let block = -warmUp; block < blocks; block += 1) {
    const took = millisecondsOf(() => {
      for (let at = 0; at < runsInBlock; at += 1) run(block * runsInBlock + at);
    });
    if (block >= 0) times.push(took / runsInBlock);
  }
  return timingOf(times);
}

/** Random numbers from 0 to 1 that a seed repeats (a 32-bit linear congruential generator; good enough for entries). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
