/** Work that nobody waits for: none before `begin`, then one piece at a time when the page rests, within a second even where it never does. */
export class IdleWork {
  private waiting: (() => void)[] | undefined = [];

  readonly later = (work: () => void): void => {
    if (this.waiting === undefined) whenIdle(work);
    else this.waiting.push(work);
  };

  readonly begin = (): void => {
    const works = this.waiting ?? [];
    this.waiting = undefined;
    // Two frames from now what is on its way to the screen is there.
    requestAnimationFrame(() => requestAnimationFrame(() => works.forEach(whenIdle)));
  };
}

function whenIdle(work: () => void): void {
  if ('requestIdleCallback' in window) requestIdleCallback(work, { timeout: 1000 });
  else setTimeout(work, 100);
}
