import { expect } from '@open-wc/testing';
import { historyOf } from '../../src/quote/quote-log.ts';
import { type LoadedQuote, openQuoteStore, type QuoteStore } from '../../src/storage/quote-store.ts';
import { freshName, inventedQuote, inventedSheets, openStore, retitled, storeTitle } from './invented-quote.ts';

async function loaded(store: QuoteStore, id: string): Promise<LoadedQuote> {
  const read = await store.load(id);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read;
}

async function reasonOf(answer: Promise<{ kind: string; reason?: string }>): Promise<string> {
  return (await answer).reason ?? '';
}

/** Reads and writes as another program would, past the store. */
async function raw(name: string, body: (database: IDBDatabase) => IDBRequest): Promise<unknown> {
  const database = await answered(indexedDB.open(name));
  const result = await answered(body(database));
  database.close();
  return result;
}

function answered<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

describe('stored quotes', () => {
  it('come back value for value with their sheets and an empty log', async () => {
    const store = await openStore();
    const made = await inventedQuote('first');
    expect(await store.create(made)).to.deep.equal({ kind: 'stored' });
    const read = await loaded(store, 'first');
    expect(read.quote).to.deep.equal(made.quote);
    expect([...read.sheets].sort()).to.deep.equal([...made.sheets].sort());
    expect([read.entries, read.seq, read.notice]).to.deep.equal([[], 0, undefined]);
    expect(await reasonOf(store.create(made))).to.match(/stored already/);
  });

  it('come back in another page with the last title and twelve entries in order', async () => {
    const name = freshName();
    const store = await openStore(name);
    const made = await inventedQuote('kept');
    await store.create(made);
    let head = await storeTitle(store, made, 1, 'title 1');
    for (let seq = 2; seq <= 12; seq += 1) head = await storeTitle(store, head, seq, `title ${seq}`);
    store.close();
    const read = await loaded(await openStore(name), 'kept');
    expect(read.quote).to.deep.equal(head.quote);
    expect(read.entries.map(({ seq }) => seq)).to.deep.equal([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    expect(historyOf(read.entries).done).to.have.length(12);
  });

  it('are listed with the last changed first, prices as they were told, which is held back, and which is a demo', async () => {
    const store = await openStore();
    const [old, changed] = [await inventedQuote('old'), await inventedQuote('changed')];
    await store.create({ ...changed, demo: false });
    await store.create({ ...old, options: old.options.map((option) => ({ ...option, held: true })) });
    await storeTitle(store, changed, 1, 'Changed');
    const list = await store.list();
    expect(list.kind === 'list' && list.quotes).to.deep.equal([
      {
        id: 'changed',
        title: 'Changed',
        updatedAt: '2026-05-31T14:00:01.000Z',
        options: [{ title: 'Full flake', price: '$1.00' }],
        demo: false,
      },
      {
        id: 'old',
        title: 'An invented garage',
        updatedAt: '2026-05-31T14:00:00.000Z',
        options: [{ title: 'Full flake', price: '$4,325.00', held: true }],
        demo: true,
      },
    ]);
  });

  it('go with their log and leave the others and the sheets', async () => {
    const name = freshName();
    const store = await openStore(name);
    const [gone, stays] = [await inventedQuote('gone'), await inventedQuote('stays')];
    for (const made of [gone, stays]) {
      await store.create(made);
      await storeTitle(store, made, 1, 'Other');
    }
    expect(await store.remove('gone')).to.deep.equal({ kind: 'stored' });
    expect(await reasonOf(store.load('gone'))).to.match(/no such quote/);
    expect((await loaded(store, 'stays')).entries).to.have.length(1);
    const logs = await raw(name, (database) => database.transaction('logs').objectStore('logs').getAllKeys());
    expect(logs).to.deep.equal([['stays', 1]]);
    // Its sheets need not be given again.
    await store.create({ ...gone, sheets: new Map() });
    const { entry, head } = retitled(stays, 2, 'x');
    expect(await reasonOf(store.append('nowhere', [entry], head, new Map()))).to.match(/no longer stored/);
  });
});

describe('storing', () => {
  it('in two tabs refuses the entry that does not follow the last, and keeps the other', async () => {
    const name = freshName();
    const [one, other] = [await openStore(name), await openStore(name)];
    const made = await inventedQuote('shared');
    await one.create(made);
    const here = retitled(made, 1, 'Here');
    const there = retitled(made, 1, 'There');
    const answers: { kind: string; reason?: string }[] = await Promise.all([
      one.append('shared', [here.entry], here.head, new Map()),
      other.append('shared', [there.entry], there.head, new Map()),
    ]);
    expect(answers.map(({ kind }) => kind).sort()).to.deep.equal(['fault', 'stored']);
    expect(answers.map(({ reason }) => reason ?? '').join('')).to.match(/changed in another tab/);
    const read = await loaded(other, 'shared');
    expect(read.entries).to.have.length(1);
    expect(read.entries[0]?.edit).to.deep.equal({ kind: 'retitle', title: read.quote.title });
    // Once it has read what the other wrote, it may go on.
    await storeTitle(other, read.quote.title === 'Here' ? here.head : there.head, 2, 'On');
    expect((await loaded(one, 'shared')).seq).to.equal(2);
    // Nor may an entry leave a gap.
    const ahead = retitled(here.head, 4, 'Ahead');
    expect(await reasonOf(one.append('shared', [ahead.entry], ahead.head, new Map()))).to.match(
      /changed in another tab/,
    );
  });

  it('answers only after the complete event, with strict durability', async () => {
    const store = await openStore();
    const made = await inventedQuote('strict');
    const told: string[] = [];
    const own = IDBDatabase.prototype.transaction;
    IDBDatabase.prototype.transaction = function (...given) {
      const transaction = own.apply(this, given);
      told.push(`${transaction.mode} ${transaction.durability}`);
      transaction.addEventListener('complete', () => told.push('complete'));
      return transaction;
    };
    try {
      await store.create(made);
      told.push('answered');
      await storeTitle(store, made, 1, 'One');
      told.push('answered');
    } finally {
      IDBDatabase.prototype.transaction = own;
    }
    const write = ['readwrite strict', 'complete', 'answered'];
    expect(told).to.deep.equal([...write, ...write]);
  });

  it('takes in a sheet that an edit brings, and refuses the edit whose sheet is not at hand or is another', async () => {
    const store = await openStore();
    const made = await inventedQuote('grown');
    await store.create(made);
    const { hash, sheets } = await inventedSheets('another system');
    const option = { id: 'option_2', title: 'Another', system: hash, entries: { lines: {}, tables: {} } };
    const { entry } = retitled(made, 1, 'x');
    const added = { ...entry, edit: { kind: 'addOption', option, at: 1, products: [] } } as const;
    const head = { ...made, quote: { ...made.quote, options: [...made.quote.options, option] } };
    expect(await reasonOf(store.append('grown', [added], head, new Map()))).to.match(/not at hand/);
    expect(await reasonOf(store.append('grown', [added], head, new Map([[hash, { other: 1 }]])))).to.match(
      /another one/,
    );
    expect((await loaded(store, 'grown')).seq).to.equal(0);
    expect(await store.append('grown', [added], head, sheets)).to.deep.equal({ kind: 'stored' });
    expect((await loaded(store, 'grown')).sheets.get(hash)).to.deep.equal(sheets.get(hash));
    // Undone, the option is gone, and its sheet still comes along for redo.
    const undone = { ...entry, seq: 2, moves: 'undone' } as const;
    await store.append('grown', [undone], made, new Map());
    expect((await loaded(store, 'grown')).sheets.has(hash)).to.equal(true);
  });

  it('refuses a quote that could not be read back', async () => {
    const store = await openStore();
    const made = await inventedQuote('odd');
    const quote = { ...made.quote, options: [] };
    expect(await reasonOf(store.create({ ...made, quote }))).to.match(/options/);
    expect(await reasonOf(store.load('odd'))).to.match(/no such quote/);
  });
});

describe('what is damaged in storage', () => {
  it('is told: a head in the list, and a quote, a log or a sheet when it is opened', async () => {
    const name = freshName();
    const store = await openStore(name);
    const made = await inventedQuote('whole');
    await store.create(made);
    await storeTitle(store, made, 1, 'Other');
    const put = (to: string, value: unknown, key: IDBValidKey): Promise<unknown> =>
      raw(name, (database) => database.transaction(to, 'readwrite').objectStore(to).put(value, key));

    await put('heads', { id: 'torn' }, 'torn');
    const list = await store.list();
    expect(list.kind === 'list' && list.quotes.map(({ id }) => id)).to.deep.equal(['whole']);
    expect(list.kind === 'list' && list.damaged.map(({ id }) => id)).to.deep.equal(['torn']);
    expect(await reasonOf(store.load('torn'))).to.not.equal('');

    await put('logs', { seq: 1 }, ['whole', 1]);
    const read = await loaded(store, 'whole');
    expect([read.quote.title, read.entries, read.seq]).to.deep.equal(['Other', [], 1]);
    expect(read.notice).to.match(/quote is whole, but its history is not/);

    await put('sheets', '{"layer":"another"}', made.quote.sheets.shop);
    expect(await reasonOf(store.load('whole'))).to.match(/sheet .* is damaged/);
    await raw(name, (database) => database.transaction('sheets', 'readwrite').objectStore('sheets').clear());
    expect(await reasonOf(store.load('whole'))).to.match(/not at hand/);
  });

  it('by a newer version of the program is left alone', async () => {
    const name = freshName();
    (await answered(indexedDB.open(name, 2))).close();
    expect(await reasonOf(openQuoteStore(name))).to.match(/newer version/);
  });
});
