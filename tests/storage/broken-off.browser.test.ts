import { expect } from '@open-wc/testing';
import type { QuoteStore } from '../../src/storage/quote-store.ts';
import { freshName, inventedQuote, openStore, retitled, storeTitle } from './invented-quote.ts';

type Put = typeof IDBObjectStore.prototype.put;

/** Runs `body` while every write of a head goes through `instead`, which gets the real one. */
async function withPut<T>(
  instead: (store: IDBObjectStore, put: () => IDBRequest<IDBValidKey>) => IDBRequest<IDBValidKey>,
  body: () => Promise<T>,
): Promise<T> {
  const own: Put = IDBObjectStore.prototype.put;
  IDBObjectStore.prototype.put = function (...given) {
    return this.name === 'heads' ? instead(this, () => own.apply(this, given)) : own.apply(this, given);
  };
  try {
    return await body();
  } finally {
    IDBObjectStore.prototype.put = own;
  }
}

/** Number of the head's last entry and of the entries in the log; the title both lead to. */
async function agreed(store: QuoteStore, id: string): Promise<{ seq: number; title: string }> {
  const read = await store.load(id);
  if (read.kind === 'fault') throw new Error(read.reason);
  expect(read.notice).to.equal(undefined);
  expect(read.entries).to.have.length(read.seq);
  const last = read.entries.at(-1)?.edit;
  if (last !== undefined) expect(last).to.deep.equal({ kind: 'retitle', title: read.quote.title });
  return { seq: read.seq, title: read.quote.title };
}

async function storedOnce(name = freshName()) {
  const store = await openStore(name);
  const made = await inventedQuote('broken');
  await store.create(made);
  return { store, head: await storeTitle(store, made, 1, 'Stored') };
}

/** A page that changes the title of the stored quote again and again, telling each number once it is stored. */
function savingPage(name: string): string {
  return `<script type="module">
    import { openStore, storeTitle } from '/tests/storage/invented-quote.ts';
    const store = await openStore('${name}');
    let head = await store.load('broken');
    for (let seq = head.seq + 1; ; seq += 1) {
      head = await storeTitle(store, head, seq, 'title ' + seq);
      parent.postMessage(seq);
    }
  </script>`;
}

describe('a save that breaks off between log and head', () => {
  it('leaves both as they were, says so, and succeeds when it is tried again', async () => {
    const { store, head } = await storedOnce();
    const next = retitled(head, 2, 'Lost');
    const broken = await withPut(
      (heads, put) => {
        const request = put();
        heads.transaction.abort();
        return request;
      },
      () => store.append('broken', [next.entry], next.head, new Map()),
    );
    expect(broken).to.deep.equal({ kind: 'fault', reason: 'The browser could not reach its storage (AbortError).' });
    expect(await agreed(store, 'broken')).to.deep.equal({ seq: 1, title: 'Stored' });
    await storeTitle(store, head, 2, 'Second try');
    expect(await agreed(store, 'broken')).to.deep.equal({ seq: 2, title: 'Second try' });
  });

  it('for want of room says there is no room, and keeps what was stored', async () => {
    const { store, head } = await storedOnce();
    const next = retitled(head, 2, 'Lost');
    const full = await withPut(
      () => {
        throw new DOMException('', 'QuotaExceededError');
      },
      () => store.append('broken', [next.entry], next.head, new Map()),
    );
    expect(full.kind === 'fault' && full.reason).to.match(/no room left/);
    expect(await agreed(store, 'broken')).to.deep.equal({ seq: 1, title: 'Stored' });
  });

  it('since its page went away leaves a log and a head that agree, and all that was told as stored', async () => {
    const name = freshName();
    const { store } = await storedOnce(name);
    const frame = document.createElement('iframe');
    const told = new Promise<number>((resolve) => {
      const listen = ({ data, source }: MessageEvent<unknown>): void => {
        if (source !== frame.contentWindow || typeof data !== 'number') return;
        if (data < 5) return;
        // In mid-save: the next append is under way already.
        frame.remove();
        removeEventListener('message', listen);
        resolve(data);
      };
      addEventListener('message', listen);
    });
    frame.srcdoc = savingPage(name);
    document.body.append(frame);
    const last = await told;
    const { seq } = await agreed(store, 'broken');
    expect(seq).to.be.at.least(last);
    expect(seq).to.be.at.most(last + 2);
  });
});

describe('a browser without storage', () => {
  for (const [what, error] of [
    ['refuses it', new DOMException('', 'SecurityError')],
    ['cannot open it in a private window', new DOMException('', 'InvalidStateError')],
  ] as const) {
    it(`that ${what} is told in plain words`, async () => {
      const own = IDBFactory.prototype.open;
      IDBFactory.prototype.open = () => {
        throw error;
      };
      try {
        expect(await reasonOfOpening()).to.match(/keeps nothing for this page/);
      } finally {
        IDBFactory.prototype.open = own;
      }
    });
  }
});

async function reasonOfOpening(): Promise<string> {
  return openStore().then(
    () => 'It was opened.',
    (error: unknown) => (error instanceof Error ? error.message : ''),
  );
}
