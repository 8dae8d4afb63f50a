import { describe, expect, it } from 'vitest';
import { readClock } from '../../src/quote/clock.ts';
import { taskReason } from '../../src/quote/task-reason.ts';
import type { Given } from '../helpers/given-floor.ts';
import { priced } from '../helpers/priced-floor.ts';
import { shippedStack } from '../helpers/shipped-stacks.ts';

function reason(system: string, task: string, set: Given['set'] = {}): string {
  const { option, read } = priced(system, { set });
  const reading = readClock({ stack: shippedStack(system).stack, option, read });
  if (reading.kind !== 'clock') throw new Error(reading.kind);
  const found = reading.clock.tasks.find(({ row }) => row === task);
  if (found === undefined) throw new Error(`${task} is not done`);
  return taskReason(found, reading.clock.day);
}

describe('why a task begins when it does', () => {
  it('is said of a coat that is waited for on site, with the hour', () => {
    expect(reason('flake-fast-one-day', 'scrape')).toBe('waits for the fast base until 4:24 pm');
  });

  it('is said of a later visit, planned or forced by a cure', () => {
    expect(reason('flake-full-broadcast', 'scrape')).toBe('a later visit, as planned');
    const cold = { slab_temperature: 50, longest_day: 10 };
    expect(reason('flake-fast-one-day', 'scrape', cold)).toBe(
      'another visit: once the fast base takes it, the day would not hold the rest',
    );
  });

  it('is said of a coat that is left for the morning: it would end after the day, or begin too late', () => {
    const large = { 'areas.bay.length': 60, 'areas.bay.width': 45 };
    expect(reason('patio-porch', 'lay_base', large)).toBe(
      'next morning: with what belongs to it, it would end after the day',
    );
    expect(reason('flake-full-broadcast', 'lay_base', { latest_coat_start: 12 })).toBe(
      'next morning: no coat starts after noon',
    );
  });

  it('is not said of what follows the one above, or runs beside it', () => {
    expect(reason('flake-full-broadcast', 'vacuum')).toBe('');
    expect(reason('flake-full-broadcast', 'edge_grind')).toBe('');
  });
});
