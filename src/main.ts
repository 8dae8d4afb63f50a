import { fetchSystems, products, systems, under } from 'virtual:shipped-sheets';
import { workerAuditor } from './engine/worker-auditor.ts';
import { type PinnedSheets, pinBuilt, type ShippedSheets } from './quote/sheet-store.ts';
import { QuoteDesk } from './session/quote-desk.ts';
import { keepSetting, keptSetting } from './storage/kept-settings.ts';
import { openQuoteStore } from './storage/quote-store.ts';
import { AfterPaint } from './views/app/after-paint.ts';
import { AppShell } from './views/app/app-shell.ts';
import { IdleWork } from './views/app/idle-work.ts';
import { madeOnDayOf } from './views/app/new-quote-at.ts';
import './views/theme.css';

const demo = {
  id: 'demo',
  title: 'Juniper Lane, two-car garage',
  shop: 'standard',
  floor: 'garage',
  systems: ['flake-full-broadcast', 'solid-colour'],
};

const idle = new IdleWork();

/** Puts the templates, the storage and the desk together and shows the app. */
async function start(): Promise<void> {
  // The first visit makes a quote: its systems come while the database is opened.
  if (keptSetting('demo shown') === undefined) fetchSystems().catch(() => undefined);
  const shipped = shippedSheets();
  const opened = await openQuoteStore('spreadrate', shipped.under.raw);
  const kept = opened.kind === 'open' ? { store: opened.store } : { unkept: opened.reason };
  const priceList = new Map(products.map((product) => [product.product, product]));
  const audit = { call: workerAuditor, rest: idle.later };
  const desk = new QuoteDesk({ shipped, priceList, audit, turn: new AfterPaint().turn, ...kept });
  await showDemoOnce(desk);
  const shell = new AppShell();
  shell.addEventListener('quote-shown', idle.begin, { once: true });
  shell.desk = desk;
  document.body.replaceChildren(shell);
  idle.later(fetchTheRest);
}

/** The sheets that were built in. Systems are fetched once, and again after a time without a signal. */
function shippedSheets(): ShippedSheets {
  const whole = async (): Promise<PinnedSheets> => pinBuilt([...under, ...(await fetchSystems())]);
  return { under: pinBuilt(under), systems, whole };
}

/** What is loaded when it is wanted is fetched before the signal may be gone. Off the net it is asked for again then. */
function fetchTheRest(): void {
  const rest = [fetchSystems(), import('./views/day/day-face.ts'), import('./views/parts/plan/floor-plan.ts')];
  for (const fetched of rest) fetched.catch(() => undefined);
}

/** The invented quote is made on the first visit only, as of that day: once removed it stays away. */
async function showDemoOnce(desk: QuoteDesk): Promise<void> {
  if (keptSetting('demo shown') !== undefined && desk.unkept === undefined) return;
  const now = new Date().toISOString();
  const made = await desk.make({ ...demo, ...madeOnDayOf(now) }, now, true);
  if (!('kind' in made)) keepSetting('demo shown', 'yes');
}

start().catch((error: unknown) => {
  const told = document.createElement('p');
  told.setAttribute('role', 'alert');
  told.textContent = `The sheet could not be opened. ${error instanceof Error ? error.message : ''}`;
  document.body.replaceChildren(told);
  throw error;
});
