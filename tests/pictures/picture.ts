import type { Browser, Page } from 'playwright-core';

type Theme = 'light' | 'dark' | 'sun';

/** A picture of the app as people see it. */
export interface Picture {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly theme: Theme;
  /** What is done on the Price of the demo quote before the picture is taken. */
  readonly show: (page: Page) => Promise<void>;
}

const holdTime = 1100;
/** Long enough for what moves to rest, and for what comes into view to be drawn. */
const rest = 500;

export async function turnOwner(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Adjust' }).dispatchEvent('pointerdown');
  await page.waitForTimeout(holdTime);
}

export async function turnTo(page: Page, face: string): Promise<void> {
  await page.getByRole('link', { name: face, exact: true }).first().click();
}

/** Takes a picture in a browser profile of its own and keeps it in `folder`, which ends with a slash. */
export async function take(browser: Browser, address: string, folder: string, picture: Picture): Promise<void> {
  const { name, width, height, theme, show } = picture;
  const colorScheme = theme === 'dark' ? 'dark' : 'light';
  const context = await browser.newContext({ viewport: { width, height }, colorScheme });
  const page = await context.newPage();
  await page.goto(`${address}#/quote/demo/price`);
  await page.getByRole('region', { name: 'Full flake' }).waitFor();
  await page.getByLabel('Screen').selectOption(theme);
  await show(page);
  await page.waitForTimeout(rest);
  await page.screenshot({ path: `${folder}${name}.png` });
  await context.close();
  console.log(`${folder}${name}.png`);
}
