import { availableParallelism, loadavg } from 'node:os';

/** How busy the machine was before: above the number of cores every time is too long, and the rarest most of all. */
export function loadText(): string {
  const [load = 0] = loadavg();
  const busy = load > availableParallelism() / 2 ? ': something else is running, so all times are too long' : '';
  return `Load over the last minute ${load.toFixed(1)}${busy}.`;
}
