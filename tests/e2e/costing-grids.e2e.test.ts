import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boardCell } from '../helpers/board-cell.ts';
import { hasFocus, turnToSheet, untilDrawn } from '../helpers/drawn-page.ts';
import { launchBrowser, openCosting } from '../helpers/open-app.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(() => browser.close());

function areaCell(page: Page, column: string): Locator {
  return page.getByRole('grid', { name: 'Areas', exact: true }).locator(`tbody [data-column='${column}']`);
}

/** What of the text that is being edited is selected: from, to, and the text. */
function selection(page: Page): Promise<readonly [number | null, number | null, string] | undefined> {
  return page.evaluate(() => {
    let active = document.activeElement;
    while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    if (!(active instanceof HTMLInputElement)) return undefined;
    return [active.selectionStart, active.selectionEnd, active.value] as const;
  });
}

/** By title, how far each grid on the page is wider than its room. */
function tooWide(page: Page): Promise<readonly (readonly [title: string, pixels: number])[]> {
  return page.locator('sheet-grid').evaluateAll((grids) =>
    grids.map((grid) => {
      const frame = grid.shadowRoot?.querySelector('.frame');
      const title = grid.shadowRoot?.querySelector('caption')?.textContent?.trim() ?? '';
      return [title, (frame?.scrollWidth ?? 0) - (frame?.clientWidth ?? 0)] as const;
    }),
  );
}

describe('the mouse in a grid', () => {
  it('selects all of 22 with the first click, and the second puts the caret where it was', async () => {
    const { page, close } = await openCosting(browser);
    const width = areaCell(page, 'width');
    await width.click();
    await expect.poll(() => selection(page)).toEqual([0, 2, '22']);
    const box = await width.boundingBox();
    if (box === null) throw new Error('The cell is not on the page');
    // After the last digit. However soon it comes, it is said to be a click of its own, not the second of a double click.
    await page.mouse.click(box.x + box.width - 4, box.y + box.height / 2);
    await expect.poll(() => selection(page)).toEqual([2, 2, '22']);
    await page.keyboard.type('.5');
    await page.keyboard.press('Enter');
    await expect.poll(() => width.textContent()).toContain('22.5');
    await close();
  });

  it('selects all again when the cell that has focus, but no field, is clicked', async () => {
    const { page, close } = await openCosting(browser);
    const width = areaCell(page, 'width');
    await width.click();
    await expect.poll(() => selection(page)).toEqual([0, 2, '22']);
    await page.keyboard.press('Escape');
    await expect.poll(() => selection(page)).toBe(undefined);
    await width.click();
    await expect.poll(() => selection(page)).toEqual([0, 2, '22']);
    await close();
  });
});

describe('tables of the demo garage on 1440 px', () => {
  it.each(['The floor', 'Full flake', 'Solid colour, rolled', 'Shop rates'])('need no scroll: %s', async (sheet) => {
    const { page, close } = await openCosting(browser, { viewport: { width: 1440, height: 900 } });
    await turnToSheet(page, sheet);
    await untilDrawn(page);
    await expect.poll(async () => (await tooWide(page)).length).toBeGreaterThan(4);
    await expect.poll(async () => (await tooWide(page)).filter(([, pixels]) => pixels > 0)).toEqual([]);
    await close();
  });
});

describe('a choice that is refused', () => {
  it('shows what counts, with the reason beside it, while another tab writes the quote', async () => {
    const { page, close } = await openCosting(browser);
    await page.getByText('saved', { exact: true }).waitFor();
    const other = await page.context().newPage();
    await other.goto(page.url().replace(/#.*/, '#/quote/demo/price'));
    await other.getByRole('button', { name: 'Change it here' }).waitFor();
    const adjust = other.getByRole('button', { name: 'Adjust' });
    await adjust.dispatchEvent('pointerdown');
    await other.getByRole('link', { name: 'Costing' }).click();
    await turnToSheet(other, 'Full flake');
    const grinder = other.getByRole('combobox', { name: 'Grinder', exact: true });
    const before = await grinder.inputValue();
    await grinder.selectOption({ index: 1 });
    await other.getByText(/By the size of the floor still counts\./).waitFor();
    await expect.poll(() => grinder.inputValue()).toBe(before);
    await close();
  });
});

describe('Why by keyboard', () => {
  it('gives the focus back to the number that was asked when it is closed, on the results and in a grid', async () => {
    const { page, close } = await openCosting(browser);
    const why = page.getByRole('region', { name: 'Why' });
    const worked = page.getByRole('grid', { name: 'Areas', exact: true }).locator("tbody [data-column='area']");
    for (const asked of [await boardCell(page, 'Gross profit', 'Full flake'), worked]) {
      await asked.focus();
      await page.keyboard.press('Enter');
      await why.getByRole('heading').first().waitFor();
      await why.getByRole('button', { name: 'Close' }).focus();
      await page.keyboard.press('Enter');
      await why.waitFor({ state: 'hidden' });
      await expect.poll(() => hasFocus(asked)).toBe(true);
    }
    await close();
  });
});
