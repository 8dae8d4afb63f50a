import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sideScroll, untilDrawn } from '../helpers/drawn-page.ts';
import { openApp, reachBrowser, turnOwner } from '../helpers/open-app.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await reachBrowser();
});

afterAll(() => browser.close());

const phone = (width: number) => ({ viewport: { width, height: 740 }, hasTouch: true, isMobile: true });
/** The longest titles there are. */
const longTitles = ['Full flake over a moisture barrier', 'Solid colour, self-levelling'];

/** Of a title, in pixels: one that is cut lacks a line or more. */
const lineHeight = 16;

/** Where the face begins: the height of all that stands above the first question. */
function faceTop(page: Page): Promise<number> {
  return page.locator('price-face, compare-face, costing-face, day-face').evaluate((face) => {
    return face.getBoundingClientRect().top + window.scrollY;
  });
}

/** The narrower side of what can be touched above a face, by its words. */
async function targets(page: Page): Promise<Map<string, number>> {
  const found = page.locator('app-shell header, app-shell > nav').locator('a, button, input');
  const sizes = await found.evaluateAll((all) =>
    all.map((each) => {
      const { width, height } = each.getBoundingClientRect();
      return [each.getAttribute('aria-label') ?? each.textContent?.trim() ?? '', Math.min(width, height)] as const;
    }),
  );
  return new Map(sizes.filter(([, size]) => size > 0));
}

async function wantSystem(page: Page, title: string): Promise<void> {
  await page.getByRole('region', { name: 'Systems' }).getByRole('button', { name: title, exact: true }).tap();
}

describe.each([360, 320])('a quote on a phone of %i px', (width) => {
  it('has its face begin within 96 px, every face and the way back in one touch, and no side scroll', async () => {
    const { page, problems, close } = await openApp(browser, '#/quote/demo/price', phone(width));
    await page.getByRole('heading', { name: /^Measure/ }).waitFor();
    await untilDrawn(page);
    await expect.poll(() => faceTop(page)).toBeLessThanOrEqual(96);
    await turnOwner(page);
    for (const face of ['Price', 'Side by side', 'Costing', 'The day']) {
      const link = page.getByRole('navigation', { name: 'Faces of the quote' }).getByRole('link', { name: face });
      await link.tap();
      await expect.poll(() => link.getAttribute('aria-current')).toBe('page');
      await expect.poll(() => page.locator('price-face, compare-face, costing-face, day-face').count()).toBe(1);
      await untilDrawn(page);
      await expect.poll(() => faceTop(page), { message: face }).toBeLessThanOrEqual(96);
      await expect.poll(() => sideScroll(page), { message: face }).toBeLessThanOrEqual(0);
    }
    const sizes = await targets(page);
    expect([...sizes.keys()]).toEqual(
      expect.arrayContaining(['Title of the quote', 'Undo', 'Customer’s view', 'Costing']),
    );
    for (const [words, size] of sizes) expect(size, words).toBeGreaterThanOrEqual(24);
    expect(problems).toEqual([]);
    await close();
  });

  it('shows long titles whole beside whole prices below, two of them and four', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price', phone(width));
    const bar = page.getByRole('group', { name: 'Prices' });
    const cut = (): Promise<string[]> =>
      bar.locator('.title, .price').evaluateAll(
        (all, line) =>
          all
            .filter(({ scrollWidth, clientWidth, scrollHeight, clientHeight }) => {
              return scrollWidth > clientWidth + 1 || scrollHeight > clientHeight + line / 2;
            })
            .map(({ textContent }) => textContent ?? ''),
        lineHeight,
      );
    for (const title of longTitles) await wantSystem(page, title);
    await expect.poll(() => bar.locator('.title').count()).toBe(4);
    await untilDrawn(page);
    await expect.poll(cut).toEqual([]);
    await expect.poll(() => sideScroll(page)).toBeLessThanOrEqual(0);
    for (const title of ['Full flake', 'Solid colour, rolled']) await wantSystem(page, title);
    await expect.poll(() => bar.locator('.title').allTextContents()).toEqual(longTitles);
    await untilDrawn(page);
    await expect.poll(cut).toEqual([]);
    await expect.poll(() => sideScroll(page)).toBeLessThanOrEqual(0);
    await close();
  });
});

describe('the way back on a phone', () => {
  it('says what it takes back, shows Redo once there is something, and cuts its words sooner than the title away', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price', phone(360));
    await page.getByRole('button', { name: 'Oil spots' }).tap();
    await page.getByRole('button', { name: /^Undo: ./ }).tap();
    const redo = page.getByRole('button', { name: /^Redo: ./ });
    await redo.waitFor();
    await untilDrawn(page);
    await expect.poll(() => sideScroll(page)).toBeLessThanOrEqual(0);
    const title = page.getByRole('textbox', { name: 'Title of the quote' });
    await expect.poll(async () => (await title.boundingBox())?.width).toBeGreaterThan(120);
    await redo.tap();
    await page.getByRole('button', { name: /^Undo: ./ }).waitFor();
    await close();
  });

  it('keeps its title in one line, renamed by keyboard', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price', phone(360));
    const title = page.getByRole('textbox', { name: 'Title of the quote' });
    await title.focus();
    const long = 'Juniper Lane, two-car garage and the workshop behind it';
    await title.fill(long);
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    await page.getByRole('button', { name: 'Undo: the title' }).waitFor();
    await expect.poll(() => title.inputValue()).toBe(long);
    await untilDrawn(page);
    await expect.poll(() => faceTop(page)).toBeLessThanOrEqual(96);
    await close();
  });
});

describe('a finger that holds Adjust', () => {
  it('has the owner’s view when it lifts, over the button that takes it away; the next touch takes it away', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price', phone(360));
    await page.getByRole('heading', { name: /^Measure/ }).waitFor();
    const adjust = page.getByRole('button', { name: 'Adjust' });
    const box = await adjust.boundingBox();
    if (box === null) throw new Error('There is no Adjust on the page');
    const tools = await page.context().newCDPSession(page);
    const touchPoints = [{ x: box.x + box.width / 2, y: box.y + box.height / 2 }];
    await tools.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints });
    const customers = page.getByRole('button', { name: 'Customer’s view' });
    await customers.waitFor();
    await tools.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    // The click of the finger that lifts comes, if it does, within a few frames.
    await untilDrawn(page);
    await page.getByRole('link', { name: 'Costing' }).waitFor();
    expect(await customers.count()).toBe(1);
    await customers.tap();
    await expect.poll(() => customers.count()).toBe(0);
    await close();
  });
});

describe('the signs to type by', () => {
  it.each([320, 360, 412])('lie within the screen at %i px, of fields on either side', async (width) => {
    const { page, close } = await openApp(browser, '#/quote/demo/price', phone(width));
    await page.getByRole('heading', { name: /^Measure/ }).waitFor();
    for (const field of ['Cracks to fill', 'Stem walls, length without doors']) {
      await page.getByRole('textbox', { name: field }).tap();
      const signs = page.getByRole('group', { name: 'Signs' }).getByRole('button');
      await signs.first().waitFor();
      const boxes = await Promise.all((await signs.all()).map((sign) => sign.boundingBox()));
      expect(boxes.length).toBeGreaterThan(1);
      for (const box of boxes) {
        expect(box?.x ?? -1, field).toBeGreaterThanOrEqual(0);
        expect((box?.x ?? width) + (box?.width ?? 0), field).toBeLessThanOrEqual(width);
      }
    }
    await close();
  });
});
