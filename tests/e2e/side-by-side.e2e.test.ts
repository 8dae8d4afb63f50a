import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { untilDrawn } from '../helpers/drawn-page.ts';
import { openApp, reachBrowser, turnOwner } from '../helpers/open-app.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await reachBrowser();
});

afterAll(() => browser.close());

/** The cells of every row that compares, as they are read. */
async function cellsOf(page: Page): Promise<string[][]> {
  const rows = await page.getByRole('table').first().getByRole('row').all();
  const read = await Promise.all(rows.map((row) => row.getByRole('cell').allTextContents()));
  return read.filter((cells) => cells.length === 2);
}

const alike = (rows: readonly string[][]): string[][] => rows.filter(([first, second]) => first === second);

describe('side by side, of the demo’s two systems', () => {
  it('shows only what differs when asked, and all of it again', async () => {
    const { page, problems, close } = await openApp(browser, '#/quote/demo/price');
    await page.getByRole('link', { name: 'Side by side' }).first().click();
    await page.getByRole('row', { name: /^Included: cracks/ }).waitFor();
    const all = await cellsOf(page);
    expect(alike(all).length).toBeGreaterThan(0);
    const only = page.getByRole('button', { name: 'Only what differs' });
    await only.click();
    await expect.poll(async () => alike(await cellsOf(page))).toEqual([]);
    const different = await cellsOf(page);
    expect(different).toHaveLength(all.length - alike(all).length);
    await only.click();
    await expect.poll(() => cellsOf(page)).toEqual(all);
    // The other becomes the reference: it comes first, and differences are told against it.
    const heads = (): Promise<string[]> => page.getByRole('table').first().getByRole('columnheader').allTextContents();
    const [first, second] = await heads();
    await page.getByRole('button', { name: `Compare with ${second}`, exact: true }).click();
    await expect.poll(heads).toEqual([second, first]);
    await page.getByRole('button', { name: `Compare with ${first}`, exact: true }).click();
    await expect.poll(heads).toEqual([first, second]);
    expect(problems).toEqual([]);
    await close();
  });

  it('on a phone, of three, names the option that each button brings: beside the reference, or as the reference', async () => {
    const phone = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };
    const { page, problems, close } = await openApp(browser, '#/quote/demo/price', phone);
    const third = 'Partial flake';
    await page.getByRole('region', { name: 'Systems' }).getByRole('button', { name: third, exact: true }).tap();
    await page.getByRole('region', { name: third, exact: true }).waitFor();
    await page.getByRole('link', { name: 'Side by side' }).last().tap();
    const heads = (): Promise<string[]> => page.getByRole('table').first().getByRole('columnheader').allTextContents();
    await expect.poll(heads).toEqual(['Full flake', 'Solid colour, rolled']);
    await page.getByRole('button', { name: `Show ${third}`, exact: true }).tap();
    await expect.poll(heads).toEqual(['Full flake', third]);
    await page.getByRole('button', { name: 'Show Solid colour, rolled', exact: true }).tap();
    await expect.poll(heads).toEqual(['Full flake', 'Solid colour, rolled']);
    await page.getByRole('button', { name: 'Compare with Solid colour, rolled', exact: true }).tap();
    await expect.poll(heads).toEqual(['Solid colour, rolled', third]);
    expect(problems).toEqual([]);
    await close();
  });

  it('leaves room between $1,052.95/crew day and what is beside it on a phone in the sun, where letters are bold', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price', { viewport: { width: 360, height: 740 } });
    await page.getByRole('combobox', { name: 'Screen' }).selectOption('sun');
    await turnOwner(page);
    await page.getByRole('link', { name: 'Side by side' }).first().click();
    const row = page.getByRole('row', { name: /^Gross after commission and fees, a crew-day/ });
    await row.scrollIntoViewIfNeeded();
    await untilDrawn(page);
    /** How far each text stands from the end of its cell, in pixels. */
    const gaps = await row.getByRole('cell').evaluateAll((cells) =>
      cells.map((cell) => {
        const words = document.createRange();
        words.selectNodeContents(cell);
        return cell.getBoundingClientRect().right - words.getBoundingClientRect().right;
      }),
    );
    expect(gaps).toHaveLength(2);
    for (const gap of gaps) expect(gap).toBeGreaterThan(8);
    await close();
  });

  it.each([360, 820, 1440])('keeps whose column it is in view at %i px', async (width) => {
    const { page, close } = await openApp(browser, '#/quote/demo/side-by-side', { viewport: { width, height: 740 } });
    const head = page.getByRole('columnheader', { name: 'Full flake' });
    await head.waitFor();
    await page.evaluate(() => scrollTo(0, 900));
    await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(500);
    await expect.poll(async () => (await head.boundingBox())?.y ?? -1).toBeGreaterThanOrEqual(0);
    await close();
  });
});
