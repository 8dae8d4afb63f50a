import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** A phone's width: rows become cards. The styles of elements name the same width. */
const narrow = '(max-width: 40rem)';

/** Tells an element whether the screen is as narrow as a phone, and repaints it when that changes. */
export class NarrowScreen implements ReactiveController {
  private readonly host: ReactiveControllerHost;
  private list: MediaQueryList | undefined;

  constructor(host: ReactiveControllerHost) {
    this.host = host;
    host.addController(this);
  }

  get isNarrow(): boolean {
    return this.list?.matches ?? false;
  }

  hostConnected(): void {
    this.list = window.matchMedia(narrow);
    this.list.addEventListener('change', this.onChange);
  }

  hostDisconnected(): void {
    this.list?.removeEventListener('change', this.onChange);
  }

  private readonly onChange = (): void => this.host.requestUpdate();
}
