/** As long as a page that is drawn no frames may keep a change waiting, in milliseconds. */
const longest = 100;

/**
 * Resolves once what has changed is painted, so that nobody waits for work that shows nothing. At once on a page that is
 * hidden, or is being left: it is drawn no more.
 */
export function afterPaint(): Promise<void> {
  return new Promise((resolve) => {
    if (document.hidden) return resolve();
    const left = new AbortController();
    const done = (): void => {
      left.abort();
      resolve();
    };
    requestAnimationFrame(() => setTimeout(done));
    setTimeout(done, longest);
    addEventListener('pagehide', done, { signal: left.signal });
    document.addEventListener('visibilitychange', done, { signal: left.signal });
  });
}
