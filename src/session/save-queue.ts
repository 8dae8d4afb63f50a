import type { QuoteHead } from '../quote/quote-head.ts';
import type { LogEntry, NewEntries } from '../quote/quote-log.ts';

/** Where changes are kept. Rejects with an error whose message says in plain words why a change is not kept. */
export interface QuoteKeeper {
  /** Resolves once the entries and the head they led to are stored for good, all or none. */
  append(entries: NewEntries, head: QuoteHead): Promise<void>;
}

export type SaveState =
  /** Every change is stored. */
  | { readonly kind: 'saved' }
  | { readonly kind: 'saving' }
  /** Changes stand in memory only. The next change tries again. */
  | { readonly kind: 'not saved'; readonly reason: string };

export interface SaveParts {
  readonly keeper: QuoteKeeper;
  /** The quote as it is now, after every entry that waits. */
  readonly head: () => QuoteHead;
  /** Called whenever an attempt has ended. */
  readonly told: () => void;
  /** Resolves when a change may be stored; at once where it is left out. */
  readonly turn?: () => Promise<void>;
}

/** Hands what has changed to a keeper, in its order; what could not be stored waits for the next attempt. */
export class SaveQueue {
  private readonly parts: SaveParts;
  private waiting: readonly LogEntry[] = [];
  private current: SaveState = { kind: 'saved' };
  private asked = false;
  private running: Promise<void> | undefined;

  constructor(parts: SaveParts) {
    this.parts = parts;
  }

  get state(): SaveState {
    return this.current;
  }

  add(entry: LogEntry): void {
    this.waiting = [...this.waiting, entry];
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
      if (this.parts.turn !== undefined) await this.parts.turn();
      this.asked = false;
      reason = await this.attempt();
    }
    this.running = undefined;
    this.current = reason === undefined ? { kind: 'saved' } : { kind: 'not saved', reason };
    this.parts.told();
  }

  /** Stores all that waits; the reason when it could not be. */
  private async attempt(): Promise<string | undefined> {
    const [first, ...others] = this.waiting;
    if (first === undefined) return undefined;
    try {
      await this.parts.keeper.append([first, ...others], this.parts.head());
    } catch (error) {
      // Whatever went wrong, the change is still in memory and the reader must know that it is only there.
      return error instanceof Error && error.message !== '' ? error.message : 'It could not be stored.';
    }
    this.waiting = this.waiting.slice(1 + others.length);
    return undefined;
  }
}
