import type { ReactiveController, ReactiveControllerHost } from 'lit';

/**
 * Keeps what floats at the end of its element within the window: where it would begin outside, it floats from the
 * element’s start (class `from-start`). Looked at once, as it appears, since to look makes the browser lay out the page.
 */
export class WithinWindow implements ReactiveController {
  private readonly host: ReactiveControllerHost & { readonly renderRoot: ParentNode };
  private readonly selector: string;
  private seen: Element | null = null;

  constructor(host: WithinWindow['host'], selector: string) {
    this.host = host;
    this.selector = selector;
    host.addController(this);
  }

  hostUpdated(): void {
    const floating = this.host.renderRoot.querySelector(this.selector);
    if (floating === this.seen) return;
    this.seen = floating;
    if (floating !== null && floating.getBoundingClientRect().left < 0) floating.classList.add('from-start');
  }
}
