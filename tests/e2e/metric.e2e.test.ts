import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boardCell } from '../helpers/board-cell.ts';
import { hasFocus, untilDrawn } from '../helpers/drawn-page.ts';
import { openApp, reachBrowser, turnOwner } from '../helpers/open-app.ts';
import { usUnitsIn } from '../helpers/us-units.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await reachBrowser();
});

afterAll(async () => {
  await browser.close();
});

async function turnMetric(page: Page): Promise<void> {
  await page.getByLabel('Units').selectOption('Metres and litres');
  await page.getByRole('heading', { name: /^Measure · [\d.]+ m²$/ }).waitFor();
}

/** Prices in dollars, as the Price face has them. */
async function prices(page: Page): Promise<string[]> {
  const shown = page.locator('price-face .price');
  await shown.nth(1).waitFor();
  return shown.allTextContents();
}

/** The plan is loaded by itself, after the rest of the face. */
function untilPlanned(page: Page, area: RegExp): Promise<void> {
  return page
    .getByRole('img', { name: /^Plan of the floor, to scale\./ })
    .and(page.getByRole('img', { name: area }))
    .waitFor();
}

/** All that is drawn, shadow roots included, by pieces of text; what a field holds stands with them. */
function textsOn(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const texts: string[] = [];
    const walk = (node: Node): void => {
      if (
        node instanceof HTMLStyleElement ||
        (node instanceof HTMLElement && node.getClientRects().length === 0 && !node.shadowRoot)
      )
        return;
      if (node instanceof HTMLInputElement) texts.push(node.value);
      if (node instanceof Text) texts.push(node.data);
      if (node instanceof Element && node.shadowRoot) node.shadowRoot.childNodes.forEach(walk);
      node.childNodes.forEach(walk);
    };
    document.body.childNodes.forEach(walk);
    return texts.map((text) => text.trim()).filter((text) => text !== '');
  });
}

/** Words of the sheets that name a thing, or tell how it is usually told; see the limits. */
const words = [/flake/i, /strip, 8 ft/, /^1\/(4|8|16) in$/, /Feet and gallons/];

async function usUnitsOn(page: Page): Promise<readonly string[]> {
  await untilDrawn(page);
  const texts = await textsOn(page);
  expect(texts.length).toBeGreaterThan(40);
  return texts.filter((text) => !words.some((word) => word.test(text))).flatMap((text) => usUnitsIn(text));
}

describe('the built app in metric', () => {
  it('leaves no US unit on Price, its pad and Side by side, and no price is another', async () => {
    const { page, problems, close } = await openApp(browser, '#/quote/demo/price');
    await page.getByRole('heading', { name: /^Measure/ }).waitFor();
    const before = await prices(page);
    await untilPlanned(page, / 528 ft²/);
    await expect.poll(async () => (await usUnitsOn(page)).length).toBeGreaterThan(0);
    await turnMetric(page);
    await untilPlanned(page, / 49\.05 m²/);
    await expect.poll(() => prices(page)).toEqual(before);
    await expect.poll(() => usUnitsOn(page)).toEqual([]);
    await page.locator('price-face .area').first().click();
    await page.getByRole('button', { name: '.', exact: true }).waitFor();
    await expect.poll(() => usUnitsOn(page)).toEqual([]);
    await page.getByRole('button', { name: 'Leave as it was' }).click();
    await turnOwner(page);
    await page.getByRole('link', { name: 'Side by side' }).first().click();
    await page.getByRole('heading', { name: 'What a square metre pays for' }).waitFor();
    await expect.poll(() => usUnitsOn(page)).toEqual([]);
    expect(problems).toEqual([]);
    await close();
  });

  it('takes 6.9 by 6.1 m on the pad: 42.09 m², and is still metric after a reload', async () => {
    const { page, problems, close } = await openApp(browser, '#/quote/demo/price');
    await page.getByRole('heading', { name: /^Measure/ }).waitFor();
    await turnMetric(page);
    await page.locator('price-face .area').first().click();
    for (const key of ['6', '.', '9', 'Width next', '6', '.', '1', 'Done'])
      await page.getByRole('button', { name: key, exact: true }).click();
    await page.getByRole('heading', { name: 'Measure · 42.09 m²' }).waitFor();
    await page.getByText('6.9 m × 6.1 m').first().waitFor();
    await page.getByText('saved', { exact: true }).waitFor();
    await page.reload();
    await page.getByRole('heading', { name: 'Measure · 42.09 m²' }).waitFor();
    expect(problems).toEqual([]);
    await close();
  });

  it('shows Costing in metric, with an explanation in metres and the formula in the same names', async () => {
    const { page, problems, close } = await openApp(browser, '#/quote/demo/price');
    await page.getByRole('heading', { name: /^Measure/ }).waitFor();
    await turnMetric(page);
    await turnOwner(page);
    await page.getByRole('link', { name: 'Costing' }).click();
    await (await boardCell(page, 'Price a square metre', 'Full flake')).click();
    const why = page.getByRole('region', { name: 'Why' });
    await why.getByText('price / floor_area').waitFor();
    await why
      .getByText(/\$[\d,.]+ \/ [\d.]+ m²/)
      .first()
      .waitFor();
    await untilPlanned(page, / 49\.05 m²/);
    await expect.poll(() => usUnitsOn(page)).toEqual([]);
    expect(problems).toEqual([]);
    await close();
  });

  it('rounds what stands in fields of Costing as people write it, and enters nothing from a field left as it was', async () => {
    const { page, problems, close } = await openApp(browser, '#/quote/demo/price');
    await page.getByRole('heading', { name: /^Measure/ }).waitFor();
    const before = await prices(page);
    await turnMetric(page);
    await turnOwner(page);
    await page.getByRole('link', { name: 'Costing' }).click();
    await page.getByRole('navigation', { name: 'Sheets' }).waitFor();
    // In feet and gallons hardly any of their numbers is round.
    const inMetres = page.locator('number-field').filter({ has: page.locator('.unit', { hasText: /^(m|m²|mm|km)$/ }) });
    await expect.poll(() => inMetres.count()).toBeGreaterThan(3);
    await untilDrawn(page);
    const count = await inMetres.count();
    const texts = await inMetres.locator('input').evaluateAll((inputs) => inputs.map((input) => Object(input).value));
    expect(texts.filter((text) => !/^\d+(\.\d{1,3})?$/.test(text))).toEqual([]);
    for (let at = 0; at < Math.min(count, 6); at++) {
      const input = inMetres.nth(at).locator('input');
      await input.focus();
      // Typed over with itself, and back: still what stood there.
      await page.keyboard.type(String(texts[at]));
      await page.keyboard.press('Enter');
      await page.keyboard.press('Tab');
      await expect.poll(() => hasFocus(input)).toBe(false);
    }
    await expect.poll(() => page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
    await page.getByRole('link', { name: 'Price' }).first().click();
    await page.getByRole('heading', { name: /^Measure/ }).waitFor();
    await expect.poll(() => prices(page)).toEqual(before);
    expect(problems).toEqual([]);
    await close();
  });
});
