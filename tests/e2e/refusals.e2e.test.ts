import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hasFocus } from '../helpers/drawn-page.ts';
import { openApp, reachBrowser } from '../helpers/open-app.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await reachBrowser();
});

afterAll(() => browser.close());

const phone = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };

async function untilPriced(page: Page): Promise<void> {
  await page.getByRole('heading', { name: /^Measure/ }).waitFor();
}

describe('a refusal on Price', () => {
  it('of the last system stands beside the systems, and ends with the next change', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price', phone);
    await untilPriced(page);
    const systems = page.getByRole('region', { name: 'Systems' });
    const key = (title: string) => systems.getByRole('button', { name: title, exact: true });
    await key('Solid colour, rolled').tap();
    await expect.poll(() => key('Solid colour, rolled').getAttribute('aria-pressed')).toBe('false');
    await key('Full flake').tap();
    await expect.poll(() => systems.getByRole('alert').textContent()).toBe('A quote keeps at least one option.');
    expect(await page.getByRole('alert').count()).toBe(1);
    await page.getByRole('button', { name: /^Undo/ }).tap();
    await expect.poll(() => page.getByRole('alert').count()).toBe(0);
    await close();
  });

  it('of a stem wall of −5 ft ends with Escape', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price');
    await untilPriced(page);
    const wall = page.getByRole('textbox', { name: 'Stem walls, length without doors' });
    await wall.fill('-5');
    await wall.press('Tab');
    await page.getByRole('alert').waitFor();
    await wall.focus();
    await wall.press('Escape');
    await expect.poll(() => page.getByRole('alert').count()).toBe(0);
    expect(await wall.inputValue()).toBe('0');
    await close();
  });

  it('of a tab that only reads is said once, and ends when that tab takes the quote over', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price');
    await untilPriced(page);
    const second = await page.context().newPage();
    await second.goto(page.url());
    await untilPriced(second);
    const take = second.getByRole('button', { name: 'Change it here' });
    await take.waitFor();
    await second.getByRole('group', { name: 'Cracks' }).getByRole('button', { name: 'many', exact: true }).click();
    const told = second.getByText(/^\s*This quote is open for changes in another tab/);
    await expect.poll(() => told.count()).toBe(1);
    await take.click();
    await expect.poll(() => second.getByRole('alert').count()).toBe(0);
    await close();
  });
});

describe('the way from face to face', () => {
  it('leads to the top of the next', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price', phone);
    await untilPriced(page);
    await page.evaluate(() => scrollTo(0, 1500));
    await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(1000);
    await page.getByRole('link', { name: 'Side by side' }).last().tap();
    await page.getByRole('columnheader', { name: 'Full flake' }).waitFor();
    await expect.poll(() => page.evaluate(() => scrollY)).toBe(0);
    await close();
  });
});

describe('Undo by keyboard', () => {
  it('keeps the focus when nothing is left to take back', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price');
    await untilPriced(page);
    await page.getByRole('group', { name: 'Cracks' }).getByRole('button', { name: 'many', exact: true }).click();
    const undo = page.getByRole('button', { name: /^Undo/ });
    await undo.focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => undo.getAttribute('aria-disabled')).toBe('true');
    expect(await hasFocus(undo)).toBe(true);
    await page.keyboard.press('Enter');
    expect(await page.getByRole('alert').count()).toBe(0);
    await close();
  });
});
