import type { QuoteHead } from '../quote/quote-head.ts';
import type { LogEntry } from '../quote/quote-log.ts';

/** Where changes are kept. Rejects with an error whose message says in plain words why a change is not kept. */
export interface QuoteKeeper {
  /** Resolves once the entry and the head it led to are stored for good, both or none. */
  append(entry: LogEntry, head: QuoteHead): Promise<void>;
}

export type SaveState =
  /** Every change is stored. */
  | { readonly kind: 'saved' }
  | { readonly kind: 'saving' }
  /** Changes stand in memory only. The next change tries again. */
  | { readonly kind: 'not saved'; readonly reason: string };

/** Hands changes to a keeper one by one in their order; what could not be stored waits for the next attempt. */
export class SaveQueue {
  private readonly keeper: QuoteKeeper;
  private readonly told: () => void;
  private waiting: readonly { readonly entry: LogEntry; readonly head: QuoteHead }[] = [];
  private current: SaveState = { kind: 'saved' };
  private asked = false;
  private running: Promise<void> | undefined;

  /** `told` is called whenever an attempt has ended. */
  constructor(keeper: QuoteKeeper, told: () => void) {
    this.keeper = keeper;
    this.told = told;
  }

  get state(): SaveState {
    return this.current;
  }

  add(entry: LogEntry, head: QuoteHead): void {
    this.waiting = [...this.waiting, { entry, head }];
    this.retry();
  }

  /** Tries to store what waits. */
  retry(): void {
    if (this.waiting.length === 0) return;
    this.asked = true;
    this.current = { kind: 'saving' };
    this.running ??= this.run();
  }

  /** Resolves when no attempt is under way, whether or not all could be stored. */
  async settled(): Promise<void> {
    while (this.running !== undefined) await this.running;
  }

  private async run(): Promise<void> {
    let reason: string | undefined;
    // A change that came while an attempt failed is the next change, so it tries again.
    while (this.asked) {
      this.asked = false;
      reason = await this.attempt();
    }
    this.running = undefined;
    this.current = reason === undefined ? { kind: 'saved' } : { kind: 'not saved', reason };
    this.told();
  }

  /** Stores what waits, first to last; the reason when one could not be. */
  private async attempt(): Promise<string | undefined> {
    for (let [next] = this.waiting; next !== undefined; [next] = this.waiting) {
      try {
        await this.keeper.append(next.entry, next.head);
      } catch (error) {
        // Whatever went wrong, the change is still in memory and the reader must know that it is only there.
        return error instanceof Error && error.message !== '' ? error.message : 'It could not be stored.';
      }
      this.waiting = this.waiting.slice(1);
    }
    return undefined;
  }
}
