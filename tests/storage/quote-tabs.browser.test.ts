import { expect } from '@open-wc/testing';
import { QuoteTabs, type TabRole } from '../../src/storage/quote-tabs.ts';
import { until } from '../helpers/until.ts';

interface Tab {
  readonly tabs: QuoteTabs;
  readonly told: string[];
}

const open: QuoteTabs[] = [];

/** A tab that notes what it is told; handing over takes `handOver`. */
function tab(id: string, handOver: () => Promise<void> = () => Promise.resolve()): Tab {
  const told: string[] = [];
  const tabs = new QuoteTabs(id, {
    headChanged: () => told.push('head'),
    roleChanged: (role: TabRole) => told.push(role),
    handOver: async () => {
      told.push('handing over');
      await handOver();
    },
  });
  open.push(tabs);
  return { tabs, told };
}

const fresh = (): string => crypto.randomUUID();

describe('tabs of one quote', () => {
  afterEach(() => {
    for (const tabs of open.splice(0)) tabs.leave();
  });

  it('have one writer; others read until it leaves', async () => {
    const id = fresh();
    const [one, other] = [tab(id), tab(id)];
    expect(await one.tabs.join()).to.equal(true);
    expect(await other.tabs.join()).to.equal(false);
    expect([one.tabs.role, other.tabs.role]).to.deep.equal(['writer', 'reader']);
    one.tabs.leave();
    expect(await other.tabs.join()).to.equal(true);
    expect(other.tabs.role).to.equal('writer');
  });

  it('have one writer though the page was too busy to hear in time that it is', async () => {
    const joined = tab(fresh()).tabs.join();
    for (const until = performance.now() + 600; performance.now() < until; );
    expect(await joined).to.equal(true);
  });

  it('of different quotes each have their own', async () => {
    expect(await tab(fresh()).tabs.join()).to.equal(true);
    expect(await tab(fresh()).tabs.join()).to.equal(true);
  });

  it('are told of a new head, the one that tells it is not', async () => {
    const id = fresh();
    const [one, other] = [tab(id), tab(id)];
    await one.tabs.join();
    one.tabs.tellHead();
    await until(() => other.told.includes('head'));
    expect(one.told).to.deep.equal(['writer']);
  });

  it('let another take over once what is on its way is stored', async () => {
    const id = fresh();
    let stored: () => void = () => undefined;
    const one = tab(
      id,
      () =>
        new Promise((done) => {
          stored = done;
        }),
    );
    const other = tab(id);
    await one.tabs.join();
    const taken = other.tabs.takeOver();
    await until(() => one.told.includes('handing over'));
    expect([one.tabs.role, other.tabs.role]).to.deep.equal(['writer', 'reader']);
    stored();
    await taken;
    expect(one.told).to.deep.equal(['writer', 'handing over', 'reader']);
    expect(other.told).to.deep.equal(['writer']);
  });

  it('lose the lock when they do not answer, and know it', async () => {
    const id = fresh();
    const frozen = tab(id, () => new Promise(() => undefined));
    const other = tab(id);
    await frozen.tabs.join();
    await other.tabs.takeOver();
    expect(other.tabs.role).to.equal('writer');
    await until(() => frozen.tabs.role === 'reader');
  });

  it('all write where the browser has no locks, and nobody is told where it has no channels', async () => {
    const locks = Object.getOwnPropertyDescriptor(Navigator.prototype, 'locks');
    if (locks === undefined) throw new Error('This browser has no locks to take away');
    const channels = globalThis.BroadcastChannel;
    Reflect.deleteProperty(Navigator.prototype, 'locks');
    Reflect.deleteProperty(globalThis, 'BroadcastChannel');
    try {
      const id = fresh();
      const [one, other] = [tab(id), tab(id)];
      expect([await one.tabs.join(), await other.tabs.join()]).to.deep.equal([true, true]);
      one.tabs.tellHead();
      await other.tabs.takeOver();
      one.tabs.leave();
      expect(other.told).to.deep.equal(['writer']);
    } finally {
      Object.defineProperty(Navigator.prototype, 'locks', locks);
      globalThis.BroadcastChannel = channels;
    }
  });
});
