import type { Locator, Page } from 'playwright-core';

/** What stands where something is still on its way. */
const onItsWay = /^(Drawing the plan|Laying out the day|Opening the quote|Looking for quotes) …$/;

/**
 * Resolves once all of the page is on the screen: nothing is on its way, its fonts are there, and what takes its size from
 * the page has done so, which is within three frames of the change.
 */
export async function untilDrawn(page: Page): Promise<void> {
  await page.getByText(onItsWay).first().waitFor({ state: 'detached' });
  await page.evaluate(async () => {
    await document.fonts.ready;
    for (let frame = 0; frame < 3; frame += 1) await new Promise((next) => requestAnimationFrame(next));
  });
}

/** How much wider than the page its content is, in pixels. */
export function sideScroll(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** Turns Costing to a sheet, and resolves once it is the one on the page. */
export async function turnToSheet(page: Page, title: string): Promise<void> {
  await sheetKey(page, title).click();
  await untilOnSheet(page, title);
}

export async function untilOnSheet(page: Page, title: string): Promise<void> {
  await sheetKey(page, title).and(page.locator('[aria-current=page]')).waitFor();
}

export function sheetKey(page: Page, title: string): Locator {
  return page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: title, exact: true });
}

/** Whether it has the focus, also within a shadow root. */
export function hasFocus(locator: Locator): Promise<boolean> {
  return locator.evaluate((element) => element.matches(':focus'));
}
