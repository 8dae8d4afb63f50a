import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Before an element is laid out: the narrowest screen. */
const atFirst = 320;

/** The width an element has for its drawing, in whole pixels; it is painted again when that changes. */
export class OwnWidth implements ReactiveController {
  width = atFirst;
  private readonly host: ReactiveControllerHost & Element;
  private readonly size = new ResizeObserver(([entry]) => {
    const width = Math.floor(entry?.contentRect.width ?? 0);
    // In the next frame: a new width brings a new height, which must not be seen in the same round of observing.
    if (width > 0 && width !== this.width) requestAnimationFrame(() => this.take(width));
  });

  constructor(host: OwnWidth['host']) {
    this.host = host;
    host.addController(this);
  }

  hostConnected(): void {
    this.size.observe(this.host);
  }

  hostDisconnected(): void {
    this.size.disconnect();
  }

  private take(width: number): void {
    this.width = width;
    this.host.requestUpdate();
  }
}
