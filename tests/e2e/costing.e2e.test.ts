import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boardCell } from '../helpers/board-cell.ts';
import { hasFocus, sheetKey, sideScroll, turnToSheet, untilDrawn } from '../helpers/drawn-page.ts';
import { openCosting, reachBrowser, turnOwner } from '../helpers/open-app.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await reachBrowser();
});

afterAll(async () => {
  await browser.close();
});

const flake = 'Full flake';
const solid = 'Solid colour, rolled';

/** The price of an option as the board shows it, in dollars. */
async function priceOf(page: Page, option: string): Promise<number> {
  return dollarsIn(await (await boardCell(page, 'Price', option)).textContent());
}

/** The prices of both options at one moment. */
async function bothPrices(page: Page): Promise<[number, number]> {
  const cells = await Promise.all(
    [flake, solid].map(async (option) => (await boardCell(page, 'Price', option)).elementHandle()),
  );
  const [first, second] = await page.evaluate((watched) => watched.map((cell) => cell?.textContent ?? null), cells);
  return [dollarsIn(first ?? null), dollarsIn(second ?? null)];
}

/** From now on, the prices of both options as each frame shows them; those that differ, in order. */
async function watchFrames(page: Page): Promise<() => Promise<[number, number][]>> {
  const watched = await Promise.all(
    [flake, solid].map(async (option) => (await boardCell(page, 'Price', option)).elementHandle()),
  );
  const seen = await page.evaluateHandle((cells) => {
    const frames: (string | null)[][] = [];
    const look = (): void => {
      const texts = cells.map((cell) => cell?.textContent ?? null);
      if (texts.join() !== frames.at(-1)?.join()) frames.push(texts);
      requestAnimationFrame(look);
    };
    look();
    return frames;
  }, watched);
  return async () =>
    (await seen.jsonValue()).map(([first, second]) => [dollarsIn(first ?? null), dollarsIn(second ?? null)]);
}

function dollarsIn(label: string | null): number {
  const dollars = /\$([\d,]+(\.\d+)?)/.exec(label ?? '')?.[1];
  if (dollars === undefined) throw new Error(`No price in “${label}”`);
  return Number(dollars.replaceAll(',', ''));
}

/** A cell of a grid by its row's name and its column's heading. */
async function cellOf(page: Page, grid: string, row: string, column: string): Promise<Locator> {
  const table = page.getByRole('grid', { name: grid, exact: true });
  const position = await table.getByRole('columnheader', { name: column, exact: true }).getAttribute('aria-colindex');
  return table.getByRole('row', { name: new RegExp(`^${row}\\b`) }).locator(`[aria-colindex='${position}']`);
}

/** Types into a cell as with a mouse and a keyboard, and goes on with Tab. */
async function enter(page: Page, cell: Locator, text: string): Promise<void> {
  await cell.click();
  await page.keyboard.type(text);
  await page.keyboard.press('Tab');
}

const phone = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };

