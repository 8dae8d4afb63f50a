import type { BrowserContext } from 'playwright-core';
import { type AppPage, type BuiltApp, freshPage, pageIn } from './page-app.ts';
import { priceAddress } from './page-quote.ts';

/** Milliseconds from the navigation to the end of the frame that shows a price, over several loads. */
export interface MeasuredLoad {
  readonly what: string;
  readonly times: readonly number[];
  /** Left out where there is none. */
  readonly budget?: number;
}

const loads = 9;
const firstPriceBudget = 1200;

/** Opens the Price of the demo quote again and again, in fresh pages and by reload. */
export async function measureLoads(app: BuiltApp): Promise<MeasuredLoad[]> {
  return [
    { what: 'the very first visit, 4 × slowed', times: await firstVisits(app, 4), budget: firstPriceBudget },
    { what: 'a stored quote, nothing cached, 4 × slowed', times: await coldLoads(app, 4), budget: firstPriceBudget },
    { what: 'reload', times: await reloads(app) },
  ];
}

async function firstVisits(app: BuiltApp, slowed: number): Promise<number[]> {
  const times: number[] = [];
  for (let load = 0; load < loads; load += 1) {
    const opened = await freshPage(app);
    await opened.tools.send('Emulation.setCPUThrottlingRate', { rate: slowed });
    times.push(await timeToPrice(opened, () => opened.page.goto(`${app.address}${priceAddress}`)));
    await opened.context.close();
  }
  return times;
}

async function coldLoads(app: BuiltApp, slowed: number): Promise<number[]> {
  const context = await visited(app);
  const times: number[] = [];
  for (let load = 0; load < loads; load += 1) {
    const opened = await pageIn(context);
    await opened.tools.send('Network.enable');
    await opened.tools.send('Network.setCacheDisabled', { cacheDisabled: true });
    await opened.tools.send('Emulation.setCPUThrottlingRate', { rate: slowed });
    times.push(await timeToPrice(opened, () => opened.page.goto(`${app.address}${priceAddress}`)));
    await opened.page.close();
  }
  await context.close();
  return times;
}

async function reloads(app: BuiltApp): Promise<number[]> {
  const context = await visited(app);
  const opened = await pageIn(context);
  await opened.page.goto(`${app.address}${priceAddress}`);
  const times: number[] = [];
  for (let load = 0; load < loads; load += 1) times.push(await timeToPrice(opened, () => opened.page.reload()));
  await context.close();
  return times;
}

/** A profile in which the app has been before: the demo quote is stored. */
async function visited(app: BuiltApp): Promise<BrowserContext> {
  const { context, page } = await freshPage(app);
  await page.goto(`${app.address}${priceAddress}`);
  await page.getByRole('region', { name: 'Full flake' }).waitFor();
  await page.close();
  return context;
}

const watched = new WeakSet<AppPage>();

async function timeToPrice(opened: AppPage, navigate: () => Promise<unknown>): Promise<number> {
  const { page } = opened;
  if (!watched.has(opened)) await page.addInitScript(watchForPrice);
  watched.add(opened);
  await navigate();
  const shown = await page.waitForFunction(() => document.documentElement.dataset.priceShown);
  const time = Number(await shown.jsonValue());
  if (!(time > 0)) throw new Error('No time was taken');
  return time;
}

/** Runs in the page before the app: looks for a price before each frame, and takes the time after the frame. */
async function watchForPrice(): Promise<void> {
  let price = '';
  while (!/^\$[\d,]+/.test(price)) {
    await new Promise((resolve) => requestAnimationFrame(resolve));
    const face = document.querySelector('app-shell')?.shadowRoot?.querySelector('price-face');
    price = face?.shadowRoot?.querySelector('.price')?.textContent ?? '';
  }
  const channel = new MessageChannel();
  channel.port1.onmessage = () => {
    document.documentElement.dataset.priceShown = String(performance.now());
  };
  channel.port2.postMessage(null);
}
