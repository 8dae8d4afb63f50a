import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openApp, reachBrowser } from '../helpers/open-app.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await reachBrowser();
});

afterAll(() => browser.close());

describe('the built page', () => {
  it('has its title, runs a script and logs no error', async () => {
    const app = await openApp(browser);
    await app.page.getByRole('button', { name: 'New price' }).waitFor();
    await expect.poll(() => app.page.title()).toBe('Spreadrate');
    await expect.poll(() => app.page.locator('script[type=module][src]').count()).toBeGreaterThan(0);
    expect(app.problems).toEqual([]);
    await app.close();
  });
});
