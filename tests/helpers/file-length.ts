/** Over this a file needs a reason, over the second it needs to be split. */
const softLimit = 300;
const hardLimit = 400;

/** What is wrong with the length of files, given the named exceptions (path → reason). */
export function lengthFaults(
  lines: ReadonlyMap<string, number>,
  exceptions: Readonly<Record<string, string>>,
): string[] {
  const tooLong = [...lines].flatMap(([path, count]) => {
    if (count > hardLimit) return [`${path} has ${count} lines: ${hardLimit} is the most`];
    if (count > softLimit && !exceptions[path]) return [`${path} has ${count} lines: over ${softLimit} needs a reason`];
    return [];
  });
  const needless = Object.keys(exceptions).filter((path) => (lines.get(path) ?? 0) <= softLimit);
  return [...tooLong, ...needless.map((path) => `${path} is a named exception without need`)];
}
