import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { laidOut } from './settled.ts';

/**
 * Lets the browser neither lay out nor paint an element while it is out of sight. Not before its height is known, so that
 * nothing moves when it comes; and not while the focus is in it, since what opens under a field may reach over its end.
 */
export class OutOfSight implements ReactiveController {
  private readonly host: ReactiveControllerHost & HTMLElement;
  private readonly guessed: string;
  private settled = false;

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