describe('Costing in the built app', () => {
  it('moves the price of both systems when the floor grows from 22 to 30 ft, and undo moves them back', async () => {
    const { page, problems, close } = await openCosting(browser);
    const before = await bothPrices(page);
    const framesSoFar = await watchFrames(page);
    await enter(page, await cellOf(page, 'Areas', 'Bay', 'Width'), `30'`);
    await expect.poll(() => priceOf(page, flake)).toBeGreaterThan(before[0]);
    const after = await bothPrices(page);
    expect(after[1]).toBeGreaterThan(before[1]);
    // No frame shows one price moved and the other not.
    expect(await framesSoFar()).toEqual([before, after]);
    await page.getByRole('button', { name: /^Undo: Width/ }).click();
    await page.getByRole('button', { name: /^Redo: Width/ }).waitFor();
    expect(await bothPrices(page)).toEqual(before);
    await page.getByRole('button', { name: /^Redo: Width/ }).click();
    await page.getByRole('button', { name: /^Undo: Width/ }).waitFor();
    expect(await bothPrices(page)).toEqual(after);
    await page.getByText('saved', { exact: true }).waitFor();
    await page.reload();
    await turnOwner(page);
    await expect.poll(() => bothPrices(page)).toEqual(after);
    expect(problems).toEqual([]);
    await close();
  });

  it('raises the price with the target margin of the shop sheet', async () => {
    const { page, problems, close } = await openCosting(browser);
    const before = await priceOf(page, flake);
    await turnToSheet(page, 'Shop rates');
    const target = page.getByRole('textbox', { name: /target/i }).first();
    await target.fill('52');
    await target.press('Enter');
    await target.press('Tab');
    await expect.poll(() => priceOf(page, flake)).toBeGreaterThan(before);
    expect(problems).toEqual([]);
    await close();
  });

  it('keeps unreadable text at its field with the reason and leaves the price alone', async () => {
    const { page, close } = await openCosting(browser);
    const before = await priceOf(page, flake);
    const width = await cellOf(page, 'Areas', 'Bay', 'Width');
    await enter(page, width, 'wide');
    await expect.poll(() => width.textContent()).toContain('wide');
    await expect.poll(() => width.getAttribute('aria-invalid')).toBe('true');
    await expect.poll(() => page.getByRole('alert').first().textContent()).toContain('Bay');
    expect(await priceOf(page, flake)).toBe(before);
    await close();
  });

  it('refuses a floor of −5 ft at the field and leaves the price alone', async () => {
    const { page, close } = await openCosting(browser);
    const before = await priceOf(page, flake);
    const width = await cellOf(page, 'Areas', 'Bay', 'Width');
    await enter(page, width, '-5');
    await expect.poll(() => width.textContent()).toContain('-5');
    await expect.poll(() => page.getByRole('alert').first().textContent()).toMatch(/between|must/);
    expect(await priceOf(page, flake)).toBe(before);
    await close();
  });

  it('explains the price on a touch, and walks on to what it is made from', async () => {
    const { page, close } = await openCosting(browser);
    await (await boardCell(page, 'Price', flake)).click();
    const why = page.getByRole('region', { name: 'Why' });
    await why.getByText('ROUNDUP(MAX(minimum_charge, list_price').waitFor();
    await why.getByRole('button', { name: /Price at target/ }).click();
    await expect.poll(() => why.getByRole('heading', { level: 3 }).textContent()).toBe('Price at target');
    await close();
  });

  it('adds a second area by keyboard alone, which raises the price', async () => {
    const { page, close } = await openCosting(browser);
    const before = await priceOf(page, flake);
    await page.getByRole('button', { name: 'Add a row' }).first().focus();
    await page.keyboard.press('Enter');
    await (await cellOf(page, 'Areas', 'Place 2', 'Length')).waitFor();
    await expect.poll(() => priceOf(page, flake)).toBeGreaterThan(before);
    await close();
  });

  it('calls a new area what is typed, and no price moves with a name', async () => {
    const { page, close } = await openCosting(browser);
    await page.getByRole('button', { name: 'Add a row' }).first().click();
    const added = await cellOf(page, 'Areas', 'Place 2', 'Place');
    const before = await priceOf(page, flake);
    await enter(page, added, 'Tool shed');
    await (await cellOf(page, 'Areas', 'Tool shed', 'Length')).waitFor();
    expect(await priceOf(page, flake)).toBe(before);
    await close();
  });

  it('changes the width from 22 to 30 ft by keyboard alone, and keeps focus in its cell', async () => {
    const { page, close } = await openCosting(browser);
    const before = await priceOf(page, flake);
    const width = await cellOf(page, 'Areas', 'Bay', 'Width');
    await sheetKey(page, 'Shop rates').focus();
    // Between the sheets and the first grid stands what marks its section as checked.
    await page.keyboard.press('Tab');
    await expect
      .poll(() => hasFocus(page.getByRole('button', { name: /^mark as checked: Measure, \d+ lines$/ })))
      .toBe(true);
    await page.keyboard.press('Tab');
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowRight', '3', '0', 'Enter']) await page.keyboard.press(key);
    await expect.poll(() => hasFocus(width)).toBe(true);
    await expect.poll(() => width.textContent()).toContain('30');
    await expect.poll(() => priceOf(page, flake)).toBeGreaterThan(before);
    await page.keyboard.press('Delete');
    await expect.poll(() => priceOf(page, flake)).toBe(before);
    await close();
  });

  it('makes rows cards on a phone, with keys for feet and inches that a thumb can hit', async () => {
    const { page, close } = await openCosting(browser, phone);
    await page.getByRole('button', { name: /^Bay/, expanded: false }).waitFor();
    await expect.poll(() => page.locator('sheet-grid').count()).toBe(0);
    const card = page.getByRole('button', { name: /^Bay/, expanded: false });
    const closed = await card.textContent();
    await card.tap();
    const width = page.getByRole('textbox', { name: 'Bay, Width' });
    await width.tap();
    await width.fill('30');
    const feet = page.getByRole('button', { name: 'feet', exact: true });
    const smallerSide = async (): Promise<number> => {
      const box = await feet.boundingBox();
      return Math.min(box?.width ?? 0, box?.height ?? 0);
    };
    await expect.poll(smallerSide).toBeGreaterThanOrEqual(44);
    await feet.tap();
    await width.press('Enter');
    await expect.poll(() => width.inputValue()).toBe('30′');
    const open = page.getByRole('button', { name: /^Bay/, expanded: true });
    await expect.poll(() => open.textContent()).not.toBe(closed);
    await close();
  });

  it('has no side scroll at 320 px', async () => {
    const { page, close } = await openCosting(browser);
    await page.setViewportSize({ width: 320, height: 640 });
    await (await boardCell(page, 'Price', flake)).waitFor();
    await expect.poll(() => page.locator('sheet-grid').count()).toBe(0);
    const folded = page.getByRole('main').getByRole('button', { expanded: false });
    for (const sheet of ['The floor', flake, 'Shop rates']) {
      await turnToSheet(page, sheet);
      await untilDrawn(page);
      await expect.poll(() => sideScroll(page), { message: sheet }).toBeLessThanOrEqual(0);
      const before = await folded.count();
      await folded.first().click();
      await expect.poll(() => folded.count()).toBeLessThan(before);
      await untilDrawn(page);
      await expect.poll(() => sideScroll(page), { message: `a card of ${sheet}` }).toBeLessThanOrEqual(0);
    }
    await close();
  });
});
