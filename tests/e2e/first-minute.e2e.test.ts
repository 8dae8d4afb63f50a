import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { untilDrawn } from '../helpers/drawn-page.ts';
import { openApp, reachBrowser, turnOwner } from '../helpers/open-app.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await reachBrowser();
});

afterAll(() => browser.close());

const phone = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };
const flake = 'Full flake';
const solid = 'Solid colour, rolled';

/** The big price of an option on the Price face. */
async function bigPrice(page: Page, option: string): Promise<number> {
  const text = await page
    .getByRole('region', { name: option })
    .getByText(/^\$[\d,.]+$/)
    .first()
    .textContent();
  return Number(text?.replaceAll(/[$,]/g, ''));
}

describe('the first minute in a customer’s garage, on a phone of 360 × 740', () => {
  it('measures a 20 × 30 ft floor anew, judges the slab and compares two systems in at most 14 touches', async () => {
    const { page, problems, close } = await openApp(browser, '#/quote/demo/price', phone);
    const before = await bigPrice(page, flake);
    const begins = performance.now();
    let touches = 0;
    const touch = async (name: string | RegExp, exact = true): Promise<void> => {
      await page.getByRole('button', { name, exact }).first().tap();
      touches += 1;
    };
    await touch(/^Bay/, false);
    for (const key of ['3', '0', 'Width next', '2', '0', 'Done']) await touch(key);
    await page.getByRole('heading', { name: 'Measure · 600 ft²' }).waitFor();
    await touch('some');
    await touch('Oil spots');
    await expect.poll(() => bigPrice(page, flake)).toBeGreaterThan(before);
    await page.getByRole('link', { name: 'Side by side' }).last().tap();
    touches += 1;
    const table = page.getByRole('table').first();
    await table.getByRole('row', { name: /^Included: cracks/ }).waitFor();
    await expect.poll(() => table.getByRole('row', { name: /^Your cracks/ }).textContent()).toContain('skimmed');
    expect(touches).toBeLessThanOrEqual(14);
    expect(performance.now() - begins).toBeLessThan(60_000);
    expect(problems).toEqual([]);
    await close();
  });

  it('keeps a measure of 22 ft 7 in typed with big keys, and all of it over a reload', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price', phone);
    await page.getByRole('button', { name: /^Bay/ }).first().tap();
    for (const key of ['2', '2', 'ft', '7', 'in', 'Width next', '2', '0', 'Done']) {
      await page.getByRole('button', { name: key, exact: true }).first().tap();
    }
    await page.getByRole('button', { name: `22' 7" × 20'` }).waitFor();
    await page.getByText('saved', { exact: true }).waitFor();
    const price = await bigPrice(page, flake);
    await page.reload();
    await page.getByRole('button', { name: `22' 7" × 20'` }).waitFor();
    await expect.poll(() => bigPrice(page, flake)).toBe(price);
    await close();
  });

  it('shows a customer no cost, margin, hour rate or overhead, in text or attributes', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price', phone);
    await page.getByRole('region', { name: flake }).waitFor();
    await untilDrawn(page);
    const seen = [await everything(page)];
    await page.getByRole('link', { name: 'Side by side' }).last().tap();
    await page.getByRole('row', { name: /^Included: cracks/ }).waitFor();
    await untilDrawn(page);
    seen.push(await everything(page));
    for (const text of seen) {
      expect(text.length).toBeGreaterThan(400);
      expect(text).not.toMatch(
        /margin|profit|gross|overhead|commission|walk-away|labour cost|paid hours|discount|job cost/i,
      );
    }
    // The owner's amounts of the same floor are nowhere in it either.
    await page.getByRole('link', { name: 'Price' }).last().tap();
    await turnOwner(page);
    const figures = page.locator('dl:has-text("Gross profit")');
    await figures.first().waitFor();
    const amounts = (await figures.allTextContents()).flatMap((text) => text.match(/\$[\d,.]+/g) ?? []);
    expect(amounts.length).toBeGreaterThanOrEqual(8);
    for (const amount of amounts) for (const text of seen) expect(text).not.toContain(amount.replace(/\.\d+$/, ''));
    await close();
  });

  it('shows the owner’s figures only after the key is held, and hides them again', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price', phone);
    const adjust = page.getByRole('button', { name: 'Adjust' });
    const profits = page.getByText('Gross profit');
    await adjust.tap();
    // Let go of, it waits for nothing any more.
    await expect.poll(() => adjust.getAttribute('class')).not.toContain('holding');
    await expect.poll(() => profits.count()).toBe(0);
    await turnOwner(page);
    await expect.poll(() => page.getByText('Gross profit', { exact: true }).count()).toBe(2);
    await page.getByRole('button', { name: 'Customer’s view' }).tap();
    await adjust.waitFor();
    await expect.poll(() => profits.count()).toBe(0);
    await close();
  });

  it('refuses a width of 0 on the pad, says so, and leaves the floor alone', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price', phone);
    await page.getByRole('button', { name: /^Bay/ }).first().tap();
    for (const key of ['3', '0', 'Width next', '0', 'Done']) {
      await page.getByRole('button', { name: key, exact: true }).first().tap();
    }
    await expect.poll(() => page.getByRole('alert').first().textContent()).toContain('Width');
    await page.getByRole('button', { name: 'Leave as it was' }).tap();
    await page.getByRole('heading', { name: 'Measure · 528 ft²' }).waitFor();
    await close();
  });

  it('adds no area that nobody measured, and keeps a side that is not typed anew', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price', phone);
    await page.getByRole('button', { name: 'Add an area' }).tap();
    await page.getByRole('button', { name: 'Leave as it was' }).tap();
    await page.getByRole('heading', { name: 'Measure · 528 ft²' }).waitFor();
    await page.getByRole('button', { name: /^Bay/ }).first().tap();
    for (const key of ['3', '0', 'Width next', 'Done'])
      await page.getByRole('button', { name: key, exact: true }).first().tap();
    await page.getByRole('heading', { name: 'Measure · 660 ft²' }).waitFor();
    await page.getByRole('button', { name: 'Add an area' }).tap();
    for (const key of ['1', '0', 'Width next', '4', 'Done'])
      await page.getByRole('button', { name: key, exact: true }).first().tap();
    await page.getByRole('heading', { name: 'Measure · 700 ft²' }).waitFor();
    await close();
  });

  it('keeps a stem wall of −5 ft in its field with the reason, in the words of the trade', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price', phone);
    const field = page.getByRole('textbox', { name: /^Stem walls, length/ });
    await field.fill('-5');
    await field.press('Tab');
    await page.getByText(/“Stem walls, length without doors” must lie between/).waitFor();
    await expect.poll(() => field.inputValue()).toBe('-5');
    await close();
  });

  it('says side by side, too, that a damp basement is not to be priced yet', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price', phone);
    await page.getByRole('button', { name: 'Basement 30 × 24' }).tap();
    await page.getByRole('button', { name: 'Damp signs' }).tap();
    await expect.poll(() => page.getByText('Not to be given yet.').count()).toBe(2);
    await expect
      .poll(() => page.getByRole('group', { name: 'Prices' }).getByText('not yet', { exact: true }).count())
      .toBe(2);
    await page.getByRole('link', { name: 'Side by side' }).last().tap();
    const row = page.getByRole('row', { name: /^Not to be given yet/ });
    await expect.poll(() => row.textContent()).toContain('moisture test');
    await page.getByText('saved', { exact: true }).waitFor();
    await page.getByRole('link', { name: 'Spreadrate' }).tap();
    const listed = page.getByRole('link', { name: /^Juniper Lane/ });
    await expect.poll(async () => (await listed.textContent())?.match(/not yet/g)).toHaveLength(2);
    await close();
  });
});

