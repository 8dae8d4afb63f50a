import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boardCell } from '../helpers/board-cell.ts';
import { untilOnSheet } from '../helpers/drawn-page.ts';
import { openApp, reachBrowser } from '../helpers/open-app.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await reachBrowser();
});

afterAll(() => browser.close());

const mostTabs = 120;

/** The accessible words of what has the focus, through shadow roots. */
function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    let active = document.activeElement;
    while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    const label = active instanceof HTMLInputElement ? active.labels?.[0]?.textContent : undefined;
    return active?.getAttribute('aria-label') ?? label ?? active?.textContent?.trim() ?? '';
  });
}

/** Presses Tab until what has the focus reads as wanted. */
async function tabTo(page: Page, wanted: RegExp): Promise<void> {
  for (let tabs = 0; tabs < mostTabs; tabs += 1) {
    await page.keyboard.press('Tab');
    if (wanted.test(await focused(page))) return;
  }
  throw new Error(`No Tab leads to ${wanted}`);
}

describe('by keyboard alone', () => {
  it('a floor is measured, judged and compared, and its costing changed and undone', async () => {
    const { page, problems, close } = await openApp(browser);
    await page.getByText('Juniper Lane').first().waitFor();
    await tabTo(page, /^New price/);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: /^Measure/ }).waitFor();
    await tabTo(page, /^Bay/);
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').waitFor();
    await page.keyboard.type('30');
    await page.keyboard.press('Enter');
    await page.keyboard.type(`20'6"`);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Measure · 615 ft²' }).waitFor();
    await tabTo(page, /^many/);
    await page.keyboard.press('Space');
    await page
      .getByText(/Up to 60 ft of cracks/)
      .first()
      .waitFor();
    await page.keyboard.press('Shift+Tab');
    await tabTo(page, /^Side by side/);
    await page.keyboard.press('Enter');
    await page.getByRole('table').first().waitFor();
    await tabTo(page, /^Adjust/);
    await page.keyboard.down('Enter');
    await page.getByRole('button', { name: 'Customer’s view' }).waitFor();
    await page.keyboard.up('Enter');
    // The button that was held is gone: the next Tab goes on from here and not from the top of the page.
    const here = page.getByRole('link', { name: 'Side by side' }).first();
    await expect
      .poll(() =>
        here.evaluate((link) => {
          const root = link.getRootNode();
          return root instanceof ShadowRoot && root.activeElement === link;
        }),
      )
      .toBe(true);
    await tabTo(page, /^Costing/);
    await page.keyboard.press('Enter');
    await page.getByRole('navigation', { name: 'Sheets' }).waitFor();
    await tabTo(page, /^Shop rates/);
    await page.keyboard.press('Enter');
    await untilOnSheet(page, 'Shop rates');
    const cell = await boardCell(page, 'Price', 'Full flake');
    const price = async (): Promise<string | undefined> => /\$[\d,]+/.exec((await cell.textContent()) ?? '')?.[0];
    const before = await price();
    await tabTo(page, /^Target, share of price/);
    await page.keyboard.type('55');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    await expect.poll(price).not.toBe(before);
    await tabTo(page, /^Why: /);
    await page.keyboard.press('Control+z');
    await expect.poll(price).toBe(before);
    expect(problems).toEqual([]);
    await close();
  });

  it('the pad takes digits from the keyboard and Escape leaves the measure as it was', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price');
    await page.getByRole('heading', { name: 'Measure · 528 ft²' }).waitFor();
    await tabTo(page, /^Bay/);
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').waitFor();
    await page.keyboard.type('99');
    await page.getByRole('dialog').getByText('99').waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'hidden' });
    await page.getByRole('heading', { name: 'Measure · 528 ft²' }).waitFor();
    await close();
  });
});
