import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sideScroll, untilDrawn } from '../helpers/drawn-page.ts';
import { openApp, openCosting, reachBrowser } from '../helpers/open-app.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await reachBrowser();
});

afterAll(() => browser.close());

const phone = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };

function corner(page: Page, number: number): Locator {
  return page.getByRole('button', { name: new RegExp(`^corner ${number} of `) });
}

/** Where its middle is, once the plan has taken the width it has and nothing above it moves any more. */
async function middleOf(locator: Locator): Promise<{ x: number; y: number }> {
  await locator.waitFor();
  await untilDrawn(locator.page());
  await locator.scrollIntoViewIfNeeded();
  const box = await locator.boundingBox();
  if (box === null) throw new Error('It is not on the page');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Drags a corner by feet across and along, to the scale of the bay's 24 ft between corners 1 and 2. */
async function drag(page: Page, number: number, feet: readonly [number, number], letGo = true): Promise<void> {
  const from = await middleOf(corner(page, number));
  const scale = ((await middleOf(corner(page, 2))).x - (await middleOf(corner(page, 1))).x) / 24;
  const at = await middleOf(corner(page, number));
  await page.mouse.move(from.x, at.y);
  await page.mouse.down();
  await page.mouse.move(at.x + (feet[0] * scale) / 2, at.y - (feet[1] * scale) / 2, { steps: 4 });
  await page.mouse.move(at.x + feet[0] * scale, at.y - feet[1] * scale, { steps: 4 });
  if (letGo) await page.mouse.up();
}

/** Where a corner is, as its name says it. */
function placeOf(page: Page, number: number): Promise<string | null> {
  return corner(page, number).getAttribute('aria-label');
}

async function heading(page: Page, area: string): Promise<void> {
  await page.getByRole('heading', { name: `Measure · ${area}` }).waitFor();
}

describe('the plan in the built app', () => {
  it('draws the bay of 24 × 22 ft, takes it by its corners, and a drag to 27 ft makes 561 ft² and one step back', async () => {
    const { page, problems, close } = await openApp(browser, '#/quote/demo/price');
    await page
      .getByRole('img', { name: /^Plan of the floor, to scale\. Bay .*24 ft, 22 ft, 24 ft, 22 ft, 528 ft²/ })
      .waitFor();
    await page.getByRole('button', { name: 'Draw by corners' }).click();
    await corner(page, 3).waitFor();
    await heading(page, '528 ft²');
    await drag(page, 3, [3, 0]);
    await heading(page, '561 ft²');
    await expect.poll(() => placeOf(page, 3)).toContain('across 27 ft, along 22 ft');
    await page.getByRole('button', { name: /^Undo: corner 3 of Bay/ }).click();
    await heading(page, '528 ft²');
    await page.getByRole('button', { name: /^Undo: Bay by its corners/ }).click();
    await page.getByRole('button', { name: 'Draw by corners' }).waitFor();
    expect(problems).toEqual([]);
    await close();
  });

  it('takes a drag back on Escape', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price');
    await page.getByRole('button', { name: 'Draw by corners' }).click();
    await drag(page, 3, [3, 0], false);
    await expect.poll(() => placeOf(page, 3)).toContain('across 27 ft');
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await expect.poll(() => placeOf(page, 3)).toContain('across 24 ft');
    await heading(page, '528 ft²');
    await close();
  });

  it('goes by keys alone: corner 3 one foot out makes 539 ft², and a crossing is refused in words', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price');
    await page.getByRole('button', { name: 'Draw by corners' }).focus();
    await page.keyboard.press('Enter');
    await corner(page, 3).focus();
    await page.keyboard.press('Shift+ArrowRight');
    await heading(page, '539 ft²');
    await page.keyboard.down('Shift');
    for (let feet = 0; feet < 23; feet += 1) await page.keyboard.down('ArrowDown');
    const refused = page.getByText(/Side \d .*would .*side \d.*; the corner stays where it was\./);
    await refused.waitFor();
    await page.keyboard.up('ArrowDown');
    await page.keyboard.up('Shift');
    await expect.poll(() => refused.count()).toBe(1);
    await close();
  });

  it('is folded on a phone, fits it when it is opened, and a corner can be dragged by touch', async () => {
    const { page, problems, close } = await openApp(browser, '#/quote/demo/price', phone);
    const plan = page.getByRole('button', { name: 'Plan' });
    await expect.poll(() => plan.getAttribute('aria-expanded')).toBe('false');
    await plan.tap();
    await page.getByRole('button', { name: 'Draw by corners' }).tap();
    const from = await middleOf(corner(page, 3));
    const touch = await page.context().newCDPSession(page);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', x: number, y: number): Promise<unknown> =>
      touch.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x, y }] });
    await send('touchStart', from.x, from.y);
    for (let step = 1; step <= 5; step += 1) await send('touchMove', from.x - 6 * step, from.y);
    await send('touchEnd', 0, 0);
    await page.getByRole('button', { name: /^Undo: corner 3 of Bay/ }).waitFor();
    await expect.poll(() => placeOf(page, 3)).not.toContain('across 24 ft,');
    await untilDrawn(page);
    await expect.poll(() => sideScroll(page)).toBeLessThanOrEqual(0);
    expect(problems).toEqual([]);
    await close();
  });

  it('says on Price that corners typed so that sides cross are not to be priced yet', async () => {
    const { page, close } = await openCosting(browser);
    await page.getByRole('button', { name: 'Draw by corners' }).click();
    await corner(page, 3).waitFor();
    const grid = page.getByRole('grid', { name: 'Corners' });
    const across = await grid.getByRole('columnheader', { name: 'Across', exact: true }).getAttribute('aria-colindex');
    const cell = (row: number): Locator => grid.locator(`tbody tr:nth-of-type(${row}) [aria-colindex='${across}']`);
    for (const [row, text] of [
      [3, '0'],
      [4, '24'],
    ] as const) {
      await cell(row).click();
      await page.keyboard.type(text);
      await page.keyboard.press('Tab');
    }
    await page
      .getByText(/Bay: side 2 crosses side 4\./)
      .first()
      .waitFor();
    await page.getByRole('link', { name: 'Price', exact: true }).click();
    await page.getByRole('heading', { name: /^Measure/ }).waitFor();
    const told = page.getByText(/^Not to be given yet\. Bay: side 2 crosses side 4\./);
    await expect.poll(() => told.count()).toBe(2);
    await close();
  });
});
