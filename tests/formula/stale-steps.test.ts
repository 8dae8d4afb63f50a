import { describe, expect, it } from 'vitest';
import { StaleSteps } from '../../src/formula/stale-steps.ts';

function taken(steps: StaleSteps): number[] {
  const all: number[] = [];
  for (let step = steps.next(); step !== -1; step = steps.next()) all.push(step);
  return all;
}

describe('stale steps', () => {
  it('are all 70 at first, in order, and none after that', () => {
    const steps = new StaleSteps(70);
    expect(taken(steps)).toEqual(Array.from({ length: 70 }, (_, step) => step));
    expect(steps.next()).toBe(-1);
  });

  it('are none of a calculation without steps', () => {
    expect(new StaleSteps(0).next()).toBe(-1);
  });

  it('come in order and once, however they were marked: 69, 31, 0, 32, 31 gives 0, 31, 32, 69', () => {
    const steps = new StaleSteps(70);
    taken(steps);
    for (const step of [69, 31, 0, 32, 31]) steps.mark(step);
    expect(taken(steps)).toEqual([0, 31, 32, 69]);
  });

  it('take in what is marked on the way, in the same word and in a later one', () => {
    const steps = new StaleSteps(70);
    taken(steps);
    steps.mark(3);
    expect(steps.next()).toBe(3);
    steps.mark(4);
    steps.mark(64);
    expect(taken(steps)).toEqual([4, 64]);
  });
});
