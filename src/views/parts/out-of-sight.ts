import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { laidOut } from './settled.ts';

/**
 * Lets the browser neither lay out nor paint an element while it is out of sight. Not before its height is known, so that
 * nothing moves when it comes; and not while the focus is in it, since what opens under a field may reach over its end.
 * What changes in it is drawn after what is in view was painted: see `turn`.
 */
export class OutOfSight implements ReactiveController {
  private readonly host: ReactiveControllerHost & HTMLElement;
  private readonly guessed: string;
  private settled = false;
  private isInView = true;
  private readonly watch = new IntersectionObserver((seen) => {
    this.isInView = seen.at(-1)?.isIntersecting ?? true;
  });

  /** `guessed` is what the element is held to be high until the browser has seen it, as CSS has it: “30rem”. */
  constructor(host: ReactiveControllerHost & HTMLElement, guessed: string) {
    this.host = host;
    this.guessed = guessed;
    host.addController(this);
    host.addEventListener('focusin', () => this.leave('visible'));
    host.addEventListener('focusout', () => this.leave('auto'));
  }

  hostConnected(): void {
    // From here on the browser remembers how high it was.
    this.host.style.setProperty('contain-intrinsic-size', `auto ${this.guessed}`);
    void this.settle();
    this.watch.observe(this.host);
  }

  hostDisconnected(): void {
    this.watch.disconnect();
    this.isInView = true;
  }

  /** When the element is to be drawn: at once in view, else when the page has been painted. For `scheduleUpdate`. */
  turn(): Promise<void> | undefined {
    if (this.isInView || document.hidden) return undefined;
    return new Promise((painted) => requestAnimationFrame(() => setTimeout(painted)));
  }

  private async settle(): Promise<void> {
    await laidOut();
    this.settled = true;
    this.leave(this.host.matches(':focus-within') ? 'visible' : 'auto');
  }

  private leave(to: 'auto' | 'visible'): void {
    if (this.settled) this.host.style.setProperty('content-visibility', to);
  }
}
