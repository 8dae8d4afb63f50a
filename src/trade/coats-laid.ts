import { isOne } from './given.ts';
import type { Task } from './task.ts';

/** Whether a task above that is done lays a coat. */
export function isLaidAbove(coat: string, above: readonly { readonly task: Task }[]): boolean {
  return above.some(({ task }) => task.lays === coat && isOne(task.include));
}

/** The task above that lays a coat, done or not. */
export function layerOf<Row extends { readonly task: Task }>(coat: string, above: readonly Row[]): Row | undefined {
  return above.find(({ task }) => task.lays === coat);
}
