import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { untilDrawn } from '../helpers/drawn-page.ts';
import { type OpenedApp, openApp, reachBrowser, turnOwner } from '../helpers/open-app.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await reachBrowser();
});

afterAll(() => browser.close());

/** The Day of the demo, in the owner's view. */
async function openDay(width: number): Promise<OpenedApp & { readonly region: Locator }> {
  const app = await openApp(browser, '#/quote/demo/price', { viewport: { width, height: 900 } });
  await turnOwner(app.page);
  await app.page.getByRole('link', { name: 'The day' }).click();
  const region = app.page.getByRole('region', { name: 'The day of Full flake', exact: true });
  await region.getByRole('button', { name: /Base/ }).first().waitFor();
  await untilDrawn(app.page);
  return { ...app, region };
}

/** The words of the row that stands out, and whether its piece does. */
async function marked(region: Locator): Promise<readonly [row: string, pieces: number]> {
  const rows = await region.locator('tr.marked button').allTextContents();
  return [rows.map((words) => words.trim()).join(' | '), await region.locator('rect.marked').count()];
}

/** Whether what has focus is a piece of the picture. */
function isOnPiece(page: Page): Promise<boolean> {
  return page.evaluate(() => {
    let active = document.activeElement;
    while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    return active?.classList.contains('piece') ?? false;
  });
}

describe('the day in picture and table', () => {
  it('names every piece of the demo in words on 1440 px', async () => {
    const { region, close } = await openDay(1440);
    const tasks = (await region.locator('tr button').allTextContents()).filter((words) => /^\d/.test(words));
    expect(tasks.length).toBeGreaterThan(8);
    for (const task of tasks) {
      const number = /^\d+/.exec(task)?.[0] ?? '';
      const named = async (): Promise<readonly string[]> =>
        (await region.locator('svg text:not(.hour)').allTextContents()).filter((text) => text.startsWith(`${number} `));
      await expect.poll(named, { message: task }).toHaveLength(1);
    }
    await close();
  });

  it('marks row and piece together under the mouse', async () => {
    const { page, region, close } = await openDay(1440);
    await region
      .getByRole('row', { name: /^5\s*Vacuum/ })
      .getByRole('cell')
      .first()
      .hover();
    await expect.poll(() => marked(region)).toEqual([expect.stringMatching(/^5\s*Vacuum/), 1]);
    await region.getByRole('button', { name: /^6 Base.* to / }).hover();
    await expect.poll(() => marked(region)).toEqual([expect.stringMatching(/^6\s*Base/), 1]);
    await page.mouse.move(5, 5);
    await expect.poll(() => marked(region)).toEqual(['', 0]);
    await close();
  });

  it('by keyboard alone: arrows go along the pieces, then down the rows, and Enter keeps one marked', async () => {
    const { page, region, problems, close } = await openDay(1440);
    await page.getByRole('button', { name: 'Customer’s view' }).focus();
    await page.keyboard.press('Tab');
    await expect.poll(() => isOnPiece(page)).toBe(true);
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowRight']) await page.keyboard.press(key);
    await expect.poll(() => marked(region)).toEqual([expect.stringMatching(/^1\s*Grind$/), 1]);
    // Over the pieces of the second day and the two tables that may scroll, into the rows.
    for (let tabs = 0; tabs < 4; tabs += 1) await page.keyboard.press('Tab');
    await page.keyboard.press('End');
    await page.keyboard.press('Home');
    await expect.poll(() => marked(region)).toEqual(['Load at the shop', 1]);
    for (const key of ['ArrowDown', 'ArrowDown', 'ArrowDown', 'Enter']) await page.keyboard.press(key);
    await page.keyboard.press('Shift+Tab');
    await expect.poll(() => marked(region)).toEqual([expect.stringMatching(/^1\s*Grind$/), 1]);
    expect(problems).toEqual([]);
    await close();
  });
});