describe('a page that may not change the quote', () => {
  it('does not say that an answer took something out when it was refused', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price');
    await page.getByRole('button', { name: '9 ft door, 6 in', exact: true }).click();
    await page.getByText('saved', { exact: true }).waitFor();
    const other = await page.context().newPage();
    await other.goto(page.url());
    await other.getByRole('button', { name: 'Change it here' }).waitFor();
    await other.getByRole('button', { name: '9 ft door, 6 in', exact: true, pressed: true }).waitFor();
    await other.getByRole('button', { name: 'Basement 30 × 24' }).click();
    await expect.poll(() => other.getByRole('status').textContent()).toContain('open for changes in another tab');
    // The reason is in view wherever the tap was.
    const reason = other.getByRole('alert').filter({ hasText: 'open for changes in another tab' });
    await expect.poll(async () => (await reason.boundingBox())?.y ?? -1).toBeGreaterThanOrEqual(0);
    await untilDrawn(other);
    expect(await other.getByText(/^Taken out/).count()).toBe(0);
    await close();
  });
});

describe('quotes', () => {
  it('begin with one key, are kept by themselves, and the invented one can be removed for good', async () => {
    const { page, problems, close } = await openApp(browser);
    await page.getByText('invented, to look around').waitFor();
    await page.getByRole('button', { name: 'New price' }).click();
    await page.getByRole('button', { name: 'One-car 12 × 20' }).click();
    await page.getByRole('heading', { name: 'Measure · 240 ft²' }).waitFor();
    await page.getByText('saved', { exact: true }).waitFor();
    const price = await bigPrice(page, flake);
    await page.getByRole('link', { name: 'Spreadrate' }).click();
    await page.getByRole('link', { name: /^Floor of/ }).waitFor();
    await page.getByRole('button', { name: /^Remove Juniper Lane/ }).click();
    await page.getByRole('button', { name: /^Remove Juniper Lane.* for good/ }).click();
    await page.getByText('Juniper Lane').waitFor({ state: 'detached' });
    await page.reload();
    await page.getByRole('link', { name: /^Floor of/ }).click();
    await expect.poll(() => bigPrice(page, flake)).toBe(price);
    await page.getByRole('link', { name: 'Spreadrate' }).click();
    await page.getByRole('link', { name: /^Floor of/ }).waitFor();
    await expect.poll(() => page.getByText('Juniper Lane').count()).toBe(0);
    expect(problems).toEqual([]);
    await close();
  });

  it('take a system away and bring it back, each undone with one key', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price');
    await page.getByRole('button', { name: solid, exact: true, pressed: true }).click();
    await page.getByRole('region', { name: solid }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: /^Undo/ }).click();
    await page.getByRole('region', { name: solid }).waitFor();
    await close();
  });
});

/** All text and attributes of the page, shadow roots included. */
function everything(page: Page): Promise<string> {
  return page.evaluate(() => {
    const texts: string[] = [];
    const visit = (node: Node): void => {
      if (node instanceof HTMLStyleElement) return;
      if (node instanceof Text) texts.push(node.data);
      if (node instanceof Element) {
        for (const attribute of node.attributes) texts.push(attribute.value);
        if (node.shadowRoot) visit(node.shadowRoot);
      }
      node.childNodes.forEach(visit);
    };
    visit(document.body);
    return texts.join(' ');
  });
}
