// Makes the pictures of docs/pictures/ from the built app: `npm run pictures`.
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { build, preview } from 'vite';
import { boardCell } from '../helpers/board-cell.ts';
import { chromiumFlags, findChromium } from '../helpers/find-chromium.ts';

const folder = fileURLToPath(new URL('../../docs/pictures/', import.meta.url));
const config = fileURLToPath(new URL('../../src/vite.config.ts', import.meta.url));
const holdTime = 1100;

interface Picture {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly scheme: 'light' | 'dark';
  readonly show: (page: Page) => Promise<void>;
}

async function turnOwner(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Adjust' }).dispatchEvent('pointerdown');
  await page.waitForTimeout(holdTime);
}

const pictures: readonly Picture[] = [
  { name: 'price-phone', width: 360, height: 740, scheme: 'light', show: async () => undefined },
  { name: 'price', width: 1440, height: 900, scheme: 'light', show: async () => undefined },
  {
    name: 'side-by-side',
    width: 1440,
    height: 1000,
    scheme: 'light',
    show: async (page) => {
      await turnOwner(page);
      await page.getByRole('link', { name: 'Side by side' }).first().click();
    },
  },
  {
    name: 'costing',
    width: 1440,
    height: 900,
    scheme: 'dark',
    show: async (page) => {
      await turnOwner(page);
      await page.getByRole('link', { name: 'Costing' }).click();
      await (await boardCell(page, 'Price', 'Full flake')).click();
    },
  },
];

async function take(browser: Browser, address: string, { name, width, height, scheme, show }: Picture): Promise<void> {
  const context = await browser.newContext({ viewport: { width, height }, colorScheme: scheme });
  const page = await context.newPage();
  await page.goto(`${address}#/quote/demo/price`);
  await page.getByRole('region', { name: 'Full flake' }).waitFor();
  await show(page);
  await page.waitForTimeout(500);
  await page.screenshot({ path: `${folder}${name}.png` });
  await context.close();
  console.log(`docs/pictures/${name}.png`);
}

await build({ configFile: config, logLevel: 'warn' });
const server = await preview({ configFile: config, preview: { port: 0 } });
const [address = ''] = server.resolvedUrls?.local ?? [];
const browser = await chromium.launch({ executablePath: await findChromium(), args: [...chromiumFlags] });
for (const picture of pictures) await take(browser, address, picture);
await browser.close();
await server.close();
