import { describe, expect, it } from 'vitest';
import { countOrders, ordersOf } from '../../src/trade/job-orders.ts';
import { orderTimes } from '../../src/trade/order-times.ts';
import { stackJobs } from '../../src/trade/stack-jobs.ts';
import { hours } from '../../src/units/hours.ts';
import { bestOf, crewDay, job, worked } from '../trade/jobs-of-a-day.ts';

/*
 * One crew between two sites half an hour apart. A: 4.5 h, a cure of 3 h, 2 h. B: 3.5 h, a cure of 3 h, 1.5 h. Derived: the
 * ends were worked out by hand and by another program, by adding up the hours of each order.
 */
const jobs = [job('A', [{ for: 4.5, cure: 3 }, { for: 2 }]), job('B', [{ for: 3.5, cure: 3 }, { for: 1.5 }])];
const day = crewDay({});
const noSlack = hours(0);

describe('two jobs of two blocks', () => {
  const ends: readonly (readonly [string, readonly number[], number])[] = [
    ['A A B B', [0, 0, 1, 1], 18],
    ['A B A B', [0, 1, 0, 1], 13],
    ['A B B A', [0, 1, 1, 0], 15.5],
    ['B A B A', [1, 0, 1, 0], 13.5],
    ['B A A B', [1, 0, 0, 1], 15.5],
    ['B B A A', [1, 1, 0, 0], 18],
  ];

  it.each(ends)('in the order %s end after %f h', (words, order, end) => {
    const times = orderTimes(jobs, order, day, noSlack);
    if (times.kind === 'breaks') throw new Error(JSON.stringify(times.rule));
    expect(worked(times.day.steps)).toBe(words);
    expect(times.day.ends).toBeCloseTo(end, 12);
  });

  it('have these six orders and no other', () => {
    const all = [...ordersOf([2, 2])].map(String).sort();
    expect(all).toEqual(ends.map(([, order]) => String(order)).sort());
  });

  it('are best done A B A B, over after 13 h', () => {
    expect(bestOf(stackJobs(jobs, day))).toEqual({ order: 'A B A B', ends: 13 });
  });
});

describe('the number of orders', () => {
  it('of 2, 3 and 4 jobs of two blocks is (2n)! / 2^n: 6, 90 and 2,520', () => {
    for (const [blocks, orders] of [
      [[2, 2], 6],
      [[2, 2, 2], 90],
      [[2, 2, 2, 2], 2520],
    ] as const) {
      expect(countOrders(blocks)).toBe(orders);
      expect(new Set([...ordersOf(blocks)].map(String)).size).toBe(orders);
    }
  });

  it('of jobs of 3, 2 and 1 blocks is 6! / (3! 2! 1!), 60', () => {
    expect(countOrders([3, 2, 1])).toBe(60);
    expect([...ordersOf([3, 2, 1])]).toHaveLength(60);
  });
});
