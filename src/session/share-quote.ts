import type { RawSheets } from '../quote/stored-sheets.ts';
import { messages } from '../storage/messages.ts';
import type { QuoteStore } from '../storage/quote-store.ts';
import { QuoteTabs, type TabRole } from '../storage/quote-tabs.ts';
import type { QuoteSession } from './quote-session.ts';
import type { QuoteKeeper } from './save-queue.ts';

/** Keeps the changes of one quote in a store. `sheets` are those an edit may bring in. */
export function storeKeeper(store: QuoteStore, id: string, sheets: RawSheets): QuoteKeeper {
  return {
    append: async (entries, head) => {
      const stored = await store.append(id, entries, head, sheets);
      if (stored.kind === 'fault') throw new Error(stored.reason);
    },
  };
}

/**
 * Ties an open quote to the other tabs that show it. The one that writes may change it; in the others the session is
 * read-only and follows what is stored, until it takes over.
 */
export class SharedQuote {
  private readonly session: QuoteSession;
  private readonly store: QuoteStore;
  private readonly tabs: QuoteTabs;
  private readonly unsubscribe: () => void;
  private told: number;
  private following: Promise<unknown> = Promise.resolve();
  private turning: Promise<void> = Promise.resolve();

  constructor(session: QuoteSession, store: QuoteStore) {
    this.session = session;
    this.store = store;
    this.told = session.seq;
    this.tabs = new QuoteTabs(session.quote.id, {
      headChanged: () => {
        void this.follow();
      },
      roleChanged: (role) => {
        this.turning = this.turn(role);
      },
      handOver: async () => {
        session.setReadOnly(messages.readElsewhere);
        await session.settled();
      },
    });
    this.unsubscribe = session.subscribe(() => this.tellHead());
  }

  get role(): TabRole {
    return this.tabs.role;
  }

  /** Resolves when it is known whether this tab writes, and its session holds what is stored. */
  async join(): Promise<void> {
    this.session.setReadOnly(messages.readElsewhere);
    await this.tabs.join();
    await this.turning;
  }

  async takeOver(): Promise<void> {
    await this.tabs.takeOver();
    await this.turning;
  }

  leave(): void {
    this.unsubscribe();
    this.tabs.leave();
  }

  private async turn(role: TabRole): Promise<void> {
    this.session.setReadOnly(messages.readElsewhere);
    if (role === 'reader') return;
    const refused = await this.follow();
    if (this.tabs.role === 'writer') this.session.setReadOnly(refused);
  }

  /** Shows what is stored now, one call after the other; the reason why it cannot. */
  private follow(): Promise<string | undefined> {
    const next = this.following.then(() => this.showStored());
    this.following = next;
    return next;
  }

  private async showStored(): Promise<string | undefined> {
    const loaded = await this.store.load(this.session.quote.id);
    if (loaded.kind === 'fault') return loaded.reason;
    if (loaded.seq === this.session.seq) return undefined;
    this.told = loaded.seq;
    const shown = this.session.show(loaded.quote, loaded);
    return shown.kind === 'refused' ? shown.reason : undefined;
  }

  private tellHead(): void {
    if (this.session.saved.kind !== 'saved' || this.session.seq === this.told) return;
    this.told = this.session.seq;
    this.tabs.tellHead();
  }
}
