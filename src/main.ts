import { workerAuditor } from './engine/worker-auditor.ts';
import { readProducts } from './pricelist/read-products.ts';
import { pinSheets } from './quote/sheet-store.ts';
import { QuoteDesk } from './session/quote-desk.ts';
import { keepSetting, keptSetting } from './storage/kept-settings.ts';
import { openQuoteStore } from './storage/quote-store.ts';
import { composeSheet } from './template/compose.ts';
import { productFieldsOf } from './template/product-fields.ts';
import { AfterPaint } from './views/app/after-paint.ts';
import { AppShell } from './views/app/app-shell.ts';
import { IdleWork } from './views/app/idle-work.ts';
import { madeOnDayOf } from './views/app/new-quote-at.ts';
import './views/theme.css';

const templates = import.meta.glob<unknown>('../templates/*/*/template.json', { eager: true, import: 'default' });
const priceLists = import.meta.glob<string>('../templates/pricelist/*/products.csv', {
  eager: true,
  query: '?raw',
  import: 'default',
});

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
  const files = new Map(Object.entries(templates));
  const [{ store: sheets, raw: rawSheets }, opened] = await Promise.all([pinSheets(files), openQuoteStore()]);
  const [priceListFile] = sheets.library.priceLists.values();
  const [csv = ''] = Object.values(priceLists);
  if (priceListFile === undefined) throw new Error('There is no price list.');
  const { kinds, fields } = productFieldsOf(composeSheet(priceListFile, new Map()).sheet, () => undefined);
  const { products: priceList } = readProducts(csv, [...fields.values()], kinds.keys());
  const kept = opened.kind === 'open' ? { store: opened.store } : { unkept: opened.reason };
  const audit = { call: workerAuditor, rest: idle.later };
  const desk = new QuoteDesk({ sheets, rawSheets, priceList, audit, turn: new AfterPaint().turn, ...kept });
  await showDemoOnce(desk);
  const shell = new AppShell();
  shell.addEventListener('quote-shown', idle.begin, { once: true });
  shell.desk = desk;
  document.body.replaceChildren(shell);
  idle.later(fetchTheRest);
}

/** What is loaded when it is wanted is fetched before the signal may be gone. Off the net it is asked for again then. */
function fetchTheRest(): void {
  for (const fetched of [import('./views/day/day-face.ts'), import('./views/parts/plan/floor-plan.ts')])
    fetched.catch(() => undefined);
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
