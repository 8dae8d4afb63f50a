/**
 * How many orders there are of the jobs' blocks when each job keeps its own order: (a + b + …)! / (a! b! …).
 * Example: two blocks each in 2, 3 and 4 jobs → 6, 90, 2520.
 */
export function countOrders(blocks: readonly number[]): number {
  let orders = 1;
  let placed = 0;
  for (const count of blocks) {
    for (let block = 1; block <= count; block += 1) {
      placed += 1;
      // Whole at every step: it is a binomial so far.
      orders = (orders * placed) / block;
    }
  }
  return orders;
}

/**
 * Every such order, as the job whose next block comes at each place; earlier jobs first.
 * Example: [1, 2] → [0, 1, 1], [1, 0, 1], [1, 1, 0].
 */
export function* ordersOf(blocks: readonly number[]): Generator<readonly number[]> {
  if (blocks.every((count) => count === 0)) {
    yield [];
    return;
  }
  for (const [job, count] of blocks.entries()) {
    if (count === 0) continue;
    const others = blocks.map((left, at) => (at === job ? left - 1 : left));
    for (const rest of ordersOf(others)) yield [job, ...rest];
  }
}
