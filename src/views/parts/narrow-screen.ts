import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** A phone's width: rows become cards. The styles of elements name the same width. */
const phone = '(max-width: 40rem)';
/** A width at which the prices stand below the questions, not beside them. */
export const oneColumn = '(max-width: 52rem)';

/** Tells an element whether the screen is narrow, as a phone unless another width is named, and repaints it when that changes. */
export class NarrowScreen implements ReactiveController {
  private readonly host: ReactiveControllerHost;
  private readonly width: string;
  private list: MediaQueryList | undefined;

  constructor(host: ReactiveControllerHost, width = phone) {
    this.host = host;
    this.width = width;
    host.addController(this);
  }

  get isNarrow(): boolean {
    return this.list?.matches ?? false;
  }

  hostConnected(): void {
    this.list = window.matchMedia(this.width);
    this.list.addEventListener('change', this.onChange);
  }

  hostDisconnected(): void {
    this.list?.removeEventListener('change', this.onChange);
  }

  private readonly onChange = (): void => this.host.requestUpdate();
}
