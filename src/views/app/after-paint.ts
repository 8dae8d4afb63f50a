/** As long as a page that is drawn no frames may keep a change waiting, in milliseconds. */
const longest = 100;

/**
 * Waits until what has changed is painted, so that nobody waits for work that shows nothing. At once on a page that is
 * hidden, or is being left: it is drawn no more.
 */
export class AfterPaint {
  private waiting: (() => void)[] = [];
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    // Heard for good: to begin to listen for these the page asks the browser, which takes time before each paint.
    addEventListener('pagehide', this.release);
    document.addEventListener('visibilitychange', this.release);
  }

  /** Resolves once the page is painted. */
  readonly turn = (): Promise<void> =>
    new Promise((resolve) => {
      if (document.hidden) return resolve();
      this.waiting.push(resolve);
      if (this.waiting.length > 1) return;
      requestAnimationFrame(() => setTimeout(this.release));
      this.timer = setTimeout(this.release, longest);
    });

  private readonly release = (): void => {
    const { waiting } = this;
    clearTimeout(this.timer);
    this.waiting = [];
    for (const resolve of waiting) resolve();
  };
}
