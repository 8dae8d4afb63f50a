import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boardCell } from '../helpers/board-cell.ts';
import { hasFocus, sheetKey, turnToSheet, untilDrawn } from '../helpers/drawn-page.ts';
import { openCosting, reachBrowser } from '../helpers/open-app.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await reachBrowser();
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

/** What is wrong on the page, as it is told. */
async function alerts(page: Page): Promise<readonly string[]> {
  return (await page.getByRole('alert').allTextContents()).map((text) => text.replaceAll(/\s+/g, ' ').trim());
}

describe('a refusal', () => {
  it('of $38,000 an hour ends with Escape, and neither Undo nor Redo brings it back', async () => {
    const { page, close } = await openCosting(browser);
    await turnToSheet(page, 'Shop rates');
    const labour = page.getByRole('textbox', { name: /^Loaded labour/ });
    await labour.fill('40');
    await labour.press('Tab');
    await page.getByRole('button', { name: /^Undo: Loaded labour/ }).waitFor();
    for (const end of ['Escape', 'Undo', 'Redo']) {
      const inForce = end === 'Redo' ? '38' : '40';
      await labour.fill('38,000');
      await labour.press('Tab');
      await expect.poll(() => alerts(page)).toEqual([expect.stringContaining(`$${inForce}/h still counts.`)]);
      if (end === 'Escape') await labour.press('Escape');
      else await page.getByRole('button', { name: new RegExp(`^${end}: Loaded labour`) }).click();
      await expect.poll(() => alerts(page)).toEqual([]);
      expect(await labour.inputValue()).toBe(end === 'Undo' ? '38' : '40');
    }
    await close();
  });

  it('of −5 ft in a grid does not hide the 22 ft that Undo brings back, and ends with Escape', async () => {
    const { page, close } = await openCosting(browser);
    const width = areaCell(page, 'width');
    const enter = async (text: string): Promise<void> => {
      await width.click();
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    };
    await enter('30');
    await expect.poll(() => width.textContent()).toContain('30');
    await enter('-5');
    await expect.poll(() => alerts(page)).toEqual([expect.stringContaining('30 ft still counts.')]);
    await page.getByRole('button', { name: /^Undo: Width/ }).click();
    await expect.poll(() => width.textContent()).toMatch(/^\s*22\s*ft\s*$/);
    expect(await alerts(page)).toEqual([]);
    await enter('-5');
    await expect.poll(() => alerts(page)).toEqual([expect.stringContaining('22 ft still counts.')]);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await expect.poll(() => width.textContent()).toMatch(/^\s*22\s*ft\s*$/);
    expect(await alerts(page)).toEqual([]);
    await close();
  });

  it('to take away the only area is told under the grid, and goes with the next change', async () => {
    const { page, close } = await openCosting(browser);
    await areaCell(page, 'row-away').click();
    await expect.poll(() => alerts(page)).toEqual(['“Areas” keeps at least 1 row.']);
    await page.getByRole('button', { name: 'Add a row' }).first().click();
    await expect.poll(() => alerts(page)).toEqual([]);
    await close();
  });
});

describe('another sheet', () => {
  it('opens at its top, however far down the last one was read, with focus on its key', async () => {
    const { page, close } = await openCosting(browser, { viewport: { width: 1440, height: 900 } });
    await untilDrawn(page);
    await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
    await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(900);
    await turnToSheet(page, 'Shop rates');
    await untilDrawn(page);
    const heading = await page.getByRole('heading', { level: 2, name: 'Standard shop rates' }).boundingBox();
    expect(heading?.y).toBeGreaterThanOrEqual(0);
    expect(heading?.y).toBeLessThan(450);
    expect(await hasFocus(sheetKey(page, 'Shop rates'))).toBe(true);
    await close();
  });
});

describe('Why by keyboard', () => {
  it('takes focus to the answer and gives it back to the number that was asked, by Escape and by Close', async () => {
    const { page, close } = await openCosting(browser);
    const why = page.getByRole('region', { name: 'Why' });
    const worked = page.getByRole('grid', { name: 'Areas', exact: true }).locator("tbody [data-column='area']");
    for (const asked of [await boardCell(page, 'Gross profit', 'Full flake'), worked])
      for (const end of ['Escape', 'Close']) {
        await asked.focus();
        await page.keyboard.press('Enter');
        await expect.poll(() => hasFocus(why.getByRole('heading', { level: 3 }))).toBe(true);
        if (end === 'Close') await why.getByRole('button', { name: 'Close' }).focus();
        await page.keyboard.press(end === 'Close' ? 'Enter' : 'Escape');
        await why.waitFor({ state: 'hidden' });
        await expect.poll(() => hasFocus(asked)).toBe(true);
      }
    await close();
  });

  it('follows a step with focus at its heading, and leads back to what was asked before', async () => {
    const { page, close } = await openCosting(browser);
    const why = page.getByRole('region', { name: 'Why' });
    const heading = why.getByRole('heading', { level: 3 });
    const back = why.getByRole('button', { name: /^Back to/ });
    const arrivedAt = (title: string): Promise<void> =>
      expect.poll(async () => [await heading.textContent(), await hasFocus(heading)]).toEqual([title, true]);
    await (await boardCell(page, 'Price', 'Full flake')).focus();
    await page.keyboard.press('Enter');
    await arrivedAt('Price');
    expect(await back.count()).toBe(0);
    for (const step of ['Price at target', 'Price']) {
      await why
        .getByRole('button', { name: new RegExp(`^${step}\\b`) })
        .first()
        .focus();
      await page.keyboard.press('Enter');
      await arrivedAt(step);
    }
    for (const before of ['Price at target', 'Price']) {
      await page.keyboard.press('Shift+Tab');
      await expect.poll(() => back.textContent()).toBe(`Back to ${before}`);
      expect(await hasFocus(back)).toBe(true);
      await page.keyboard.press('Enter');
      await arrivedAt(before);
    }
    expect(await back.count()).toBe(0);
    await close();
  });

  it('answers the touch of a number without moving the page', async () => {
    const { page, close } = await openCosting(browser, { viewport: { width: 1440, height: 900 } });
    await untilDrawn(page);
    await page.evaluate(() => scrollTo(0, 700));
    await expect.poll(() => page.evaluate(() => scrollY)).toBe(700);
    await (await boardCell(page, 'Price', 'Full flake')).click();
    await expect.poll(() => hasFocus(page.getByRole('heading', { level: 3, name: 'Price', exact: true }))).toBe(true);
    expect(await page.evaluate(() => scrollY)).toBe(700);
    await close();
  });
});

describe('Why on a phone', () => {
  it('lies over the bar below, so that the last step can be touched', async () => {
    const phone = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };
    const { page, close } = await openCosting(browser, phone);
    await (await boardCell(page, 'Price', 'Full flake')).tap();
    const why = page.getByRole('region', { name: 'Why' });
    const last = why.getByRole('listitem').getByRole('button').last();
    const title = await last.locator('span').first().textContent();
    await last.tap();
    await expect.poll(() => why.getByRole('heading', { level: 3 }).textContent()).toBe(title);
    await close();
  });
});
