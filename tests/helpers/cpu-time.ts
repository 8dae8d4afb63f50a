/**
 * Milliseconds of work that this process did for `body`. Unlike a clock it stands still while other programs have the
 * machine, so that a limit on it says something of the work and not of the machine's other business.
 */
export function cpuMilliseconds(body: () => unknown): number {
  const before = process.cpuUsage();
  body();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}
