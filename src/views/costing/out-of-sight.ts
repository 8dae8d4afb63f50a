import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** What a section is held to be high until the browser has seen it. */
const guessed = 'auto 30rem';

/**
 * Lets the browser neither lay out nor paint an element while it is out of sight. Not before its height is known, so that
 * nothing moves when it comes; and not while the focus is in it, since what opens under a field may reach over its end.
 */
export class OutOfSight implements ReactiveController {
  private readonly host: ReactiveControllerHost & HTMLElement;
  private settled = false;

  constructor(host: ReactiveControllerHost & HTMLElement) {
    this.host = host;
    host.addController(this);
    host.addEventListener('focusin', () => this.leave('visible'));
    host.addEventListener('focusout', () => this.leave('auto'));
  }

  hostConnected(): void {
    // From here on the browser remembers how high it was.
    this.host.style.setProperty('contain-intrinsic-size', guessed);
    void this.settle();
  }

  /** Two frames from now the element has been laid out. */
  private async settle(): Promise<void> {
    for (let frame = 0; frame < 2; frame += 1) await new Promise((next) => requestAnimationFrame(next));
    this.settled = true;
    this.leave(this.host.matches(':focus-within') ? 'visible' : 'auto');
  }

  private leave(to: 'auto' | 'visible'): void {
    if (this.settled) this.host.style.setProperty('content-visibility', to);
  }
}
