/** One tab writes a quote; the others read it. */
export type TabRole = 'writer' | 'reader';

export interface TabListener {
  /** Another tab has stored a change. */
  headChanged(): void;
  roleChanged(role: TabRole): void;
  /** Another tab asks to write: resolves once nothing is on its way to storage from here. */
  handOver(): Promise<void>;
}

type Notice = 'head' | 'wanted';

/** Milliseconds. A page that is loaded again may still hold its own lock for a moment. */
const moment = 250;
/** Milliseconds a writer gets to finish before the lock is taken from it: it may be frozen in the background. */
const patience = 2000;

/**
 * This tab's part in a quote that may be open in several. Without Web Locks every tab writes, and the store's refusal of
 * entries that do not follow the last one is what keeps the log whole; without BroadcastChannel nobody is told.
 */
export class QuoteTabs {
  private readonly name: string;
  private readonly listener: TabListener;
  private readonly channel: BroadcastChannel | undefined;
  private current: TabRole = 'reader';
  private release: (() => void) | undefined;

  constructor(id: string, listener: TabListener) {
    this.name = `spreadrate quote ${id}`;
    this.listener = listener;
    this.channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel(this.name);
    this.channel?.addEventListener('message', (event: MessageEvent<unknown>) => this.hear(event.data));
  }

  get role(): TabRole {
    return this.current;
  }

  /** Becomes the writer if no other tab is, and says whether this one is. */
  async join(): Promise<boolean> {
    // A busy page may hear too late that it was given the lock in time: it asks twice.
    return (await this.holdWithin(moment)) || this.holdWithin(moment);
  }

  /** Becomes the writer in place of another tab: asks first, and takes the lock when nobody answers. */
  async takeOver(): Promise<void> {
    if (this.current === 'writer') return;
    this.say('wanted');
    if (!(await this.holdWithin(patience))) await this.hold({ steal: true });
  }

  /** Tells the other tabs that a change is stored. */
  tellHead(): void {
    this.say('head');
  }

  leave(): void {
    this.channel?.close();
    this.letGo();
  }

  private holdWithin(milliseconds: number): Promise<boolean> {
    return this.hold({ signal: AbortSignal.timeout(milliseconds) });
  }

  private hold(options: LockOptions): Promise<boolean> {
    if (!('locks' in navigator)) {
      this.become('writer');
      return Promise.resolve(true);
    }
    return new Promise((answer) => {
      let release: (() => void) | undefined;
      const keep = (): Promise<void> =>
        new Promise((done) => {
          release = done;
          this.release = done;
          this.become('writer');
          answer(true);
        });
      navigator.locks.request(this.name, options, keep).catch((error: unknown) => {
        if (release !== undefined) this.lost(release);
        else if (isTimeOut(error)) answer(false);
        else {
          // A browser that refuses locks altogether is one without them.
          this.become('writer');
          answer(true);
        }
      });
    });
  }

  /** Another tab took the lock. */
  private lost(release: () => void): void {
    if (this.release === release) this.letGo();
  }

  private letGo(): void {
    this.release?.();
    this.release = undefined;
    this.become('reader');
  }

  private become(role: TabRole): void {
    if (role === this.current) return;
    this.current = role;
    this.listener.roleChanged(role);
  }

  private say(notice: Notice): void {
    this.channel?.postMessage(notice);
  }

  private hear(notice: unknown): void {
    if (notice === 'head') this.listener.headChanged();
    else if (notice === 'wanted' && this.current === 'writer') {
      this.listener.handOver().then(() => this.letGo());
    }
  }
}

function isTimeOut(error: unknown): boolean {
  return error instanceof DOMException && (error.name === 'TimeoutError' || error.name === 'AbortError');
}
