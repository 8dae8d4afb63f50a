import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { QuoteSession, SessionListener } from '../../session/quote-session.ts';

/** What an element paints again for: other numbers, or also that all is saved now, or may not be changed here. */
type News = 'numbers' | 'everything';

/** Paints an element again as its session changes, while it is on the page. `heard` is called before. */
export class SessionNews implements ReactiveController {
  private readonly host: ReactiveControllerHost & { readonly session: QuoteSession | undefined };
  private readonly of: News;
  private readonly heard: SessionListener | undefined;
  private unsubscribe: (() => void) | undefined;

  constructor(host: SessionNews['host'], of: News, heard?: SessionListener) {
    this.host = host;
    this.of = of;
    this.heard = heard;
    host.addController(this);
  }

  hostConnected(): void {
    this.unsubscribe = this.host.session?.subscribe((changes) => {
      if (this.of === 'numbers' && changes.length === 0) return;
      this.heard?.(changes);
      this.host.requestUpdate();
    });
  }

  hostDisconnected(): void {
    this.unsubscribe?.();
  }
}
