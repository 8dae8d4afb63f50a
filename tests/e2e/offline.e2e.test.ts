import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openApp, reachBrowser, turnOwner } from '../helpers/open-app.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await reachBrowser();
});

afterAll(() => browser.close());

describe('a garage without a signal', () => {
  it('has the plan and the day, though neither was looked at before, and keeps what is answered', async () => {
    const { page, close } = await openApp(browser, '', { viewport: { width: 360, height: 740 } });
    const parts = ['day-face', 'floor-plan'].map((part) =>
      page.waitForResponse((response) => response.url().includes(part)).then((response) => response.finished()),
    );
    await page.goto(`${page.url().replace(/#.*/, '')}#/quote/demo/price`);
    await Promise.all(parts);
    await page.context().setOffline(true);
    await page.getByRole('group', { name: 'Cracks' }).getByRole('button', { name: 'many', exact: true }).click();
    await page.getByText('saved', { exact: true }).waitFor();
    await page.getByRole('button', { name: /^Plan/ }).click();
    await page.locator('floor-plan svg').first().waitFor();
    await turnOwner(page);
    await page.getByRole('link', { name: 'The day' }).click();
    await page.locator('day-face').getByRole('table').first().waitFor();
    expect(await page.getByText('could not be loaded').count()).toBe(0);
    await close();
  });
});
