import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchBrowser, openApp } from '../helpers/open-app.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser.close();
});

/** The price of an option as the board shows it, in dollars. */
async function priceOf(page: Page, option: string): Promise<number> {
  const label = await page.getByRole('button', { name: `Why: Price, ${option}` }).getAttribute('aria-label');
  const dollars = /\$([\d,]+(\.\d+)?)/.exec(label ?? '')?.[1];
  if (dollars === undefined) throw new Error(`No price of ${option} in “${label}”`);
  return Number(dollars.replaceAll(',', ''));
}

const flake = 'Full flake';
const solid = 'Solid colour, rolled';

describe('Costing in the built app', () => {
  it('moves the price of both systems when the floor grows from 22 to 30 ft, and undo moves them back', async () => {
    const { page, problems, close } = await openApp(browser);
    const before = [await priceOf(page, flake), await priceOf(page, solid)];
    const width = page.getByRole('textbox', { name: 'Bay, Width' });
    await width.fill(`30'`);
    await width.press('Tab');
    const after = [await priceOf(page, flake), await priceOf(page, solid)];
    expect(after[0]).toBeGreaterThan(before[0] ?? 0);
    expect(after[1]).toBeGreaterThan(before[1] ?? 0);
    await page.getByRole('button', { name: /^Undo: Width/ }).click();
    expect([await priceOf(page, flake), await priceOf(page, solid)]).toEqual(before);
    await page.getByRole('button', { name: /^Redo: Width/ }).click();
    expect([await priceOf(page, flake), await priceOf(page, solid)]).toEqual(after);
    expect(problems).toEqual([]);
    await close();
  });

  it('raises the price with the target margin of the shop sheet', async () => {
    const { page, problems, close } = await openApp(browser);
    const before = await priceOf(page, flake);
    await page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: 'Shop rates' }).click();
    const target = page.getByRole('textbox', { name: /target/i }).first();
    await target.fill('52');
    await target.press('Enter');
    await target.press('Tab');
    expect(await priceOf(page, flake)).toBeGreaterThan(before);
    expect(problems).toEqual([]);
    await close();
  });

  it('keeps unreadable text at its field with the reason and leaves the price alone', async () => {
    const { page, close } = await openApp(browser);
    const before = await priceOf(page, flake);
    const width = page.getByRole('textbox', { name: 'Bay, Width' });
    await width.fill('wide');
    await width.press('Tab');
    expect(await width.inputValue()).toBe('wide');
    expect(await width.getAttribute('aria-invalid')).toBe('true');
    expect(await page.getByRole('alert').first().textContent()).toContain('Bay');
    expect(await priceOf(page, flake)).toBe(before);
    await close();
  });

  it('refuses a floor of −5 ft at the field and leaves the price alone', async () => {
    const { page, close } = await openApp(browser);
    const before = await priceOf(page, flake);
    const width = page.getByRole('textbox', { name: 'Bay, Width' });
    await width.fill('-5');
    await width.press('Tab');
    expect(await page.getByRole('alert').first().textContent()).toMatch(/between|must/);
    expect(await priceOf(page, flake)).toBe(before);
    await close();
  });

  it('explains the price on a touch, and walks on to what it is made from', async () => {
    const { page, close } = await openApp(browser);
    await page.getByRole('button', { name: `Why: Price, ${flake}` }).click();
    const why = page.getByRole('region', { name: 'Why' });
    await why.getByText('ROUNDUP(MAX(minimum_charge, list_price').waitFor();
    await why.getByRole('button', { name: /Price at target/ }).click();
    expect(await why.getByRole('heading', { level: 3 }).textContent()).toBe('Price at target');
    await close();
  });

  it('adds a second area by keyboard alone, which raises the price', async () => {
    const { page, close } = await openApp(browser);
    const before = await priceOf(page, flake);
    await page.getByRole('button', { name: 'Add a row' }).first().focus();
    await page.keyboard.press('Enter');
    await page.getByRole('textbox', { name: 'Place 2, Length', exact: true }).waitFor();
    expect(await priceOf(page, flake)).toBeGreaterThan(before);
    await close();
  });

  it('has no side scroll at 320 px', async () => {
    const { page, close } = await openApp(browser);
    await page.setViewportSize({ width: 320, height: 640 });
    await page.getByRole('button', { name: `Why: Price, ${flake}` }).waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
    await close();
  });
});
