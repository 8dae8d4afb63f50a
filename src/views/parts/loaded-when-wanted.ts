import type { ReactiveControllerHost } from 'lit';

type Loaded = 'not yet' | 'loading' | 'ready' | 'failed';

/** A module that is loaded when it is first wanted, so that the first price does not wait for it. */
export class LoadedWhenWanted {
  state: Loaded = 'not yet';
  private readonly host: ReactiveControllerHost;
  private readonly module: () => Promise<unknown>;

  constructor(host: ReactiveControllerHost, module: () => Promise<unknown>) {
    this.host = host;
    this.module = module;
  }

  /** Loads it unless that was begun before. */
  want(): void {
    if (this.state === 'not yet') void this.load();
  }

  readonly load = async (): Promise<void> => {
    this.turn('loading');
    try {
      await this.module();
      this.turn('ready');
    } catch {
      // Off the net before it was ever fetched: said, and tried again on a touch.
      this.turn('failed');
    }
  };

  private turn(state: Loaded): void {
    this.state = state;
    this.host.requestUpdate();
  }
}
